/**
 * A short leaf made longer in its own plane: a sound rectangle is cut along a straight line at a slant to the grain,
 * both faces are trued, and one half is slid along the other.
 *
 * Input: a rectangle with its length along the grain; a slope is the tangent of the angle between cut and grain, so
 * 1:k is 1/k; the loss is what truing takes off each of the two faces. Output: millimetres. Tolerance: that of
 * floating-point steps. Failure: a tagged reason with the most that there is.
 *
 * Where the formulas come from: the near half stays; the far half moves by `gain` along the grain and, so that the
 * trued faces meet again, by slope · gain + 2 · loss · √(1 + slope²) across. Across, that is what the piece loses.
 */
import { refused, ok, type Result } from '../result'
import { ROUNDING } from '../geometry/tolerance'

export interface Sound {
  /** Across the grain. */
  readonly width: number
  /** Along the grain. */
  readonly length: number
}

export interface Scarf {
  /** The tangent of the angle between the cut and the grain: 1/k for a cut of 1 in k. */
  readonly slope: number
  /** What the piece gains in length. */
  readonly gain: number
  /** What truing takes off each of the two faces. */
  readonly loss: number
}

/** A line along the cut is so much longer than its length along the grain. */
export const alongCut = (slope: number): number => Math.hypot(1, slope)

/** The slope of a cut from corner to corner. */
export const cornerSlope = ({ width, length }: Sound): number => width / length

/**
 * The flattest cut that still gives the whole width: the trued face of each half then runs into a corner. It is a
 * little flatter than corner to corner, by the loss, and leaves the widest piece of all straight cuts:
 * slope · length + 2 · loss · √(1 + slope²) = width, solved for the slope.
 */
export function flattestSlope({ width, length }: Sound, loss: number): number {
  const lost = 2 * loss
  const root = Math.sqrt(width * width + length * length - lost * lost)
  return (width * length - lost * root) / (length * length - lost * lost)
}

/** How far the figure is carried across at the seam; the piece gets narrower by as much. */
export const figureStep = ({ slope, gain, loss }: Scarf): number => slope * gain + 2 * loss * alongCut(slope)

/** How far the halves are slid along the cut, from where they were when the trued faces are just closed up squarely. */
export const slideAlongCut = ({ slope, gain, loss }: Scarf): number => gain * alongCut(slope) + 2 * loss * slope

/** The largest rectangle of the scarfed length, for a slope no flatter than `flattestSlope`. */
export const scarfedSize = (sound: Sound, scarf: Scarf): Sound => ({
  width: sound.width - figureStep(scarf),
  length: sound.length + scarf.gain,
})

/** Why no cut and slide gives the wanted size, with the most that there is. */
export type NoScarf =
  /** The wanted size lies within the leaf as it is. */
  | { readonly kind: 'not needed' }
  /** Even uncut, or cut with no gain at all, the leaf is narrower than wanted. */
  | { readonly kind: 'too narrow'; readonly mostWidth: number }
  /** Wide enough for some gain, not for this one. */
  | { readonly kind: 'too long'; readonly mostLength: number; readonly mostWidth: number }

/** A scarf that gives a wanted size, and the slopes between which any would. */
export interface ScarfFound extends Scarf {
  readonly flattest: number
  readonly steepest: number
  /** What it gives: the wanted length, and the width before the piece is trimmed to what is wanted. */
  readonly size: Sound
}

/**
 * The cut and slide for a wanted size: corner to corner where that is wide enough, else the flattest there is. When
 * there is none, the greatest length for the wanted width and the greatest width for the wanted length.
 */
export function scarfForSize(sound: Sound, wanted: Sound, loss: number): Result<ScarfFound, NoScarf> {
  const gain = wanted.length - sound.length
  if (gain <= 0 && wanted.width <= sound.width) return refused({ kind: 'not needed' })
  const flattest = flattestSlope(sound, loss)
  const uncut = flattest * sound.length
  if (flattest <= 0 || gain <= 0) return refused({ kind: 'too narrow', mostWidth: sound.width })
  if (wanted.width > uncut) return refused({ kind: 'too narrow', mostWidth: Math.max(0, uncut) })
  const mostLength = 2 * sound.length - wanted.width / flattest
  const mostWidth = Math.max(0, flattest * (sound.length - gain))
  if (wanted.width > mostWidth + ROUNDING) return refused({ kind: 'too long', mostLength, mostWidth })
  const steepest = Math.max(flattest, steepestSlope(sound.width - wanted.width, gain, loss))
  const corner = cornerSlope(sound)
  const slope = corner <= steepest ? corner : flattest
  return ok({ slope, gain, loss, flattest, steepest, size: scarfedSize(sound, { slope, gain, loss }) })
}

/** The slope at which the figure steps by `spare`: slope · gain + 2 · loss · √(1 + slope²) = spare. */
function steepestSlope(spare: number, gain: number, loss: number): number {
  const lost = 2 * loss
  const square = gain * gain - lost * lost
  // gain and loss just cancel: the equation is linear
  if (Math.abs(square) < ROUNDING) return (spare * spare - lost * lost) / (2 * spare * gain)
  const root = Math.sqrt(Math.max(0, spare * spare + square))
  return (spare * gain - lost * root) / square
}
