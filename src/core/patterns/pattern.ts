import { point, type Point } from '../geometry/point'
import type { Edges, Side } from '../geometry/box'
import type { Edge, Ring } from '../geometry/polygon'
import type { Transform } from '../geometry/transform'
import type { CellId } from '../ids'

/**
 * A pattern never meets a leaf. It is given the sizes of the face, a count, and how deep the numbered face of a leaf
 * lies; it gives cells, each as the wood on the inner side of a few straight lines, with the way a leaf is laid there.
 */
export interface Plan {
  readonly cells: readonly PlannedCell[]
  /** The outer edges that are trued together with the seams. */
  readonly outerJointed: readonly Side[]
  /** Columns from left to right, as they stand in the finished panel; null where there are none. */
  readonly columns: readonly { readonly from: number; readonly to: number }[] | null
}

export interface PlannedCell {
  /** From the place in the pattern, so that it survives a wider face. */
  readonly id: CellId
  /** Which leaf of the run lies here, counted from 0. */
  readonly rank: number
  readonly bounds: readonly Bound[]
  /** The bounds of the piece as it is cut and jointed, where it is cut full; else they are those of the cell. */
  readonly cutBounds?: readonly Bound[]
  readonly lay: Transform<'window', 'panel'>
  readonly turn: Turn
  /** A jointed sheet: the strips along its grain that were joined before it is cut. A piece from one leaf has none. */
  readonly strips?: readonly PlannedStrip[]
}

/** A strip of a jointed sheet, with a leaf of its own; its bounds are those within the sheet alone. */
export interface PlannedStrip {
  /** `a`, `b` … from left to right as the sheet lies in leaf orientation; follows the id of its cell. */
  readonly name: string
  readonly rank: number
  readonly bounds: readonly Bound[]
  readonly lay: Transform<'window', 'panel'>
  readonly turn: Turn
}

/**
 * How an edge is made: along the grain, across it, at an angle to it (mitre), at an angle
 * towards a centre, or when two halves are put together; within a jointed sheet, before a piece is cut from it (sheet);
 * in a border from piece to piece of a band (segment), where
 * bands meet (corner), and towards the field or its string (border).
 */
export type Joint = 'side' | 'cross' | 'mitre' | 'radial' | 'diameter' | 'sheet' | BandJoint
export type BandJoint = 'segment' | 'corner' | 'border'

/** Whether a seam is one of a border. */
export const isBandJoint = (joint: Joint): joint is BandJoint =>
  joint === 'segment' || joint === 'corner' || joint === 'border'

/** A seam line; the cell lies on the side to which one turns clockwise from a towards b. */
export interface Bound {
  readonly edge: Edge<'panel'>
  readonly joint: Joint
}

/** How a leaf is turned: over (numbered side down), and spun by half a turn; null where grain runs in other directions. */
export interface Turn {
  readonly turnedOver: boolean
  readonly spun: boolean | null
}

/** The finished panel, the taped sheet beyond it at each edge, and what edges lose when they are made straight. */
export interface Sizes {
  readonly width: number
  readonly length: number
  readonly beyond: Edges
  /** The outline of the taped sheet about the middle of the panel, where it is not the box. */
  readonly ring?: Ring<'panel'>
  /** Lost on side seams, and on those of a later stage. */
  readonly lost: { readonly first: number; readonly later: number }
  /** Kept between two pieces on a leaf, for knife or saw. */
  readonly between: number
}

/** What a pattern must know of the bundle: whether the numbered faces look towards the next leaf. */
export interface Bundle {
  readonly numberFacesNext: boolean
}

/** The way to lay a window: turned over in x, spun in y, then moved to a centre. */
export const layAt = (centre: Point<'panel'>, overX: boolean, overY: boolean): Transform<'window', 'panel'> => ({
  a: overX ? -1 : 1,
  b: 0,
  c: 0,
  d: overY ? -1 : 1,
  e: centre.x,
  f: centre.y,
})

/** Reflected across (x), along (y) or both: both together is half a turn, so the numbered side stays up. */
export const turnOf = (overX: boolean, overY: boolean): Turn => ({ turnedOver: overX !== overY, spun: overY })

/** The wood to the right of an upright line, or to its left. */
export const rightOf = (x: number): Edge<'panel'> => ({ a: point(x, 1), b: point(x, -1) })
export const leftOf = (x: number): Edge<'panel'> => ({ a: point(x, -1), b: point(x, 1) })

/** The wood above a level line, or below it. */
export const above = (y: number): Edge<'panel'> => ({ a: point(1, y), b: point(-1, y) })
export const below = (y: number): Edge<'panel'> => ({ a: point(-1, y), b: point(1, y) })
