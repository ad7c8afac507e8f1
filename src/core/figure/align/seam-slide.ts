import { bandPassed } from './band-pass'
import { findShift, type FoundShift, type Reach } from './find-shift'
import type { GreyPicture } from './grey'
import { likenessAt } from './likeness'

/** How wide a strip is looked at on each side of a seam, mm. */
export const STRIP = 16

/** A shorter seam does not say enough for one number, mm. */
export const LEAST_SEAM = 600

/** How far a leaf is slid along a seam, and how far the strips may lie off each other across it, mm. */
export const SLIDE_REACH: Reach = { along: 40, across: 3 }

/**
 * The lengthwise slide of the second leaf that lines the figure up best at a seam. Both strips are given as they lie along
 * the seam: rows along it, columns away from it, the seam at column 0 on both (so a book match is mirrored already, and
 * the figure of a slip match is compared where it is cut). The spot at y of the first is found at y + along of the second:
 * to bring it there the second is moved by −along. Searched across too, since leaves wander a little sideways; but the
 * seam stays where it is, so the scores are what is seen when the leaf is slid along only.
 */
export function seamSlide(first: GreyPicture, second: GreyPicture, reach: Reach = SLIDE_REACH): FoundShift {
  const [one, other] = [bandPassed(first, 1), bandPassed(second, 1)]
  const found = findShift(one, other, reach)
  const seen = (along: number) => likenessAt(one, other, { across: 0, along: Math.round(along * one.pxPerMm) })
  const candidates = found.candidates.map((candidate) => ({ ...candidate, score: seen(candidate.along) ?? 0 }))
  return { ...found, candidates }
}
