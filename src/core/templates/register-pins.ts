/**
 * Where two pins hold a packet through its waste.
 *
 * Input: the pieces of a packet. Output: two spots in the frame of the first piece's leaf, in the waste of every leaf of
 * the packet, as far apart as can be found along the ends and the sides of the piece; null if there are no two.
 * Tolerance: none needed, the pins keep clear. Failure: waste that another part takes from the same leaf is not known
 * here.
 */
import type { Piece } from '../fit/lay-face'
import { boxAround, boxCentre } from '../geometry/box'
import { add, distance, point, subtract, type Point } from '../geometry/point'
import { ringCovers, type Ring } from '../geometry/polygon'
import { distanceToRing } from '../geometry/segment'
import { pieceOutline } from './leaf-place'

/** Kept between a pin and the piece, and between a pin and the edge of a leaf. Common practice. */
const FROM_PIECE = 8
const FROM_EDGE = 4
/** Nearer than this the two hold no packet. */
const LEAST_APART = 60

export function registerPins(pieces: readonly Piece[]): readonly [Point<'leaf'>, Point<'leaf'>] | null {
  const [lead] = pieces
  if (!lead?.leaf) return null
  const outlines = pieces.map((piece) => outlineUnder(lead, piece))
  const free = pinSpots(lead.roughOnLeaf, outlines).filter((spot) => isWaste(spot, lead.roughOnLeaf, outlines))
  const pairs = free.flatMap((one, i) => free.slice(i + 1).map((other) => [one, other] as const))
  const best = pairs.reduce<(typeof pairs)[number] | null>(
    (most, pair) => (most && distance(...most) >= distance(...pair) - 1e-9 ? most : pair),
    null,
  )
  return best && distance(...best) >= LEAST_APART ? best : null
}

/** The outline of a piece's leaf, moved so that its piece lies on that of the lead. */
function outlineUnder(lead: Piece, piece: Piece): Ring<'leaf'> {
  const off = subtract(lead.place.drift, piece.place.drift)
  return pieceOutline(piece).map((p) => add(p, off))
}

/** Spots to try: in the middle of the waste beyond each end and beside each side, at a quarter, half and three quarters. */
function pinSpots(rough: Ring<'leaf'>, outlines: readonly Ring<'leaf'>[]): readonly Point<'leaf'>[] {
  const [piece, boxes] = [boxAround(rough), outlines.map((outline) => boxAround(outline))]
  const least = (of: (box: (typeof boxes)[number]) => number) => Math.max(...boxes.map(of))
  const most = (of: (box: (typeof boxes)[number]) => number) => Math.min(...boxes.map(of))
  const [left, right] = [least(({ min }) => min.x), most(({ max }) => max.x)]
  const [near, far] = [least(({ min }) => min.y), most(({ max }) => max.y)]
  const shares = [0.5, 0.25, 0.75]
  const across = shares.map((share) => piece.min.x + share * (piece.max.x - piece.min.x))
  const along = [0.1, ...shares, 0.9].map((share) => piece.min.y + share * (piece.max.y - piece.min.y))
  return [
    ...across.flatMap((x) => [point<'leaf'>(x, beyond(piece.min.y, near)), point<'leaf'>(x, beyond(piece.max.y, far))]),
    ...along.flatMap((y) => [
      point<'leaf'>(beyond(piece.min.x, left), y),
      point<'leaf'>(beyond(piece.max.x, right), y),
    ]),
    boxCentre(piece),
  ]
}

/** A pin is set near the piece, so that it holds what is cut, but in the middle of narrow waste. */
const beyond = (edge: number, end: number): number =>
  edge + Math.sign(end - edge) * Math.min(Math.abs(end - edge) / 2, 25)

const isWaste = (spot: Point<'leaf'>, rough: Ring<'leaf'>, outlines: readonly Ring<'leaf'>[]): boolean =>
  !ringCovers(rough, spot) &&
  distanceToRing(rough, spot) >= FROM_PIECE &&
  outlines.every((outline) => ringCovers(outline, spot) && distanceToRing(outline, spot) >= FROM_EDGE)
