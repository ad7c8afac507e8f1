/**
 * The card frames by which a window is found again on wood that has no straight edge: which leaves share one, and whether
 * it is one frame or two ends of one.
 *
 * Input: a laid face. Output: for each template one viewfinder for every few of its leaves, in the order of the run; pieces
 * without a leaf, from made-up leaves, and those that are cut already have none. Frames are in the window's frame.
 */
import type { Picture } from '../drawing/drawing'
import { landmarkBox } from '../figure/landmarks/find-landmarks'
import type { Landmark } from '../figure/landmarks/landmark'
import type { LaidFace, Piece } from '../fit/lay-face'
import { originOnLeaf } from '../fit/placement'
import { boxAround, boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box'
import { isConvex } from '../geometry/convex'
import { point, subtract, type Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import type { CellId, FlitchId } from '../ids'
import { leafOutline } from '../leaves/bundle'
import type { Defect, Leaf } from '../leaves/leaf'
import { windowTemplates, type WindowTemplate } from './window-template'

/** Leaves that have their landmarks on one card: more would not be told apart. */
const ON_ONE = 4

/** A window longer than this, mm, is found by two ends of a frame: a whole one of paper would bend. */
const LONGEST_WHOLE = 450

export interface Viewfinder {
  /** That of the template, with a letter where its leaves take more than one card. */
  readonly name: string
  readonly template: WindowTemplate
  readonly pieces: readonly Piece[]
  readonly frame: 'whole' | 'ends'
}

export function viewfinders(face: LaidFace): readonly Viewfinder[] {
  return windowTemplates(face).flatMap((template) => {
    const pieces = template.pieces.filter((piece) => isSought(piece))
    const cards = Math.ceil(pieces.length / ON_ONE)
    const each = Math.ceil(pieces.length / cards)
    const long = boxHeight(boxAround(template.rough)) > LONGEST_WHOLE
    return Array.from({ length: cards }, (_, i) => ({
      name: cards > 1 ? `${template.name}${String.fromCharCode(97 + i)}` : template.name,
      template,
      pieces: pieces.slice(i * each, (i + 1) * each),
      frame: long && isConvex(template.rough) ? ('ends' as const) : ('whole' as const),
    }))
  })
}

const isSought = ({ leaf, made, cut }: Piece): boolean => leaf !== null && made === null && !cut

/** What of a leaf is looked at for the landmarks of a piece's window. */
export interface LandmarkLook {
  readonly cell: CellId
  readonly flitch: FlitchId
  readonly leaf: number
  readonly window: Ring<'leaf'>
  readonly outline: Ring<'leaf'>
  readonly box: Box<'leaf'>
  readonly knots: readonly Point<'leaf'>[]
}

/** One for each piece that has a viewfinder. */
export const landmarkLooks = (face: LaidFace): readonly LandmarkLook[] =>
  face.pieces.flatMap((piece) => (piece.leaf && isSought(piece) ? [lookAt(piece, piece.leaf)] : []))

const lookAt = ({ cell, flitch, roughOnLeaf }: Piece, leaf: Leaf): LandmarkLook => ({
  cell: cell.id,
  flitch: flitch.id,
  leaf: leaf.number,
  window: roughOnLeaf,
  outline: leafOutline(flitch, leaf),
  box: landmarkBox(roughOnLeaf),
  knots: leaf.defects.filter(({ kind }) => kind === 'knot').map(middleOf),
})

function middleOf(defect: Defect): Point<'leaf'> {
  if (defect.shape === 'spot') return defect.centre
  return boxCentre(boxAround(defect.shape === 'area' ? defect.ring : [defect.from, defect.to]))
}

/** What was found for one piece: its landmarks, and the leaf at its window as it looks. */
export interface Sight {
  readonly landmarks: readonly Landmark[]
  readonly picture: (Pick<Picture, 'bytes' | 'type'> & { readonly box: Box<'leaf'> }) | null
}

/** By the cell of the piece; pieces of leaves without a picture are missing. */
export type Sights = ReadonlyMap<CellId, Sight>

/** A landmark as it is measured in a viewfinder, mm. */
export interface LandmarkPlace {
  readonly landmark: Landmark
  /** In the window's frame. */
  readonly at: Point<'window'>
  /** From the inner edge of the frame at the numbered end towards the far end. */
  readonly along: number
  /** From the centre ticks, to the right. */
  readonly across: number
}

export function landmarkPlaces({ place, rough }: Piece, { landmarks }: Sight): readonly LandmarkPlace[] {
  const box = boxAround(rough)
  const origin = originOnLeaf(place)
  return landmarks.map((landmark) => {
    const { x, y } = subtract(landmark.at, origin)
    return {
      landmark,
      at: point(x, y),
      along: y - box.min.y,
      across: x - (box.min.x + boxWidth(box) / 2),
    }
  })
}
