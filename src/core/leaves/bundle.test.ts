import { describe, expect, it } from 'vitest'
import { blankLeaf, rectangle, usualFlitch } from '../job/usual'
import { depthShown, placeInSequence, runOfLeaves } from './bundle'

const numbered = (...numbers: number[]) => numbers.map(blankLeaf)
const flitch = { ...usualFlitch('f', 'Walnut', rectangle(200, 2000), numbered(7, 3, 12, 5)), thickness: 1 }

describe('a bundle of leaves', () => {
  it('[L1] takes the sequence from the order, not from the numbers, and counts missing leaves in', () => {
    const gaps = {
      ...flitch,
      missing: [
        { after: 3, count: 2 },
        { after: 5, count: 9 },
      ],
    }
    expect([7, 3, 12, 5].map((number) => placeInSequence(gaps, number))).toEqual([0, 1, 4, 5])
  })

  it.each([
    // on top and numbered above, the number looks away from the next leaf
    { leafOneAt: 'top', numberedFace: 'upper', up: [0, 1, 2, 3], down: [1, 2, 3, 4] },
    { leafOneAt: 'top', numberedFace: 'lower', up: [1, 2, 3, 4], down: [0, 1, 2, 3] },
    { leafOneAt: 'bottom', numberedFace: 'upper', up: [1, 2, 3, 4], down: [0, 1, 2, 3] },
    { leafOneAt: 'bottom', numberedFace: 'lower', up: [0, 1, 2, 3], down: [1, 2, 3, 4] },
  ] as const)('[L2] leaf 1 at the $leafOneAt, $numberedFace face numbered: depths shown', ({ up, down, ...lies }) => {
    const bundle = { ...flitch, ...lies }
    expect([7, 3, 12, 5].map((number) => depthShown(bundle, number, false))).toEqual(up)
    expect([7, 3, 12, 5].map((number) => depthShown(bundle, number, true))).toEqual(down)
  })

  it('[L3] gives a run of the leaves in use, from the leaf asked for to the end at most', () => {
    const kept = {
      ...flitch,
      leaves: flitch.leaves.map((leaf) => (leaf.number === 12 ? { ...leaf, state: 'spare' as const } : leaf)),
    }
    expect(runOfLeaves(kept, 3, 9).map(({ number }) => number)).toEqual([3, 5])
    expect(runOfLeaves(kept, 12, 1).map(({ number }) => number)).toEqual([5])
    expect(runOfLeaves(kept, 99, 2).map(({ number }) => number)).toEqual([7, 3])
  })
})
