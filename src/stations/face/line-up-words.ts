import type { FoundShift } from '../../core/figure/align/find-shift'
import type { SeamLook } from '../../core/seams/line-up'
import { showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'

const score = (likeness: number | null): string => (likeness === null ? 'not known' : likeness.toFixed(2))

/** Less than this there is nothing to slide, mm. */
const NOTHING = 0.25

/** What was found at a seam, in a sentence; the figure's likeness, 1 for the same, 0 for strangers, before and after. */
export function slideSentence(look: SeamLook, found: FoundShift | null, unit: LengthUnit): string {
  const seam = `Seam ${look.letter}`
  if (!found) return `${seam}: there is no picture of one of its leaves.`
  const [best, other] = found.candidates
  if (found.trust === 'none' || !best) return `${seam}: the figure is not alike enough on its two sides to say.`
  if (found.trust === 'any') return `${seam}: any slide looks the same (${score(found.before)}). Leave it.`
  if (slidesOffered(found).length === 0)
    return (found.before ?? 0) > LINED_UP
      ? `${seam} is lined up: alike to ${score(found.before)}.`
      : `${seam}: no slide makes it better than it is, alike to ${score(found.before)}.`
  if (found.trust === 'two' && other)
    return `${seam}: alike to ${score(found.before)} now; two slides look as good, to ${score(best.score)} and ${score(other.score)}.`
  return `${seam}: alike to ${score(found.before)} now, to ${score(best.score)} when leaf ${look.second.leaf} is slid ${showLength(Math.abs(best.along), unit, 'seam')}.`
}

/** A seam as alike as this is closed to the eye; a slide that gains less than this is not worth making. */
const LINED_UP = 0.6
const GAIN = 0.03

/** The slides that can be taken at a seam: none where none helps or can be told. */
export const slidesOffered = (found: FoundShift | null): readonly number[] =>
  found && (found.trust === 'clear' || found.trust === 'two')
    ? found.candidates
        .filter(({ along, score }) => Math.abs(along) >= NOTHING && score > (found.before ?? -1) + GAIN)
        .map(({ along }) => -along)
    : []
