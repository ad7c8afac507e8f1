/**
 * What would make leaves long or wide enough that are not: a scarf, or a strip put on along an edge.
 *
 * Input: a face whose pieces have no place in common, as it lies on its leaves. Output: decisions that were tried on
 * the common sound wood of the leaves; whether they do for every leaf the caller finds out by laying the face. Where no
 * scarf gives the size, the most that was found. Tolerance: that of the searches. Failure: null.
 */
import { boxAround, boxHeight, boxRing, boxWidth, type Box } from '../geometry/box'
import { intersectAll, regionLess } from '../geometry/clip'
import { add, point } from '../geometry/point'
import { transformRegion, type Region } from '../geometry/polygon'
import { translation } from '../geometry/transform'
import type { Part } from '../job/job'
import type { Lengthening, SlantedCut, Widening } from '../job/make-up'
import { USUAL_ALLOWANCE } from '../job/usual'
import type { Sound } from '../scarf/extension'
import { scarfedPiece } from '../scarf/piece'
import { searchScarf, type ScarfSearch } from '../scarf/search'
import { largestRectangle, regionEdges, widestRectangle } from '../scarf/strip'
import type { Piece } from './lay-face'

/** What is trued off each face: as the packet is jointed where a whole run is cut as one, else as a pair. */
export const scarfLoss = ({ jointing, allowance }: Part, wholeRun: boolean): number =>
  wholeRun && jointing === 'packet' ? allowance : USUAL_ALLOWANCE.pair

/** The sound wood that leaves have in common, shifts taken off, and the upright size that holds every rough piece. */
export function commonDemand(pieces: readonly Piece[]): { readonly wood: Region<'leaf'>; readonly wanted: Sound } {
  const shifted = pieces.map(({ usable, place }) => {
    const { x, y } = add(place.drift, place.nudge)
    return transformRegion(translation<'leaf'>(-x, -y), usable)
  })
  const box = boxAround(pieces.flatMap(({ rough }) => rough))
  return { wood: intersectAll(shifted), wanted: { width: boxWidth(box), length: boxHeight(box) } }
}

/** What a search for a scarf came to; `most` is the greatest width it found for the wanted length. */
export interface ScarfTried {
  readonly lengthening: Lengthening | null
  readonly wanted: Sound
  /** null where no cut gives the length at all. */
  readonly most: number | null
}

/** A scarf through wood, for the leaf named or (null) for a whole run. */
export function searchLengthening(wood: Region<'leaf'>, wanted: Sound, loss: number, leaf: number | null): ScarfTried {
  const found = wood.length > 0 ? searchScarf({ flitch: '', leaf: leaf ?? 0 }, wood, wanted, loss) : null
  if (!found) return { lengthening: null, wanted, most: null }
  const lengthening = found.enough
    ? ({ how: 'longer', leaf, spacing: null, cut: markable(wood, wanted, found) } as const)
    : null
  return { lengthening, wanted, most: found.width }
}

/** The cut found, in numbers that can be marked with a rule if one so marked does as well. */
function markable(wood: Region<'leaf'>, wanted: Sound, found: ScarfSearch): SlantedCut {
  const { cut } = found
  const rounded: SlantedCut = {
    ...cut,
    slope: 1 / (Math.round(10 / cut.slope) / 10),
    gain: Math.ceil(cut.gain * 2) / 2,
    through: point(Math.round(cut.through.x * 2) / 2, Math.round(cut.through.y)),
  }
  const piece = scarfedPiece({ flitch: '', leaf: 0 }, wood, rounded)
  const widest = piece && widestRectangle(regionEdges([piece.outline]), wanted.length)
  return widest && boxWidth(widest.box) >= wanted.width ? rounded : cut
}

/** Where strips may come from: a leaf by its number, or (null) the leaf that is made wider itself. */
export interface StripSource {
  readonly from: number | null
  readonly wood: Region<'leaf'>
}

/**
 * A strip that makes the widest piece of the wanted length as wide as wanted: from the first source that has one long
 * enough, else from the first whose wood a scarf makes long enough.
 */
export function searchWidening(
  wood: Region<'leaf'>,
  wanted: Sound,
  loss: number,
  leaf: number | null,
  sources: readonly StripSource[],
): Widening | null {
  const widest = wood.length > 0 ? widestRectangle(regionEdges(wood), wanted.length) : null
  if (!widest || boxWidth(widest.box) >= wanted.width) return null
  const kept = widest.box
  // a tenth over, so that what the grid leaves does not make it too narrow
  const strip: Sound = { width: wanted.width - boxWidth(kept) + 2 * loss + 0.1, length: wanted.length }
  const offcuts = sources.map(({ from, wood: source }) => ({
    from,
    wood: from === null ? regionLess(source, [[boxRing(kept)]]) : source,
  }))
  const base = { how: 'wider', leaf, spacing: null, side: 'right', kept, loss } as const
  for (const offcut of offcuts) {
    const found = widestRectangle(regionEdges(offcut.wood), strip.length)
    if (found && boxWidth(found.box) >= strip.width) {
      const ripped = ofWidth(found.box, strip.width)
      return { ...base, from: offcut.from, offcut: ripped, cut: null, strip: ripped }
    }
  }
  for (const offcut of offcuts) {
    const made = scarfedStrip(offcut.wood, strip, loss)
    if (made) return { ...base, from: offcut.from, ...made }
  }
  return null
}

const ofWidth = ({ min, max }: Box<'leaf'>, width: number): Box<'leaf'> => ({ min, max: point(min.x + width, max.y) })

/** The largest rectangle of an offcut made longer by a scarf until it gives the strip; narrow waste is no offcut. */
function scarfedStrip(
  wood: Region<'leaf'>,
  strip: Sound,
  loss: number,
): Pick<Widening, 'offcut' | 'cut' | 'strip'> | null {
  const best = wood.length > 0 ? largestRectangle(regionEdges(wood)) : null
  if (!best || boxWidth(best.box) < strip.width) return null
  const offcut = best.box
  const found = searchScarf({ flitch: '', leaf: 0 }, [[boxRing(offcut)]], strip, loss)
  if (!found?.enough) return null
  const { min } = found.box
  const placed = { min: point<'leaf'>(min.x, min.y), max: point<'leaf'>(min.x + strip.width, min.y + strip.length) }
  return { offcut, cut: found.cut, strip: placed }
}
