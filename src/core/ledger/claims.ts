/**
 * What is planned on the real leaves, all parts together, and what has been cut.
 *
 * Input: faces as judged. Output: each piece that has a leaf as the wood it takes there, in leaf mm, numbered side up.
 * A piece that has been cut claims what was cut. Failure: none; a piece without a leaf claims nothing.
 */
import type { Finding } from '../finding'
import type { LaidFace, Piece } from '../fit/lay-face'
import { boxesOverlap, regionBox, type Box } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { convexHull, convexOverlapArea, isConvex } from '../geometry/convex'
import type { Point } from '../geometry/point'
import { regionArea, type Polygon, type Region, type Ring } from '../geometry/polygon'
import type { CellId, FlitchId, PartId } from '../ids'
import type { ShowClass } from '../shop'
import { isCutFor, type PieceRef } from '../leaves/done-cuts'
import type { Flitch } from '../leaves/flitch'
import { pieceParts } from '../fit/piece-parts'

/** A face with what is to be known about it. */
export interface LedgerFace extends LaidFace {
  readonly findings: readonly Finding[]
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

export const claimsOf = (face: LaidFace): readonly Claim[] => face.pieces.flatMap((piece) => claimsOfPiece(face, piece))

/** What one piece takes, a claim for each leaf. */
export function claimsOfPiece({ part, flitch }: LaidFace, piece: Piece): readonly Claim[] {
  const ref = { part: part.id, cell: piece.cell.id }
  return takenBy(flitch, piece, ref).map(({ leaf, region }) => ({
    ...ref,
    name: part.name,
    flitch: flitch.id,
    leaf,
    region,
    box: regionBox(region),
    cut: piece.cut,
  }))
}

interface Taken {
  readonly leaf: number
  readonly region: Region<'leaf'>
}

function takenBy(flitch: Flitch, piece: Piece, ref: PieceRef): readonly Taken[] {
  if (!piece.cut) return plannedBy(piece)
  return flitch.leaves.flatMap((leaf): readonly Taken[] => {
    const region = leaf.cuts.filter((cut) => isCutFor(cut, ref)).map(({ outline }): Polygon<'leaf'> => [outline])
    return region.length > 0 ? [{ leaf: leaf.number, region }] : []
  })
}

/** What lies between the parts that a made-up piece takes of one leaf goes with them. */
function plannedBy(piece: Piece): readonly Taken[] {
  if (!piece.made) return pieceParts(piece).map(({ leaf, rough }) => ({ leaf, region: rough }))
  const points = new Map<number, readonly Point<'leaf'>[]>()
  for (const { leaf, rough } of pieceParts(piece))
    points.set(leaf, [...(points.get(leaf) ?? []), ...rough.flatMap(([outer]) => outer)])
  return [...points].map(([leaf, all]) => ({ leaf, region: [[convexHull(all)]] }))
}

const isSameLeaf = (p: Claim, q: Claim): boolean => p.flitch === q.flitch && p.leaf === q.leaf
const isSamePiece = (p: Claim, q: Claim): boolean => p.part === q.part && p.cell === q.cell

/** The other claims on the leaf of one. */
export const besideClaim = (one: Claim, all: readonly Claim[]): readonly Claim[] =>
  all.filter((other) => isSameLeaf(one, other) && !isSamePiece(one, other))

/** Whether two claims want the same wood. */
export const clash = (p: Claim, q: Claim): boolean =>
  boxesOverlap(p.box, q.box) && overlap(p.region, q.region) > TOUCHING

function overlap(p: Region<'leaf'>, q: Region<'leaf'>): number {
  const [one, other] = [onlyRing(p), onlyRing(q)]
  return one && other ? convexOverlapArea(one, other) : regionArea(intersect(p, q))
}

/** The one ring of a convex region, or null. */
function onlyRing(region: Region<'leaf'>): Ring<'leaf'> | null {
  const [ring, ...more] = region.flat()
  return ring && more.length === 0 && isConvex(ring) ? ring : null
}
