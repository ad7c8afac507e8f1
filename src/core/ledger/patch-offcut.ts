/**
 * Where a patch can be had from the same leaf: on an offcut of it, as near to the spot as the patch fits.
 *
 * Input: what is left of a leaf, a spot in leaf mm, the patch taken to be round. Output: a place in an offcut's
 * largest sound strip, so that the whole patch lies in it; those through which the same lines of grain run come before
 * those beside, then the nearest. Tolerance: that of floating-point steps. Failure: null where no offcut is wide enough, or
 * they are let go of.
 */
import { boxHeight, boxWidth, type Box } from '../geometry/box'
import { distance, point, type Point } from '../geometry/point'
import { ROUNDING } from '../geometry/tolerance'
import { leafSpot, type LeafSpot } from '../seams/find-patch'
import type { LeafRest, Offcut } from './offcuts'

export interface OffcutSpot {
  readonly offcut: Offcut
  readonly spot: LeafSpot
  /** From the spot asked about; along the grain positive away from the numbered end, across positive to the right. */
  readonly along: number
  readonly across: number
  /** The same lines of grain run through it: it lies straight along from the spot. */
  readonly sameLines: boolean
}

export function offcutBeside(
  { outline, offcuts, letGo }: LeafRest,
  at: Point<'leaf'>,
  radius: number,
): OffcutSpot | null {
  if (letGo) return null
  const spots = offcuts.flatMap((offcut): readonly OffcutSpot[] => {
    const near = offcut.use === 'waste' || !offcut.strip ? null : nearestFit(offcut.strip.box, at, radius)
    const spot = near && leafSpot(outline, near)
    if (!near || !spot) return []
    const across = near.x - at.x
    return [{ offcut, spot, along: near.y - at.y, across, sameLines: Math.abs(across) < ROUNDING }]
  })
  const off = ({ spot }: OffcutSpot) => distance(spot.at, at)
  return spots.sort((p, q) => Number(q.sameLines) - Number(p.sameLines) || off(p) - off(q))[0] ?? null
}

/** The place nearest to a spot at which a circle lies wholly in a box; null where it does not fit. */
function nearestFit(box: Box<'leaf'>, at: Point<'leaf'>, radius: number): Point<'leaf'> | null {
  if (Math.min(boxWidth(box), boxHeight(box)) < 2 * radius) return null
  const held = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most)
  return point(held(at.x, box.min.x + radius, box.max.x - radius), held(at.y, box.min.y + radius, box.max.y - radius))
}
