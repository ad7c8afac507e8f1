/** A slanted cut told so that it can be marked on a leaf with rule and straightedge. */
import { regionBox } from '../geometry/box'
import { ringEdges, type Ring } from '../geometry/polygon'
import { edgeCrossing } from '../geometry/segment'
import type { Point } from '../geometry/point'
import type { SlantedCut } from '../job/make-up'
import { onCut } from './piece'

/** Where the marked line meets the border of the leaf. */
export interface CutEnd {
  readonly at: Point<'leaf'>
  /** In from the wild edge on this side, along the same row; 0 where the line leaves the leaf across that edge. */
  readonly side: 'left' | 'right'
  readonly inFromEdge: number
}

/** The marked line's two outermost meetings with the outline, from the numbered end on; null where it misses the leaf. */
export function cutEnds(outline: Ring<'leaf'>, cut: SlantedCut): readonly [CutEnd, CutEnd] | null {
  const { min, max } = regionBox<'leaf'>([[outline]])
  const line = { a: onCut(cut, min.y - 1, 0), b: onCut(cut, max.y + 1, 0) }
  const meetings = ringEdges(outline)
    .flatMap((edge) => edgeCrossing(line, edge) ?? [])
    .sort((p, q) => p.y - q.y)
  const [first, last] = [meetings[0], meetings[meetings.length - 1]]
  return first && last && first !== last ? [endAt(outline, first), endAt(outline, last)] : null
}

function endAt(outline: Ring<'leaf'>, at: Point<'leaf'>): CutEnd {
  const { min, max } = regionBox<'leaf'>([[outline]])
  // at the very end of a leaf its edges are read off a little way in
  const y = Math.min(Math.max(at.y, min.y + 1), max.y - 1)
  const row = { a: { x: min.x - 1, y }, b: { x: max.x + 1, y } }
  const across = ringEdges(outline).flatMap((edge) => edgeCrossing<'leaf'>(row, edge)?.x ?? [])
  const [left, right] = [at.x - Math.min(...across), Math.max(...across) - at.x]
  return left <= right
    ? { at, side: 'left', inFromEdge: Math.max(0, left) }
    : { at, side: 'right', inFromEdge: Math.max(0, right) }
}
