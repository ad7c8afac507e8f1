/**
 * A piece made of parts: a leaf of any outline cut along a slanted line, trued, slid and joined again.
 *
 * Input: a region of a leaf, and a cut. Output: one outline, the parts it is made of and the seams between them, in
 * the frame of the piece, which is that of the leaf's near half. Tolerance: the parts are exact to the grid; the
 * outline lies within twice the grid of them, for the joint is closed over that much. Failure: null where one half is
 * empty or the halves do not meet.
 */
import { boxAround, regionBox } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { point, type Point } from '../geometry/point'
import { polygonArea, transformRegion, type Edge, type Polygon, type Region } from '../geometry/polygon'
import { identity, transformPoint, translation, type Transform } from '../geometry/transform'
import type { LeafRef } from '../ids'
import type { SlantedCut } from '../job/make-up'
import { alongCut, figureStep, type Scarf } from './extension'
import { joinedAlong, type JointLine } from './joint-line'

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

const hand = ({ runs }: SlantedCut): 1 | -1 => (runs === 'right' ? 1 : -1)

/** What the far half is moved by. */
export const farHalfMove = (cut: SlantedCut): Point<'leaf'> => point(hand(cut) * figureStep(cut), cut.gain)

/** What is taken off each half, measured across the grain. */
export const lossAcross = ({ slope, loss }: Scarf): number => loss * alongCut(slope)

/** The point at a row on the line that lies a distance across from the marked one, on the side of the near half. */
export const onCut = (cut: SlantedCut, y: number, across: number): Point<'leaf'> =>
  point(cut.through.x + hand(cut) * (cut.slope * (y - cut.through.y) + across), y)

/** Everything in reach of the region on the near side (1) or the far side (−1) of a line beside the marked one. */
function sideOfCut(region: Region<'leaf'>, cut: SlantedCut, across: number, side: 1 | -1): Region<'leaf'> {
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

/** What is on one side of a cut after truing; the far half where it comes to lie. */
export const halfOf = (region: Region<'leaf'>, cut: SlantedCut, which: 'near' | 'far'): Region<'leaf'> => {
  if (region.length === 0) return []
  const across = lossAcross(cut)
  if (which === 'near') return intersect(region, sideOfCut(region, cut, across, 1))
  const { x, y } = farHalfMove(cut)
  return transformRegion(translation<'leaf'>(x, y), intersect(region, sideOfCut(region, cut, -across, -1)))
}

/** The line in which the trued faces of the halves lie against each other. */
export const jointOfCut = (cut: SlantedCut): JointLine => ({
  through: onCut(cut, cut.through.y, lossAcross(cut)),
  runs: cut.runs,
  slope: cut.slope,
})

/** The leaf cut, trued, slid and joined. Of a half that falls into several bits the largest is used. */
export function scarfedPiece(leaf: LeafRef, region: Region<'leaf'>, cut: SlantedCut): Piece | null {
  const near = largestOf(halfOf(region, cut, 'near'))
  const far = largestOf(halfOf(region, cut, 'far'))
  if (!near || !far) return null
  const { x, y } = farHalfMove(cut)
  const joined = joinedAlong([near], [far], jointOfCut(cut))
  const [outline, ...apart] = transformRegion(ASIDE, joined.region)
  if (!outline || apart.length > 0 || joined.seams.length === 0) return null
  const [unmoved] = transformRegion(translation<'leaf'>(-x, -y), [far])
  const parts: PiecePart[] = [
    { leaf, outline: near, leafToPiece: identity() },
    { leaf, outline: unmoved!, leafToPiece: translation(x, y) },
  ]
  return { outline, parts, seams: joined.seams.map(({ a, b }) => ({ a: aside(a), b: aside(b) })) }
}

/** The frame of the piece is that of the near half. */
const ASIDE = identity<'leaf', 'window'>()
const aside = (p: Point<'leaf'>): Point<'window'> => transformPoint(ASIDE, p)
