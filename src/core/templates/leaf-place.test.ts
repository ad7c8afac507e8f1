/**
 * [T23] A place on a leaf is told at the corners of the piece: along the grain from the numbered end as it is there,
 *   across from the wild edge on that side, however slanted both are; past the leaf the distance is negative.
 */
import { describe, expect, it } from 'vitest'
import type { Piece } from '../fit/lay-face'
import { point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { blankLeaf, usualFlitch } from '../job/usual'
import { leafPlace } from './leaf-place'

const ring = (...points: readonly (readonly [number, number])[]): Ring<'leaf'> => points.map(([x, y]) => point(x, y))

/** The numbered end falls by 1 in 10 to the right; both wild edges lean. */
const slanted = ring([10, 20], [210, 0], [230, 1000], [0, 980])
const flitch = usualFlitch('ash', 'Ash', slanted, [blankLeaf(1)])

/** A piece of which only the leaf and the place matter. */
const pieceAt = (roughOnLeaf: Ring<'leaf'>): Piece => ({ flitch, leaf: blankLeaf(1), roughOnLeaf }) as unknown as Piece

const rectangleAt = (left: number, top: number, right: number, bottom: number) =>
  pieceAt(ring([left, top], [right, top], [right, bottom], [left, bottom]))

describe('a place on a leaf', () => {
  it('[T23] a rectangle on a slanted leaf, by hand', () => {
    const { near, far } = leafPlace(rectangleAt(60, 100, 160, 500))
    // the numbered end lies at y = 15 above the left corners, at y = 5 above the right ones
    expect(near.left.along).toBeCloseTo(85, 9)
    expect(near.right.along).toBeCloseTo(95, 9)
    expect(far.left.along).toBeCloseTo(485, 9)
    expect(far.right.along).toBeCloseTo(495, 9)
    // the left edge lies at x = 10 − 10·80/960, then at 5; the right one at 212, then at 220
    expect(near.left.across).toBeCloseTo(50 + 10 / 12, 9)
    expect(near.right.across).toBeCloseTo(52, 9)
    expect(far.left.across).toBeCloseTo(55, 9)
    expect(far.right.across).toBeCloseTo(60, 9)
  })

  it('[T23] the tip of a wedge is one corner, told from both edges', () => {
    const { near, far } = leafPlace(pieceAt(ring([100, 200], [140, 600], [60, 600])))
    expect(near.left.across + near.right.across).toBeCloseTo(214 - (10 - 10 * (180 / 960)), 9)
    expect(near.left.along).toBe(near.right.along)
    expect(far.left.across).toBeCloseTo(60 - (10 - 10 * (580 / 960)), 9)
    expect(far.right.across).toBeCloseTo(222 - 140, 9)
  })

  it('[T23] past the numbered end and past a wild edge the distances are negative', () => {
    const { near, far } = leafPlace(rectangleAt(-20, -10, 160, 500))
    expect(near.right.along).toBeCloseTo(-15, 9)
    expect(far.left.across).toBeCloseTo(-25, 9)
    expect(far.right.across).toBeCloseTo(60, 9)
  })

  it('[T23] a notch in the numbered end is measured from its bottom', () => {
    const notched = ring([0, 0], [80, 0], [100, 60], [120, 0], [200, 0], [200, 900], [0, 900])
    const ash = usualFlitch('ash', 'Ash', notched, [blankLeaf(1)])
    const { near } = leafPlace({ ...rectangleAt(100, 100, 180, 400), flitch: ash })
    expect(near.left.along).toBeCloseTo(40, 9)
    expect(near.right.along).toBeCloseTo(100, 9)
  })
})
