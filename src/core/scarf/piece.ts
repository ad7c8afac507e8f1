/**
 * A piece made of parts: a leaf of any outline cut along a slanted line, trued, slid and joined again.
 *
 * Input: a region of a leaf, and a cut. Output: one outline, the parts it is made of and the seams between them, in
 * the frame of the piece, which is that of the leaf's near half. Tolerance: the parts are exact to the grid; the
 * outline lies within twice the grid of them, for the joint is closed over that much. Failure: null where one half is
 * empty or the halves do not meet.
 */
import { boxAround, boxHeight, boxWidth, regionBox } from '../geometry/box'
import { intersect, unite } from '../geometry/clip'
import { point, type Point } from '../geometry/point'
import { polygonArea, ringEdges, transformRegion, type Edge, type Polygon, type Region } from '../geometry/polygon'
import { edgeLength, sharedStretch } from '../geometry/segment'
import { GRID } from '../geometry/tolerance'
import { identity, transformPoint, translation, type Transform } from '../geometry/transform'
import type { LeafRef } from '../ids'
import { alongCut, figureStep, type Scarf } from './extension'
import { largestRectangle, regionEdges, type Strip } from './strip'

/** A scarf laid on a leaf. */
export interface LaidCut extends Scarf {
  /** A point of the line that is marked; the loss is trued off on both sides of it. */
  readonly through: Point<'leaf'>
  /** The way the line runs from the numbered end to the far end. The half on that side, the near half, stays. */
  readonly runs: 'right' | 'left'
}

export interface PiecePart {
  readonly leaf: LeafRef
  /** What is left of the leaf after truing. */
  readonly outline: Polygon<'leaf'>
  readonly leafToPiece: Transform<'leaf', 'window'>
}

export interface Piece {
  readonly outline: Polygon<'window'>
  /** The near half, with the numbered end, then the far one. */
  readonly parts: readonly PiecePart[]
  readonly seams: readonly Edge<'window'>[]
}

const hand = ({ runs }: LaidCut): 1 | -1 => (runs === 'right' ? 1 : -1)

/** How far a point lies across from the marked line, on the side of the near half. */
export const acrossFromCut = (cut: LaidCut, p: Point<'leaf'>): number =>
  hand(cut) * (p.x - cut.through.x) - cut.slope * (p.y - cut.through.y)

/** What the far half is moved by. */
export const farHalfMove = (cut: LaidCut): Point<'leaf'> => point(hand(cut) * figureStep(cut), cut.gain)

/** What is taken off each half, measured across the grain. */
export const lossAcross = ({ slope, loss }: Scarf): number => loss * alongCut(slope)

/** The point at a row on the line that lies a distance across from the marked one, on the side of the near half. */
export const onCut = (cut: LaidCut, y: number, across: number): Point<'leaf'> =>
  point(cut.through.x + hand(cut) * (cut.slope * (y - cut.through.y) + across), y)

/** Everything in reach of the region on the near side (1) or the far side (−1) of a line beside the marked one. */
function sideOfCut(region: Region<'leaf'>, cut: LaidCut, across: number, side: 1 | -1): Region<'leaf'> {
  const { min, max } = regionBox(region)
  const line = [onCut(cut, min.y - 1, across), onCut(cut, max.y + 1, across)]
  const reach = boxAround([...line, min, max])
  const x = hand(cut) * side > 0 ? reach.max.x + 1 : reach.min.x - 1
  return [[[line[0]!, line[1]!, point(x, max.y + 1), point(x, min.y - 1)]]]
}

const largestOf = (region: Region<'leaf'>): Polygon<'leaf'> | null =>
  region.reduce<Polygon<'leaf'> | null>(
    (best, polygon) => (!best || polygonArea(polygon) > polygonArea(best) ? polygon : best),
    null,
  )

const half = (region: Region<'leaf'>, cut: LaidCut, across: number, side: 1 | -1): Polygon<'leaf'> | null =>
  largestOf(intersect(region, sideOfCut(region, cut, across, side)))

/** The leaf cut, trued, slid and joined. Of a half that falls into several bits the largest is used. */
export function scarfedPiece(leaf: LeafRef, region: Region<'leaf'>, cut: LaidCut): Piece | null {
  const across = lossAcross(cut)
  const near = half(region, cut, across, 1)
  const far = half(region, cut, -across, -1)
  if (!near || !far) return null
  const move = farHalfMove(cut)
  const parts: PiecePart[] = [
    { leaf, outline: near, leafToPiece: identity() },
    { leaf, outline: far, leafToPiece: translation(move.x, move.y) },
  ]
  const seams = seamsOf(cut, parts)
  // snapped on its own, each face may stand a thousandth back: a strip over the joint closes it
  const closing = seams.map((seam) => stripOver(cut, seam))
  const [outline, ...apart] = unite(carried(near, parts[0]!), carried(far, parts[1]!), ...closing)
  return outline && apart.length === 0 && seams.length > 0 ? { outline, parts, seams } : null
}

const carried = (polygon: Polygon<'leaf'>, { leafToPiece }: PiecePart): Region<'window'> =>
  transformRegion(leafToPiece, [polygon])

/** A strip along a seam, twice the grid to either side. */
function stripOver(cut: LaidCut, { a, b }: Edge<'window'>): Region<'window'> {
  const by = 2 * GRID * alongCut(cut.slope)
  return [[[point(a.x - by, a.y), point(a.x + by, a.y), point(b.x + by, b.y), point(b.x - by, b.y)]]]
}

/** Where the trued faces of the halves lie against each other. */
function seamsOf(cut: LaidCut, [near, far]: readonly PiecePart[]): readonly Edge<'window'>[] {
  const across = lossAcross(cut)
  const faceEdges = (part: PiecePart, at: number) =>
    part.outline
      .flatMap(ringEdges)
      .filter(({ a, b }) => [a, b].every((p) => Math.abs(acrossFromCut(cut, p) - at) < 4 * GRID * alongCut(cut.slope)))
      .map(({ a, b }) => ({ a: transformPoint(part.leafToPiece, a), b: transformPoint(part.leafToPiece, b) }))
  const farEdges = faceEdges(far!, -across)
  return faceEdges(near!, across)
    .flatMap((edge) => farEdges.map((other) => sharedStretch(edge, other, 8 * GRID)))
    .filter((seam) => seam !== null)
    .filter((seam) => edgeLength(seam) > 8 * GRID)
}

/** The largest rectangle with its length along the grain in a piece; its bound is an area. */
export const usableRectangle = ({ outline }: Piece): Strip<'window'> | null => largestRectangle(regionEdges([outline]))

/** Width and length of a rectangle. */
export const stripSize = ({ box }: Strip<'window'>) => ({ width: boxWidth(box), length: boxHeight(box) })
