import { describe, expect, it } from 'vitest'
import { blankLeaf, rectangle, usualFlitch } from '../../core/job/usual'
import { neighbours, numbersInWords } from './neighbours'

const flitch = usualFlitch(
  'f',
  'Ash',
  rectangle(200, 900),
  [4, 5, 9, 6, 7].map((number) => blankLeaf(number)),
)

describe('neighbouring leaves', () => {
  it.each([
    { from: 4, to: 9, self: 5, found: [4, 9] },
    { from: 7, to: 5, self: 6, found: [5, 9, 7] },
    { from: 6, to: 6, self: 6, found: [] },
    { from: 1, to: 6, self: 6, found: [] },
  ])('follow the sequence from $from to $to without $self', ({ from, to, self, found }) => {
    expect(neighbours(flitch, self, from, to)).toEqual(found)
  })

  it.each([
    [[], 'no leaf'],
    [[6], 'leaf 6'],
    [[6, 8], 'leaves 6 and 8'],
    [[2, 3, 4], 'leaves 2 to 4'],
    [[5, 9, 7], '3 leaves from 5 to 7'],
  ])('%j: %s', (numbers, words) => expect(numbersInWords(numbers)).toBe(words))
})
