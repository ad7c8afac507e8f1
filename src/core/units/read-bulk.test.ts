import { describe, expect, it } from 'vitest'
import { bulkSentence, readBulk } from './read-bulk'
import type { LengthUnit } from './unit'

// [U12] A bulk line gives count, length along the grain, width and first number; a unit that is in doubt is asked for.

const bulk = (text: string, unit: LengthUnit = 'mm') => {
  const read = readBulk(text, unit)
  return read.ok
    ? [read.value.count, read.value.length, read.value.width, read.value.first]
    : bulkSentence(read.reason, unit)
}

describe('[U12] many leaves in one line', () => {
  it.each<[text: string, unit: LengthUnit, count: number, length: number, width: number, first: number]>([
    ['24 leaves, 2440 x 200', 'mm', 24, 2440, 200, 1],
    ['24 leaves 2440 × 200 mm', 'in', 24, 2440, 200, 1],
    ['24 Leaves: 244 X 20 cm', 'mm', 24, 2440, 200, 1],
    ['24 x 2440 x 200', 'mm', 24, 2440, 200, 1],
    ['24, 2440*200 from 5', 'mm', 24, 2440, 200, 5],
    ['24 leaves of 2440 by 200, from leaf 5', 'mm', 24, 2440, 200, 5],
    ['1 leaf, 2440,5 x 200', 'mm', 1, 2440.5, 200, 1],
    ['24 leaves, 96 1/4 x 7 7/8', 'in', 24, 2444.75, 200.025, 1],
    ['24 leaves, 8\' x 8"', 'mm', 24, 2438.4, 203.2, 1],
    ["24 leaves, 8' 6 x 8 in", 'mm', 24, 2590.8, 203.2, 1],
    ['24 leaves, 96 in x 8', 'in', 24, 2438.4, 203.2, 1],
    ['24 sheets, 8 ft by 200 mm', 'in', 24, 2438.4, 200, 1],
  ])('%s', (text, unit, count, length, width, first) => {
    expect(bulk(text, unit)).toEqual([count, length, width, first])
  })

  it.each([
    ['', 'Leaves: “” is not a count and two sizes. Type a line such as 24 leaves, 2440 x 200.'],
    ['2440 x 200', 'Leaves: “2440 x 200” is not a count and two sizes. Type a line such as 24 leaves, 2440 x 200.'],
    [
      '24 2440 x 200',
      'Leaves: “24 2440 x 200” is not a count and two sizes. Type a line such as 24 leaves, 2440 x 200.',
    ],
    [
      '24 leaves, 96 in x 8',
      'Leaves: in “24 leaves, 96 in x 8” only one of the sizes has a unit. Type the unit behind both.',
    ],
    [
      '24 leaves, 8 x 1 ft',
      'Leaves: in “24 leaves, 8 x 1 ft” only one of the sizes has a unit. Type the unit behind both.',
    ],
    ['0 leaves, 2440 x 200', 'Number of leaves: “0” is less than 1, the least it can be.'],
    ['2.5 leaves, 2440 x 200', 'Number of leaves: “2.5” is not a whole number. Type a whole number from 1 to 999.'],
    ['24 leaves, 2440 x 200 from 990', 'First leaf: “990” is more than 976, the most it can be.'],
    ['24 leaves, long x 200', 'Length: “long” is not a length. Type a number such as 420, 42 cm or 16 1/2 in.'],
    ['24 leaves, 2440 x 0', 'Width: “0” is less than 1 mm, the least it can be.'],
    ['24 leaves, 2,440 x 200', 'Length: “2,440” may mean 2.440 mm or 2440 mm. Type it without the comma.'],
  ])('refuses %j', (text, sentence) => {
    expect(bulk(text)).toBe(sentence)
  })
})
