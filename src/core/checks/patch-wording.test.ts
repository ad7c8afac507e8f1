/** [S28] Where a patch comes from is told with the leaf, the side up, and distances that a rule can measure. */
import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import type { PatchPlace } from '../seams/find-patch'
import { patchSentences } from './patch-wording'

const spot = { at: point<'leaf'>(120, 412), fromNumberedEnd: 411.6, fromLeft: 120, fromRight: 95.2 }
const other = { leaf: 4, state: 'in use', steps: 1, spot, trouble: null } as const
const place: PatchPlace = {
  cell: 'L1',
  flitch: 'walnut',
  ofFlitch: null,
  leaf: 3,
  turnedOver: true,
  spot,
  others: [other],
}

describe('[S28] words for a patch', () => {
  it('the leaf, the next one, and how to lay it', () => {
    expect(patchSentences(place, 'mm')).toEqual([
      'This is leaf 3, turned over. With the number up, the spot lies 412 mm from the numbered end, 120 mm from the left edge and 95 mm from the right.',
      'Leaf 4, 1 leaf on, has the same figure free. With the number up, the spot lies 412 mm from the numbered end, 120 mm from the left edge and 95 mm from the right.',
      'Cut the patch with the number up, and lay it turned over, as the leaf lies, its grain the same way.',
    ])
  })

  it('what stands in the way, and the nearest free leaf beyond', () => {
    const others = [
      { ...other, trouble: { trouble: 'taken', part: 'Door, left' } },
      { ...other, leaf: 2, steps: -1, trouble: { trouble: 'defect', kind: 'knot' } },
      { ...other, leaf: 5, steps: 2, trouble: { trouble: 'off the leaf' } },
      { ...other, leaf: 9, steps: 6, state: 'spare' },
    ] as const
    const told = patchSentences({ ...place, turnedOver: false, others }, 'mm')
    expect(told.slice(1, 4)).toEqual([
      'Leaf 4, 1 leaf on: “Door, left” takes this wood.',
      'Leaf 2, 1 leaf back: there is a knot at the spot.',
      'Leaf 5, 2 leaves on: the spot lies on or beside its edge.',
    ])
    expect(told[4]).toMatch(/^The nearest free one: leaf 9, a spare, 6 leaves on, has the same figure free/)
    expect(told[5]).toContain('Cut the patch with the number up, and lay it so')
  })

  it('nothing free', () => {
    expect(patchSentences({ ...place, others: [] }, 'mm').at(-1)).toContain('No other leaf has this spot free.')
  })
})
