/**
 * What is planned on the real leaves, all parts together, and what has been cut.
 *
 * Input: faces as judged. Output: each piece that has a leaf as the wood it takes there, in leaf mm, numbered side up.
 * A piece that has been cut claims what was cut; a made-up one its parts, and what is lost in making it up. Failure: none; a piece without a leaf claims nothing.
 */
import type { Finding } from '../finding'
import type { LaidFace, Piece } from '../fit/lay-face'
import type { Follows } from '../fit/pair-follow'
import { boxesOverlap, regionBox, type Box } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { convexOverlapArea, isConvex } from '../geometry/convex'
import { regionArea, type Polygon, type Region, type Ring } from '../geometry/polygon'
import { regionsNear } from '../geometry/regions-near'
import type { CellId, FlitchId, PartId } from '../ids'
import type { ShowClass } from '../shop'
import { isCutFor, type PieceRef } from '../leaves/done-cuts'
import { pieceParts } from '../fit/piece-parts'
import { lostWood } from './lost-wood'

/** A face with what is to be known about it. */
export interface LedgerFace extends LaidFace {
  readonly findings: readonly Finding[]
  /** The second of a pair moves with another part. */
  readonly follows: Follows | null
}

/** Wood of one leaf that a piece takes, planned or cut. A piece of a made-up leaf may take wood of several. */
export interface Claim {
  readonly part: PartId
  readonly name: string
  readonly cell: CellId
  readonly flitch: FlitchId
  readonly leaf: number
  readonly region: Region<'leaf'>
  readonly box: Box<'leaf'>
  /** What goes with it beyond the piece, where leaves are made up. */
  readonly lost: Region<'leaf'>
  readonly cut: boolean
  /** What knife or saw needs between it and another. */
  readonly between: number
}

/** Pieces that overlap by no more square millimetres than this only touch. */
export const TOUCHING = 1

const ORDER: readonly ShowClass[] = ['show', 'now and then', 'hidden']

/** How much a face is looked at, the most first: 0, 1, 2. */
export const showRank = ({ part }: LaidFace): number => ORDER.indexOf(part.showClass)

/** The faces that are seen most first, in the job's order among equals: so they are planned, and so they are cut. */
export const inCuttingOrder = <F extends LaidFace>(faces: readonly F[]): readonly F[] =>
  [...faces].sort((p, q) => showRank(p) - showRank(q))

export const claimsOf = (face: LaidFace): readonly Claim[] => face.pieces.flatMap((piece) => claimsOfPiece(face, piece))

/** What one piece takes, a claim for each leaf. */
export function claimsOfPiece({ part, shop }: LaidFace, piece: Piece): readonly Claim[] {
  const { flitch } = piece
  const ref = { part: part.id, cell: piece.cell.id }
  const lost = lostWood(piece, shop)
  return takenBy(piece, ref).map(({ leaf, region }) => ({
    ...ref,
    name: part.name,
    flitch: flitch.id,
    leaf,
    region,
    box: regionBox(region),
    lost: lost.get(leaf) ?? [],
    cut: piece.cut,
    between: shop.betweenPieces,
  }))
}

interface Taken {
  readonly leaf: number
  readonly region: Region<'leaf'>
}

function takenBy(piece: Piece, ref: PieceRef): readonly Taken[] {
  if (!piece.cut) return plannedBy(piece)
  return piece.flitch.leaves.flatMap((leaf): readonly Taken[] => {
    const region = leaf.cuts.filter((cut) => isCutFor(cut, ref)).map(({ outline }): Polygon<'leaf'> => [outline])
    return region.length > 0 ? [{ leaf: leaf.number, region }] : []
  })
}

/** The parts that a piece takes of one leaf are one claim. */
function plannedBy(piece: Piece): readonly Taken[] {
  const taken = new Map<number, Region<'leaf'>>()
  for (const { leaf, rough } of pieceParts(piece)) taken.set(leaf, [...(taken.get(leaf) ?? []), ...rough])
  return [...taken].map(([leaf, region]) => ({ leaf, region }))
}

const isSameLeaf = (p: Claim, q: Claim): boolean => p.flitch === q.flitch && p.leaf === q.leaf
const isSamePiece = (p: Claim, q: Claim): boolean => p.part === q.part && p.cell === q.cell

/** The other claims on the leaf of one. */
export const besideClaim = (one: Claim, all: readonly Claim[]): readonly Claim[] =>
  all.filter((other) => isSameLeaf(one, other) && !isSamePiece(one, other))

/** Whether two claims want the same wood, or one the wood that is lost with the other. */
export const clash = (p: Claim, q: Claim): boolean =>
  !(areApart(p.region, q.region) && areApart(p.lost, q.region) && areApart(p.region, q.lost))

const areApart = (p: Region<'leaf'>, q: Region<'leaf'>): boolean =>
  p.length === 0 || q.length === 0 || !boxesOverlap(regionBox(p), regionBox(q)) || overlap(p, q) <= TOUCHING

/** Whether there is too little between two claims for the knife or the saw that parts them. */
export function lieTooNear(p: Claim, q: Claim): boolean {
  // what is cut already lies where it was cut, which is told to the grid
  const kept = Math.max(p.between, q.between) - (p.cut || q.cut ? 0.1 : 0.01)
  return kept > 0 && regionsNear(p.region, q.region, kept)
}

function overlap(p: Region<'leaf'>, q: Region<'leaf'>): number {
  const [one, other] = [onlyRing(p), onlyRing(q)]
  return one && other ? convexOverlapArea(one, other) : regionArea(intersect(p, q))
}

/** The one ring of a convex region, or null. */
function onlyRing(region: Region<'leaf'>): Ring<'leaf'> | null {
  const [ring, ...more] = region.flat()
  return ring && more.length === 0 && isConvex(ring) ? ring : null
}
