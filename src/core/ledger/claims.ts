/**
 * What is planned on the real leaves, all parts together, and what has been cut.
 *
 * Input: faces as judged. Output: each piece that has a leaf as the wood it takes there, in leaf mm, numbered side up.
 * A piece that has been cut claims what was cut. Failure: none; a piece without a leaf claims nothing.
 */
import type { Finding } from '../finding'
import type { LaidFace, Piece } from '../fit/lay-face'
import { takenOfLeaf } from '../fit/piece-parts'
import { boxAround, boxesOverlap, type Box } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { convexOverlapArea, isConvex } from '../geometry/convex'
import type { Point } from '../geometry/point'
import { regionArea, type Ring } from '../geometry/polygon'
import type { CellId, FlitchId, PartId } from '../ids'
import type { ShowClass } from '../shop'
import { findCut } from '../leaves/done-cuts'

/** A face with what is to be known about it. */
export interface LedgerFace extends LaidFace {
  readonly findings: readonly Finding[]
}

/** Wood of one leaf that a piece takes, planned or cut. */
export interface Claim {
  readonly part: PartId
  readonly name: string
  readonly cell: CellId
  readonly flitch: FlitchId
  readonly leaf: number
  readonly outline: Ring<'leaf'>
  readonly box: Box<'leaf'>
  /** Where the window of the part lies. */
  readonly position: Point<'leaf'>
  readonly cut: boolean
}

/** Pieces that overlap by no more square millimetres than this only touch. */
export const TOUCHING = 1

const ORDER: readonly ShowClass[] = ['show', 'now and then', 'hidden']

/** How much a face is looked at, the most first: 0, 1, 2. */
export const showRank = ({ part }: LaidFace): number => ORDER.indexOf(part.showClass)

/** The faces that are seen most first, in the job's order among equals: so they are planned, and so they are cut. */
export const inCuttingOrder = <F extends LaidFace>(faces: readonly F[]): readonly F[] =>
  [...faces].sort((p, q) => showRank(p) - showRank(q))

export const claimsOf = (face: LaidFace): readonly Claim[] => face.pieces.flatMap((piece) => claimOf(face, piece) ?? [])

export function claimOf({ part, flitch, position }: LaidFace, piece: Piece): Claim | null {
  if (!piece.leaf) return null
  const cell = piece.cell.id
  const outline = findCut([piece.leaf], { part: part.id, cell })?.cut.outline ?? takenOfLeaf(piece)
  return {
    part: part.id,
    name: part.name,
    cell,
    flitch: flitch.id,
    leaf: piece.leaf.number,
    outline,
    box: boxAround(outline),
    position,
    cut: piece.cut,
  }
}

const isSameLeaf = (p: Claim, q: Claim): boolean => p.flitch === q.flitch && p.leaf === q.leaf
const isSamePiece = (p: Claim, q: Claim): boolean => p.part === q.part && p.cell === q.cell

/** The other claims on the leaf of one. */
export const besideClaim = (one: Claim, all: readonly Claim[]): readonly Claim[] =>
  all.filter((other) => isSameLeaf(one, other) && !isSamePiece(one, other))

/** Whether two claims want the same wood. */
export const clash = (p: Claim, q: Claim): boolean =>
  boxesOverlap(p.box, q.box) && overlap(p.outline, q.outline) > TOUCHING

const overlap = (p: Ring<'leaf'>, q: Ring<'leaf'>): number =>
  isConvex(p) && isConvex(q) ? convexOverlapArea(p, q) : regionArea(intersect<'leaf'>([[p]], [[q]]))
