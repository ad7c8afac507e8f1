import { beforeEach, describe, expect, it, vi } from 'vitest'
import { intersect, regionLess, symmetricDifference, unite } from './clip'
import { point } from './point'
import { regionArea, type Region, type Ring } from './polygon'

/** What the first library does when asked, call after call; afterwards it always gives up. */
const answers = vi.hoisted(() => ({ next: [] as unknown[], calls: 0 }))

vi.mock('polygon-clipping', () => {
  const answer = () => {
    answers.calls++
    if (answers.next.length === 0) throw new Error('Unable to complete output ring')
    return answers.next.shift()
  }
  return { default: { union: answer, intersection: answer, difference: answer, xor: answer } }
})

const box = (left: number, top: number, right: number, bottom: number): Ring<'leaf'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]
const square: Region<'leaf'> = [[box(0, 0, 10, 10)]]
const across: Region<'leaf'> = [[box(5, 5, 15, 15)]]

beforeEach(() => {
  answers.next = []
  answers.calls = 0
})

describe('[G1] when the first library gives up', () => {
  it.each([
    { what: 'unite', operation: unite<'leaf'>, area: 175 },
    { what: 'intersect', operation: intersect<'leaf'>, area: 25 },
    { what: 'regionLess', operation: regionLess<'leaf'>, area: 75 },
    { what: 'symmetricDifference', operation: symmetricDifference<'leaf'>, area: 150 },
  ])('$what is tried on a coarser grid, then done in whole numbers', ({ operation, area }) => {
    expect(regionArea(operation(square, across))).toBeCloseTo(area, 9)
    expect(answers.calls).toBe(2)
  })

  it('an answer that is too large to be true is not taken', () => {
    const tooLarge = [[[[0, 0], [9e4, 0], [9e4, 9e4], [0, 9e4], [0, 0]]]] // prettier-ignore
    answers.next = [tooLarge, tooLarge]
    expect(regionArea(intersect(square, across))).toBeCloseTo(25, 9)
    expect(answers.calls).toBe(2)
  })

  it('the answer on the coarser grid is read in its steps', () => {
    const onCoarserGrid = [[[[1250, 1250], [2500, 1250], [2500, 2500], [1250, 2500], [1250, 1250]]]] // prettier-ignore
    answers.next = [[[[[0, 0], [9e9, 0], [9e9, 9e9], [0, 0]]]], onCoarserGrid] // prettier-ignore
    expect(intersect(square, across)).toEqual([[box(5, 5, 10, 10)]])
  })
})
