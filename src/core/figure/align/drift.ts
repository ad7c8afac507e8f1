import { point } from '../../geometry/point'
import { bandPassed } from './band-pass'
import { findShift, type FoundShift, type Reach } from './find-shift'
import type { GreyPicture } from './grey'

/** How far a leaf may lie off its neighbour, mm, as leaves laid to a corner do. */
export const DRIFT_REACH: Reach = { along: 60, across: 10 }

/**
 * How leaf k + 1 lies against leaf k, over the whole leaf: the spot at p on the first is found at p + shift on the second,
 * in the leaves' frames. Both pictures must have one scale. The search is about the shift that lays the pictures on each
 * other corner to corner.
 */
export function figureDrift(one: GreyPicture, next: GreyPicture, reach: Reach = DRIFT_REACH): FoundShift {
  const found = findShift(bandPassed(one), bandPassed(next), reach)
  const off = point<'leaf'>(next.origin.x - one.origin.x, next.origin.y - one.origin.y)
  const moved = found.candidates.map((one) => ({ ...one, across: one.across + off.x, along: one.along + off.y }))
  return { ...found, candidates: moved }
}
