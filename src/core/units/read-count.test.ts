import { describe, expect, it } from 'vitest'
import { angleSentence, readAngle, showAngle } from './read-angle'
import { countSentence, readCount } from './read-count'

// [U9] A count is a whole number in digits; an angle is decimal degrees, its comma always decimal.

describe('[U9] counts', () => {
  const limits = { min: 1, max: 99 }

  it.each([
    ['24', 24],
    [' 007 ', 7],
    ['+3', 3],
    ['９', 9],
  ])('%s is %d', (typed, count) => {
    expect(readCount(typed, limits)).toEqual({ ok: true, value: count })
  })

  it.each([
    ['', 'Leaves: nothing is typed. Type a whole number from 1 to 99.'],
    ['2.5', 'Leaves: “2.5” is not a whole number. Type a whole number from 1 to 99.'],
    ['1,200', 'Leaves: “1,200” is not a whole number. Type a whole number from 1 to 99.'],
    ['1e1', 'Leaves: “1e1” is not a whole number. Type a whole number from 1 to 99.'],
    ['0', 'Leaves: “0” is less than 1, the least it can be.'],
    ['-4', 'Leaves: “-4” is less than 1, the least it can be.'],
    ['100', 'Leaves: “100” is more than 99, the most it can be.'],
    ['9'.repeat(400), `Leaves: “${'9'.repeat(40)}…” is more than 99, the most it can be.`],
  ])('%s is refused', (typed, sentence) => {
    const read = readCount(typed, limits)
    expect(read.ok ? read.value : countSentence(read.reason, { name: 'Leaves', ...limits })).toBe(sentence)
  })
})

describe('[U9] angles', () => {
  const limits = { minDegrees: -45, maxDegrees: 90 }

  it.each([
    ['45', 45],
    ['22.5°', 22.5],
    ['22,5 deg', 22.5],
    ['7,125', 7.125],
    ['−30 degrees', -30],
    ['.5', 0.5],
  ])('%s is %d degrees', (typed, degrees) => {
    expect(readAngle(typed, limits)).toEqual({ ok: true, value: degrees })
  })

  it.each([
    ['', 'Grain: nothing is typed. Type degrees such as 45 or 22.5.'],
    ['steep', 'Grain: “steep” is not an angle. Type degrees such as 45 or 22.5.'],
    ['°', 'Grain: “°” is not an angle. Type degrees such as 45 or 22.5.'],
    ['45 mm', 'Grain: “45 mm” is not an angle. Type degrees such as 45 or 22.5.'],
    ['-46', 'Grain: “-46” is less than −45°, the least it can be.'],
    ['90.1', 'Grain: “90.1” is more than 90°, the most it can be.'],
  ])('%s is refused', (typed, sentence) => {
    const read = readAngle(typed, limits)
    expect(read.ok ? read.value : angleSentence(read.reason, 'Grain')).toBe(sentence)
  })

  it('is shown to the hundredth with a true minus sign', () => {
    expect([22.5, -7.254, -0.001, 60].map(showAngle)).toEqual(['22.5°', '−7.25°', '0°', '60°'])
  })
})
