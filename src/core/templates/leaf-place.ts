/**
 * Where a rough piece lies on its leaf, told so that it can be found again with a rule, numbered side up.
 *
 * Input: a piece with a leaf; the leaf's outline may be wild and slanted. Output: at each end of the piece its left and
 * its right corner (one and the same at the tip of a wedge), each measured along the grain from the numbered end and
 * across from the wild edge on its side. A wild edge gives no straight line to measure from, so nothing is told between
 * the ends. Tolerance: corners within 0.01 mm of an end count as lying on it. Failure: none; where the piece reaches
 * past the leaf the distance is negative, or is measured from the nearest place on the leaf.
 */
import type { Piece } from '../fit/lay-face'
import { boxAround } from '../geometry/box'
import type { Point } from '../geometry/point'
import { ringEdges, type Ring } from '../geometry/polygon'
import { levelCrossings } from '../geometry/segment'
import { present } from '../invariant'
import { leafOutline } from '../leaves/bundle'

/** One corner of a piece on its leaf. */
export interface CornerPlace {
  /** From the numbered end, straight along the grain. */
  readonly along: number
  /** From the wild edge on its side, square to the grain. */
  readonly across: number
}

export interface EndPlace {
  readonly left: CornerPlace
  readonly right: CornerPlace
}

export interface LeafPlace {
  /** The end of the piece towards the numbered end of the leaf, and the other. */
  readonly near: EndPlace
  readonly far: EndPlace
}

const ON_END = 0.01

export function leafPlace(piece: Piece): LeafPlace {
  const outline = pieceOutline(piece)
  const { min, max } = boxAround(piece.roughOnLeaf)
  return { near: endPlace(outline, piece.roughOnLeaf, min.y), far: endPlace(outline, piece.roughOnLeaf, max.y) }
}

/** The outline of the leaf that a piece is cut from. On a made-up leaf places are measured once it is joined. */
export const pieceOutline = ({ flitch, leaf, made }: Piece): Ring<'leaf'> =>
  made?.outline[0] ?? leafOutline(flitch, present(leaf, 'a piece without a leaf has no place'))

/** A spot of a leaf, such as a pin: along from the numbered end, across from the left wild edge. */
export function spotPlace(piece: Piece, spot: Point<'leaf'>): CornerPlace {
  const outline = pieceOutline(piece)
  return { along: alongTo(outline, spot), across: spot.x - edgeBeside(outline, spot, 'left') }
}

function endPlace(outline: Ring<'leaf'>, rough: Ring<'leaf'>, y: number): EndPlace {
  const corners = rough.filter((p) => Math.abs(p.y - y) < ON_END)
  const left = corners.reduce((most, p) => (p.x < most.x ? p : most))
  const right = corners.reduce((most, p) => (p.x > most.x ? p : most))
  return {
    left: { along: alongTo(outline, left), across: left.x - edgeBeside(outline, left, 'left') },
    right: { along: alongTo(outline, right), across: edgeBeside(outline, right, 'right') - right.x },
  }
}

/** From the numbered end to a corner: to the nearest place of the outline before it, or behind it if there is none. */
function alongTo(outline: Ring<'leaf'>, corner: Point<'leaf'>): number {
  const ends = crossings(outline, 'x', corner.x)
  return corner.y - (lastUpTo(ends, corner.y) ?? Math.min(...ends))
}

function edgeBeside(outline: Ring<'leaf'>, corner: Point<'leaf'>, side: 'left' | 'right'): number {
  const edges = crossings(outline, 'y', corner.y)
  const beside = side === 'left' ? lastUpTo(edges, corner.x) : firstFrom(edges, corner.x)
  return beside ?? (side === 'left' ? Math.min(...edges) : Math.max(...edges))
}

/** Where the outline crosses a line at a level of x or y; past the leaf, the line that just meets it. */
function crossings(outline: Ring<'leaf'>, fixed: 'x' | 'y', wanted: number): readonly number[] {
  const { min, max } = boxAround(outline)
  const at = Math.min(max[fixed] - 1e-6, Math.max(min[fixed] + 1e-6, wanted))
  return levelCrossings(ringEdges(outline), fixed, at)
}

const lastUpTo = (places: readonly number[], at: number): number | null => {
  const before = places.filter((place) => place <= at)
  return before.length ? Math.max(...before) : null
}

const firstFrom = (places: readonly number[], at: number): number | null => {
  const after = places.filter((place) => place >= at)
  return after.length ? Math.min(...after) : null
}
