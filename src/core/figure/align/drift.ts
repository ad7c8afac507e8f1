import { add, point, type Point } from '../../geometry/point'
import { bandPassed } from './band-pass'
import { findShift, type FoundShift, type Reach } from './find-shift'
import type { GreyPicture } from './grey'

/** How far a leaf may lie off its neighbour, mm, as leaves laid to a corner do. */
export const DRIFT_REACH: Reach = { along: 60, across: 10 }

/**
 * How leaf k + 1 lies against leaf k, over the whole leaf: the spot at p on the first is found at p + shift on the second,
 * in the frames of their pictures. Both pictures must have one scale.
 */
export function figureDrift(one: GreyPicture, next: GreyPicture, reach: Reach = DRIFT_REACH): FoundShift {
  const found = findShift(bandPassed(one), bandPassed(next), reach)
  const off = point<'leaf'>(next.origin.x - one.origin.x, next.origin.y - one.origin.y)
  const moved = found.candidates.map((one) => ({ ...one, across: one.across + off.x, along: one.along + off.y }))
  return { ...found, candidates: moved }
}

/**
 * The drift of each leaf against the first from the drift of each against the one before: the sum up to it. Where nothing
 * was found the leaf is taken to lie as the one before it.
 */
export function driftsFrom(pairs: readonly FoundShift[]): readonly Point<'leaf'>[] {
  const drifts = [point<'leaf'>(0, 0)]
  for (const { trust, candidates } of pairs) {
    const [best] = candidates
    const step =
      best && trust !== 'none' ? point<'leaf'>(best.across, trust === 'any' ? 0 : best.along) : point<'leaf'>(0, 0)
    drifts.push(add(drifts.at(-1)!, step))
  }
  return drifts
}
