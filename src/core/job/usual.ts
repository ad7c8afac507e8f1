import { point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { boxAround, boxRing, boxWidth } from '../geometry/box'
import type { FlitchId, PartId } from '../ids'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { USUAL_BORDER, type Border } from '../patterns/border'
import { USUAL_BOX } from '../patterns/box'
import { USUAL_DIAMOND } from '../patterns/diamond'
import { USUAL_END_MATCH } from '../patterns/end-match'
import { USUAL_FOUR_WAY } from '../patterns/four-way'
import { USUAL_HERRINGBONE } from '../patterns/herringbone'
import { USUAL_PARQUET } from '../patterns/parquet'
import { USUAL_PLANKS } from '../patterns/planks'
import { USUAL_RADIAL } from '../patterns/radial'
import type { Recipe } from '../patterns/recipe'
import { USUAL_STRIPS } from '../patterns/strips'
import { pressingFrom } from '../press/follow-flitch'
import { USUAL_ROOM } from '../press/usual-pressing'
import { USUAL_SHOP } from '../shop'
import type { Job, Jointing, Pair, Part } from './job'
import { LIMITS } from './limits'

/** A job in which nothing has been decided yet. */
export const emptyJob = (name: string): Job => ({
  name,
  unit: 'mm',
  shop: USUAL_SHOP,
  pressRoom: USUAL_ROOM,
  flitches: [],
  parts: [],
  pairs: [],
})

/** A leaf of which only the number is known. */
export const blankLeaf = (number: number): Leaf => ({
  number,
  outline: null,
  defects: [],
  state: 'in use',
  drift: point(0, 0),
  note: '',
  picture: null,
  cuts: [],
})

/** The outline of a leaf given by its width and length alone: the numbered end at y = 0, the left edge at x = 0. */
export const rectangle = (width: number, length: number): Ring<'leaf'> =>
  boxRing({ min: point<'leaf'>(0, 0), max: point<'leaf'>(width, length) })

/** A knife-cut flitch whose outline is taken to be sound to its edges. */
export const usualFlitch = (id: FlitchId, name: string, outline: Ring<'leaf'>, leaves: readonly Leaf[]): Flitch => ({
  id,
  name,
  species: '',
  cut: 'flat',
  figure: 'straight',
  upEnd: 'numbered',
  thickness: 0.6,
  lossBetween: 0,
  leafOneAt: 'top',
  numberedFace: 'upper',
  numberedFaceIs: 'tight',
  outline,
  leaves,
  missing: [],
  sideMargin: 0,
  endMargin: 0,
})

/** What each way of jointing takes off an edge. */
export const USUAL_ALLOWANCE: Readonly<Record<Jointing, number>> = { packet: 3, pair: 1.5, overlap: 6 }

/** A part for the bag press, faced in the plainest way from the flitch's first leaf. */
export function usualPart(id: PartId, name: string, width: number, length: number, flitch: Flitch): Part {
  return {
    id,
    name,
    width,
    length,
    outline: { shape: 'rectangle' },
    showClass: 'show',
    core: { top: 0, right: 0, bottom: 0, left: 0 },
    overhang: { top: 10, right: 6, bottom: 10, left: 6 },
    jointing: 'packet',
    allowance: USUAL_ALLOWANCE.packet,
    laterAllowance: 8,
    lying: false,
    finished: false,
    flitch: flitch.id,
    recipe: usualRecipe('strips', firstLeafOf(flitch)),
    windowTurn: 0,
    positions: {},
    chosen: {},
    nudges: {},
    madeUp: {},
    asCut: {},
    border: null,
    pressing: pressingFrom(flitch, 'strips'),
  }
}

/**
 * The border that a part is given first: not so wide that it takes the field, in pieces that its leaves are wide enough
 * for, with what corners and edges lose.
 */
export function usualBorder(part: Part, flitch: Flitch): Border {
  const { width, pieceLength } = USUAL_BORDER
  const share = Math.min(part.width, part.length) / 6
  const leaf = boxWidth(boxAround(flitch.outline)) - 2 * flitch.sideMargin
  const lost = Math.max(...Object.values(part.overhang)) + part.allowance + part.laterAllowance
  const { least } = LIMITS.borderPiece
  return {
    ...USUAL_BORDER,
    width: Math.max(LIMITS.borderWidth.least, Math.min(width, Math.floor(share / 5) * 5)),
    pieceLength: Math.max(least, Math.min(pieceLength, Math.floor((leaf - lost) / 10) * 10)),
  }
}

/** Two doors booked across a gap as hinges leave it, each pressed by itself. */
export const usualPair = (first: PartId, second: PartId): Pair => ({
  first,
  second,
  meet: 'booked',
  gap: 3,
  pressed: 'apart',
  overhang: 6,
})

/** The number of the leaf that comes first in the sequence. */
export const firstLeafOf = (flitch: Flitch): number => flitch.leaves[0]?.number ?? 1

const USUAL: { readonly [P in Recipe['pattern']]: Extract<Recipe, { pattern: P }> } = {
  strips: USUAL_STRIPS,
  'four-way': USUAL_FOUR_WAY,
  'end match': USUAL_END_MATCH,
  radial: USUAL_RADIAL,
  diamond: USUAL_DIAMOND,
  box: USUAL_BOX,
  herringbone: USUAL_HERRINGBONE,
  parquet: USUAL_PARQUET,
  planks: USUAL_PLANKS,
}

/** The recipe of a pattern before anything has been chosen in it. */
export const usualRecipe = <P extends Recipe['pattern']>(
  pattern: P,
  firstLeaf: number,
): Extract<Recipe, { pattern: P }> => ({
  ...(USUAL[pattern] as Extract<Recipe, { pattern: P }>),
  firstLeaf,
})
