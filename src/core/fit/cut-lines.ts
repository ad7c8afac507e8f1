import { boxRing } from '../geometry/box'
import { add, point, type Point } from '../geometry/point'
import { ringEdges, type Edge, type Ring } from '../geometry/polygon'
import type { SlantedCut } from '../job/make-up'
import { cutEnds } from '../scarf/cut-marks'
import type { Piece } from './lay-face'

/** The lines to cut along on the piece's own leaf to make it up, in the leaf's frame; none on a leaf as it is. */
export function cutLines(piece: Piece, outline: Ring<'leaf'>): readonly Edge<'leaf'>[] {
  const { made, leaf } = piece
  if (!made || !leaf) return []
  const { makeUp } = made
  const moved = makeUp.leaf === null ? leaf.drift : point<'leaf'>(0, 0)
  if (makeUp.how === 'longer') return cutEdge(outline, makeUp.cut, moved)
  const { kept, side, offcut, cut, from } = makeUp
  const x = side === 'right' ? kept.max.x : kept.min.x
  const sawn = { a: add(point<'leaf'>(x, kept.min.y), moved), b: add(point<'leaf'>(x, kept.max.y), moved) }
  if (from !== null && from !== leaf.number) return [sawn]
  const ring = boxRing({ min: add(offcut.min, moved), max: add(offcut.max, moved) })
  return [sawn, ...ringEdges(ring), ...(cut ? cutEdge(ring, cut, moved) : [])]
}

/** A slanted line between its two outermost meetings with an outline. */
function cutEdge(outline: Ring<'leaf'>, cut: SlantedCut, moved: Point<'leaf'>): readonly Edge<'leaf'>[] {
  const ends = cutEnds(outline, { ...cut, through: add(cut.through, moved) })
  return ends ? [{ a: ends[0].at, b: ends[1].at }] : []
}
