/**
 * The smallest shift and turn that bring a taped sheet into its bounds on the core.
 *
 * Input: for each end of each seam, how far it may go; a seam across the panel (axis x) is judged at the core's top and
 * bottom, one along it (axis y) at the core's left and right. Output: shift and slope of the whole sheet, which is stiff:
 * both seams turn together. Tolerance: that of floating-point steps. Failure: where the bounds leave no way, what is
 * lacking is as small as it can be at its worst place, and split evenly between the two edges there.
 */

/** How far off the centre one end of a seam may lie; low above high where both edges can't have enough. */
export interface SeamRoom {
  readonly axis: 'x' | 'y'
  /** How far this end moves for a slope of 1. */
  readonly lever: number
  readonly low: number
  readonly high: number
}

/** Shift of the seams' crossing, and the slope (tangent of the turn, clockwise positive). */
export interface Lie {
  readonly x: number
  readonly y: number
  readonly slope: number
}

export const STRAIGHT: Lie = { x: 0, y: 0, slope: 0 }

/** No sheet is laid steeper than this. */
const STEEPEST = 0.2
const NOTHING = 1e-9
/** Off the centre by less than this, mm for a slope of 1, is not worth a turn. */
const PREFER_STRAIGHT = 1

/** On the centre where that can be; else as near to it as the bounds let each seam come. */
export function leastShift(rooms: readonly SeamRoom[]): Lie {
  if (rooms.every(({ low, high }) => low <= 0 && high >= 0)) return STRAIGHT
  const [one, other, ...more] = rooms
  if (one && other && more.length === 0) return eachEndAlone(one, other)
  return bothSeams(rooms)
}

/** One seam: its two ends are free of each other, so each goes just as far as it must. */
function eachEndAlone(one: SeamRoom, other: SeamRoom): Lie {
  const [p, q] = [nearestTo(0, one), nearestTo(0, other)]
  const slope = (p - q) / (one.lever - other.lever)
  return { ...STRAIGHT, [one.axis]: p - slope * one.lever, slope }
}

/** Within the room; where there is none, where both sides lack the same. */
const nearestTo = (wanted: number, { low, high }: Pick<SeamRoom, 'low' | 'high'>): number =>
  low > high ? (low + high) / 2 : Math.min(high, Math.max(low, wanted))

/**
 * Two seams share one slope; for a given slope each has its own shift. Both what is lacking and how far off the worse
 * end comes are convex in the slope: first the least lack is found, then among the slopes that lack no more the one
 * with the seams nearest to the centre, and of those alike the least.
 */
function bothSeams(rooms: readonly SeamRoom[]): Lie {
  const across = rooms.filter(({ axis }) => axis === 'x')
  const along = rooms.filter(({ axis }) => axis === 'y')
  const lackAt = (slope: number) => Math.max(lackOf(across, slope), lackOf(along, slope))
  const offAt = (slope: number) =>
    Math.max(offOf(across, slope), offOf(along, slope)) + Math.abs(slope) * PREFER_STRAIGHT
  const best = lowest(lackAt, -STEEPEST, STEEPEST)
  const allowed = Math.max(0, lackAt(best)) + NOTHING
  const slope = lowest(offAt, lastGood(lackAt, allowed, best, -STEEPEST), lastGood(lackAt, allowed, best, STEEPEST))
  return { x: shiftOf(across, slope), y: shiftOf(along, slope), slope }
}

/** What is left for the shift at a slope. */
const shiftRoom = (rooms: readonly SeamRoom[], slope: number) => ({
  low: Math.max(...rooms.map(({ low, lever }) => low - slope * lever)),
  high: Math.min(...rooms.map(({ high, lever }) => high - slope * lever)),
})

function lackOf(rooms: readonly SeamRoom[], slope: number): number {
  const { low, high } = shiftRoom(rooms, slope)
  return (low - high) / 2
}

/** The shift that keeps the seam's worse end nearest to the centre. */
function shiftOf(rooms: readonly SeamRoom[], slope: number): number {
  const moved = rooms.map(({ lever }) => slope * lever)
  return nearestTo(-(Math.min(...moved) + Math.max(...moved)) / 2, shiftRoom(rooms, slope))
}

function offOf(rooms: readonly SeamRoom[], slope: number): number {
  const shift = shiftOf(rooms, slope)
  return Math.max(...rooms.map(({ lever }) => Math.abs(shift + slope * lever)))
}

/** Where a convex function is lowest between two places. */
function lowest(f: (at: number) => number, from: number, to: number): number {
  let [low, high] = [from, to]
  for (let i = 0; i < 100; i++) {
    const third = (high - low) / 3
    if (f(low + third) <= f(high - third)) high -= third
    else low += third
  }
  return (low + high) / 2
}

/** From a place that lacks no more than is allowed, the last such place towards `end`. */
function lastGood(lackAt: (at: number) => number, allowed: number, good: number, end: number): number {
  if (lackAt(end) <= allowed) return end
  let [inside, outside] = [good, end]
  for (let i = 0; i < 60; i++) {
    const middle = (inside + outside) / 2
    if (lackAt(middle) <= allowed) inside = middle
    else outside = middle
  }
  return inside
}
