import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import { blankLeaf, rectangle, usualFlitch } from '../job/usual'
import type { Leaf } from './leaf'
import { driftsFromMarks } from './register-lines'

/**
 * A bundle of five leaves with one line struck across its edge, 200 mm from the numbered end on the first leaf and 40 mm
 * farther on the last, and one across its end. Afterwards each leaf lost something at its numbered end and left edge.
 */
const lost = [
  { along: 0, across: 0 },
  { along: 3, across: 0.5 },
  { along: -2, across: 2 },
  { along: 0, across: 0 },
  { along: 12, across: 1 },
]
const flitch = usualFlitch(
  'f',
  'Walnut',
  rectangle(200, 2000),
  [1, 2, 3, 4, 5].map((n): Leaf => blankLeaf(n)),
)
const marks = lost.map(({ along, across }, i) => ({
  leaf: i + 1,
  along: 200 + 10 * i - along,
  across: 90 - 5 * i - across,
}))

describe('register lines across the bundle', () => {
  it('[R8] a leaf that lost 12 mm at its numbered end has drift −12, whatever the slant of the line', () => {
    const drifts = driftsFromMarks(flitch, marks, { along: 40, across: -20 })!
    expect([...drifts.values()]).toEqual(lost.map(({ along, across }) => point(-across + 0, -along + 0)))
  })

  it('[R8] leaves without a mark, and drift across without a line there, stay as they are', () => {
    const some = [marks[0]!, { ...marks[4]!, across: null }]
    const drifts = driftsFromMarks(
      { ...flitch, leaves: flitch.leaves.map((leaf) => (leaf.number === 5 ? { ...leaf, drift: point(7, 0) } : leaf)) },
      some,
      { along: 40, across: 0 },
    )!
    expect([...drifts]).toEqual([
      [1, point(0, 0)],
      [5, point(7, -12)],
    ])
    expect(driftsFromMarks(flitch, marks.slice(1), { along: 0, across: 0 })).toBeNull()
  })

  it('[R8] a wild edge is measured from where it meets the numbered end', () => {
    const wild = [point<'leaf'>(30, 5), point<'leaf'>(200, 5), point<'leaf'>(210, 2000), point<'leaf'>(0, 2000)]
    const leaves = flitch.leaves.map((leaf) => (leaf.number === 2 ? { ...leaf, outline: wild } : leaf))
    const [, drift] = [
      ...driftsFromMarks(
        { ...flitch, leaves },
        [
          { leaf: 1, along: 100, across: 50 },
          { leaf: 2, along: 100, across: 50 },
        ],
        { along: 0, across: 0 },
      )!.values(),
    ]
    expect(drift!.x).toBeCloseTo(30, 0)
    expect(drift!.y).toBe(5)
  })
})
