import { expect, it } from 'vitest'
import { point } from '../../core/geometry/point'
import { outlineRuns } from './outline-runs'

const [a, b, c, d] = [point<'leaf'>(0, 0), point<'leaf'>(9, 0), point<'leaf'>(9, 9), point<'leaf'>(0, 9)]

it('[I6] neighbouring edges that are unsure are one dashed stretch', () => {
  expect(outlineRuns([a, b, c, d], [false, true, true, false])).toEqual([
    { line: [a, b], isUnsure: false },
    { line: [b, c, d], isUnsure: true },
    { line: [d, a], isUnsure: false },
  ])
})
