/**
 * Rules.
 * L23 Sorting leaves is a view: the flitch's sequence stays, and equal leaves keep it.
 */
import { describe, expect, it } from 'vitest'
import { blankLeaf, rectangle, usualFlitch } from '../../core/job/usual'
import { leafSize, orderedLeaves, type LeafOrder } from './leaf-order'

const flitch = usualFlitch('f', 'Ash', rectangle(200, 2400), [
  { ...blankLeaf(4), outline: rectangle(180, 2500) },
  blankLeaf(2),
  { ...blankLeaf(9), state: 'spare' },
  {
    ...blankLeaf(1),
    outline: rectangle(230, 2300),
    defects: [{ id: 'd', kind: 'knot', note: '', shape: 'spot', centre: { x: 5, y: 5 }, radius: 3 }],
  },
])

describe('leaves in an order to look at', () => {
  it.each<[LeafOrder, number[]]>([
    ['sequence', [4, 2, 9, 1]],
    ['number', [1, 2, 4, 9]],
    ['longest', [4, 2, 9, 1]],
    ['widest', [1, 2, 9, 4]],
    ['defects', [1, 4, 2, 9]],
    ['state', [9, 4, 2, 1]],
  ])('[L23] %s: %j', (order, numbers) => {
    expect(orderedLeaves(flitch, order).map(({ number }) => number)).toEqual(numbers)
    expect(flitch.leaves.map(({ number }) => number)).toEqual([4, 2, 9, 1])
  })

  it('measures a leaf by its own outline or the common one', () => {
    expect(flitch.leaves.map((leaf) => leafSize(flitch, leaf).width)).toEqual([180, 200, 200, 230])
  })
})
