import { describe, expect, it } from 'vitest'
import { numberSentence, readNumber, showNumber, type NumberKind } from './read-number'

// [U16] A number with a unit is in the first unit of its kind where none is typed; a unit typed behind it holds.

const TEMPERATURE: NumberKind = {
  units: [
    {
      sign: '°F',
      written: ['f', 'fahrenheit'],
      places: 0,
      toKept: (f) => ((f - 32) * 5) / 9,
      toShown: (c) => (c * 9) / 5 + 32,
    },
    { sign: '°C', written: ['c'], places: 1, toKept: (c) => c, toShown: (c) => c },
  ],
}
const BARE: NumberKind = { units: [{ sign: '', written: [], places: 2, toKept: (n) => n, toShown: (n) => n }] }
const limits = { least: -20, most: 60 }

describe('[U16] numbers with a unit', () => {
  it.each([
    ['70', 21.1111],
    ['70°F', 21.1111],
    ['70 f', 21.1111],
    [' 21,5 °C', 21.5],
    ['−4', -20],
    ['140 Fahrenheit', 60],
  ])('%s is %d °C', (typed, kept) => {
    const read = readNumber(typed, TEMPERATURE, limits)
    expect(read.ok && read.value).toBeCloseTo(kept, 3)
  })

  it.each([
    ['', 'Core: nothing is typed. Type −4 °F to 140 °F.'],
    ['warm', 'Core: “warm” is not a number. Type −4 °F to 140 °F.'],
    ['70 K', 'Core: “70 K” has a unit that doesn’t belong here. Type it in °F or °C.'],
    ['7/2', 'Core: “7/2” has a unit that doesn’t belong here. Type it in °F or °C.'],
    ['-5', 'Core: “-5” is less than −4 °F, the least it can be.'],
    ['61 °C', 'Core: “61 °C” is more than 140 °F, the most it can be.'],
  ])('[U4] %s is refused', (typed, sentence) => {
    const read = readNumber(typed, TEMPERATURE, limits)
    expect(read.ok ? read.value : numberSentence(read.reason, { name: 'Core', kind: TEMPERATURE, ...limits })).toBe(
      sentence,
    )
  })

  it('takes a limit typed as it is shown, though that is rounded', () => {
    // 21.3 °C is 70.34 °F and shown as 70
    expect(readNumber('70', TEMPERATURE, { least: 21.3, most: 60 })).toEqual({ ok: true, value: 21.3 })
  })

  it('[U5] what is shown reads back within half of its last place', () => {
    for (const kept of [-20, 12.7, 21, 60]) {
      const read = readNumber(showNumber(kept, TEMPERATURE), TEMPERATURE, limits)
      expect(read.ok && Math.abs(read.value - kept)).toBeLessThanOrEqual((0.5 * 5) / 9)
    }
  })

  it('[U8] shows a true minus, and none before nothing', () => {
    expect(showNumber(-20, TEMPERATURE)).toBe('−4 °F')
    expect(showNumber(-0.001, BARE)).toBe('0')
  })
})
