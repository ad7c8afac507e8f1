import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lengthSentence } from './length-sentence'
import { readLength, type LengthLimits } from './read-length'
import { showLength, type Grain } from './show-length'
import type { LengthUnit } from './unit'

// [U1] The unit typed behind a number holds; a bare number or fraction is in the job's unit, after feet in inches.
// [U2] A comma is decimal when it is the only separator and exactly three digits do not follow; else it is asked about,
//      unless only one reading is a number at all.
// [U3] A text that is not wholly a length is refused: nothing is dropped, nothing is guessed.
// [U4] Every refusal names the thing, what was typed, and the limit.
// [U5] What is shown reads back as the same length within half the grain shown.

const inch = (inches: number) => inches * 25.4

describe('lengths as people type them', () => {
  it.each<[typed: string, unit: LengthUnit, length: number]>([
    ['420', 'mm', 420],
    ['420', 'in', inch(420)],
    ['442mm', 'in', 442],
    ['42 cm', 'mm', 420],
    ['42,5 cm', 'in', 425],
    ['2.44 m', 'mm', 2440],
    ['2 metres', 'in', 2000],
    ['1 m 20 cm', 'mm', 1200],
    ['1 m 20 cm 5 mm', 'mm', 1205],
    ['17 3/8', 'in', inch(17.375)],
    ['17 3/8', 'mm', 17.375],
    ['17-3/8"', 'mm', inch(17.375)],
    ['17 - 3/8 in.', 'mm', inch(17.375)],
    ['17 ⅜ inches', 'mm', inch(17.375)],
    ['17⅜″', 'mm', inch(17.375)],
    ['17 3⁄8”', 'mm', inch(17.375)],
    ['17³⁄₈"', 'mm', inch(17.375)],
    ['½', 'in', inch(0.5)],
    ['3/8', 'in', inch(0.375)],
    ['11/8 in', 'mm', inch(1.375)],
    ['16.5 in', 'mm', 419.1],
    ['16,5"', 'mm', 419.1],
    ['3\' 6 1/2"', 'mm', inch(42.5)],
    ["3' 6 1/2", 'mm', inch(42.5)],
    ['3’ 6 1/2”', 'mm', inch(42.5)],
    ['3′6½″', 'mm', inch(42.5)],
    ["3' 6''", 'mm', inch(42)],
    ['3\'-6"', 'mm', inch(42)],
    ['3\'-6-1/2"', 'mm', inch(42.5)],
    ['3ft 6in', 'mm', inch(42)],
    ['3 feet 6', 'mm', inch(42)],
    ["3.5'", 'mm', inch(42)],
    ["8'", 'mm', inch(96)],
    ['  12\u00a0mm\u200b ', 'in', 12],
    ['４２０', 'mm', 420],
    ['.5', 'mm', 0.5],
    ['5.', 'mm', 5],
    ['0', 'mm', 0],
    ['≈ 17 3/8 in', 'mm', inch(17.375)],
    ['+5 mm', 'in', 5],
    ['12 MM', 'in', 12],
  ])('[U1] %s in a job in %s is %d mm', (typed, unit, length) => {
    const read = readLength(typed, unit)
    expect(read.ok && read.value).toBeCloseTo(length, 6)
  })

  it.each<[typed: string, length: number]>([
    ['2440,5', 2440.5],
    ['1,5', 1.5],
    ['0,125', 0.125],
    ['1,2345', 1.2345],
    ['1234,567', 1234.567],
    ['2,440.5', 2440.5],
    ['2.440,5', 2440.5],
    ['2.440', 2.44],
    ['12,345,678 mm', 12_345_678],
    ['1.234.567', 1_234_567],
    ['2 440', 2440],
    ['2 440,5', 2440.5],
    ['2 440 1/2', 2440.5],
    ['17 125/1000', 17.125],
    ['2,440 1/2', 2440.5],
  ])('[U2] %s is %d mm', (typed, length) => {
    const read = readLength(typed, 'mm')
    if (length > 100_000) expect(read).toMatchObject({ ok: false, reason: { trouble: 'too large' } })
    else expect(read).toEqual({ ok: true, value: length })
  })

  it('[U2] 2,440 is asked about, with both readings', () => {
    const read = readLength('−2,440 in', 'mm', { negative: true })
    expect(read).toMatchObject({
      ok: false,
      reason: {
        trouble: 'ambiguous',
        readings: [
          { length: -61.976, text: '-2.440 in' },
          { length: -61976, text: '-2440 in' },
        ],
      },
    })
  })

  it.each([
    ['', 'empty'],
    [' \u200b ', 'empty'],
    ['abc', 'not a length'],
    ['Infinity', 'not a length'],
    ['NaN', 'not a length'],
    ['1e3', 'unit'],
    ['3 yd', 'unit'],
    ['24 × 200', 'not a length'],
    ['17 5', 'not a length'],
    ['17 3/8 1/2', 'not a length'],
    ['17.5 3/8', 'not a length'],
    ['2.5/8', 'not a length'],
    ['1.2.3', 'not a length'],
    ['12,34.5', 'not a length'],
    ['1,2,3', 'not a length'],
    ['5-', 'not a length'],
    ['5 mm 3 in', 'not a length'],
    ['6 in 3 ft', 'not a length'],
    ['1 m 20', 'not a length'],
    ['1.5 ft 6 in', 'not a length'],
    ['--5', 'not a length'],
    ['mm', 'not a length'],
    ['3/0', 'fraction'],
    ['17 8/8', 'fraction'],
    ['17 9/8', 'fraction'],
    ['3\' 14"', 'inches'],
    ["2'440", 'inches'],
    ["2'005", 'inches'],
    ['9'.repeat(60), 'too large'],
    ['9'.repeat(5000), 'not a length'],
    ['-5', 'too small'],
  ])('[U3] %s is refused: %s', (typed, trouble) => {
    const read = readLength(typed, 'mm')
    expect(read).toMatchObject({ ok: false, reason: { trouble } })
  })

  it('[U3] any text at all gives a length within the limits or a trouble', () => {
    const sign = fc.constantFrom(...'0123456789 .,-/\'"½x mcinft')
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: sign, maxLength: 100 })), (text) => {
        const read = readLength(text, 'in', { max: 500 })
        if (read.ok) expect(read.value >= 0 && read.value <= 500 + 1e-4).toBe(true)
        else expect(lengthSentence(read.reason, { name: 'Width', unit: 'in' })).toMatch(/^Width: .+\.$/)
      }),
      { numRuns: 2000 },
    )
  })

  it('a limit given in inches is kept exactly', () => {
    expect(readLength('16', 'in', { min: 16 * 25.4, max: 16 * 25.4 }).ok).toBe(true)
    expect(readLength('16 1/64', 'in', { max: 16 * 25.4 }).ok).toBe(false)
  })

  it('a length below nothing is taken where it is allowed', () => {
    expect(readLength('−6', 'mm', { negative: true })).toEqual({ ok: true, value: -6 })
    expect(readLength('-17 3/8', 'in', { negative: true, min: -1000 })).toEqual({ ok: true, value: -441.325 })
  })
})

describe('[U4] what is said of a length that was not taken', () => {
  it.each<[typed: string, limits: LengthLimits, unit: LengthUnit, sentence: string]>([
    ['', {}, 'mm', 'Width: nothing is typed. Type a number such as 420, 42 cm or 16 1/2 in.'],
    ['abc', {}, 'mm', 'Width: “abc” is not a length. Type a number such as 420, 42 cm or 16 1/2 in.'],
    ['abc', {}, 'in', 'Width: “abc” is not a length. Type a number such as 16 1/2, 3\' 6" or 42 cm.'],
    ['3 yd', {}, 'mm', 'Width: in “3 yd”, “yd” is not a unit. Use mm, cm, m, in or ft.'],
    ['0', { min: 20 }, 'mm', 'Width: “0” is less than 20 mm, the least it can be.'],
    ['-3', {}, 'mm', 'Width: “-3” is less than 0 mm, the least it can be.'],
    ['400 in', { max: 2540 }, 'in', 'Width: “400 in” is more than 100 in, the most it can be.'],
    ['2,440', {}, 'mm', 'Width: “2,440” may mean 2.440 mm or 2440 mm. Type it without the comma.'],
    ['2,440 cm', {}, 'in', 'Width: “2,440 cm” may mean 2.440 cm or 2440 cm. Type it without the comma.'],
    ['1 3/0', {}, 'mm', 'Width: in “1 3/0”, 3/0 cannot be used. The number under the line must be 1 or more.'],
    ['1 9/8', {}, 'mm', 'Width: in “1 9/8”, 9/8 cannot be used. A fraction after a whole number must be less than 1.'],
    ["2'440", {}, 'mm', "Width: in “2'440”, the inches after the feet must be a number below 12."],
  ])('%s', (typed, limits, unit, sentence) => {
    const read = readLength(typed, unit, limits)
    expect(read.ok ? read.value : lengthSentence(read.reason, { name: 'Width', unit })).toBe(sentence)
  })

  it('a pasted page is cut short', () => {
    const read = readLength('wood '.repeat(400), 'mm')
    expect(read.ok ? '' : lengthSentence(read.reason, { name: 'Width', unit: 'mm' }).length).toBeLessThan(130)
  })
})

const HALF_GRAIN: Record<LengthUnit, Record<Grain, number>> = {
  mm: { place: 0.5, seam: 0.25, whole: 0.5, depth: 0.05, exact: 0.005 },
  in: { place: 25.4 / 64, seam: 25.4 / 128, whole: 25.4 / 32, depth: 0.0127, exact: 0.01 },
}

describe('[U5] there and back', () => {
  it.each<LengthUnit>(['mm', 'in'])('a length shown in %s reads back within half its grain', (unit) => {
    const grains = fc.constantFrom<Grain>('place', 'seam', 'whole', 'depth', 'exact')
    fc.assert(
      fc.property(fc.double({ min: -9000, max: 9000, noNaN: true }), grains, (length, grain) => {
        const read = readLength(showLength(length, unit, grain), unit === 'mm' ? 'in' : 'mm', { negative: true })
        expect(Math.abs((read.ok ? read.value : Infinity) - length)).toBeLessThanOrEqual(HALF_GRAIN[unit][grain] + 1e-5)
      }),
      { numRuns: 1000 },
    )
  })

  it('every 64th of an inch reads back exactly', () => {
    for (let parts = 0; parts < 64 * 40; parts += 1) {
      const length = (parts * 25.4) / 64
      expect(readLength(showLength(length, 'in', 'exact'), 'in')).toEqual({
        ok: true,
        value: expect.closeTo(length, 6),
      })
    }
  })
})
