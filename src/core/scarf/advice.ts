/** What a scarf would do for a leaf that is too short for its piece, told so that it can be marked and cut. */
import { boxAround, boxHeight, boxWidth, regionBox } from '../geometry/box'
import { ringEdges, type Region, type Ring } from '../geometry/polygon'
import { edgeCrossing, edgeLength } from '../geometry/segment'
import type { Point } from '../geometry/point'
import type { LeafRef } from '../ids'
import type { SlantedCut } from '../job/make-up'
import { figureStep, slideAlongCut, type Sound } from './extension'
import { onCut } from './piece'
import { searchScarf, type ScarfSearch } from './search'
import { regionEdges, widestRectangle } from './strip'

/** Trued off each face of a seam in one leaf: a pair shot together by hand. */
export const SCARF_LOSS = 1.5

/** Where the marked line meets the border of the leaf. */
export interface CutEnd {
  readonly at: Point<'leaf'>
  /** In from the wild edge on this side, along the same row; 0 where the line leaves the leaf across that edge. */
  readonly side: 'left' | 'right'
  readonly inFromEdge: number
}

export type ScarfAdvice =
  /** The wanted piece lies elsewhere on the leaf, uncut. */
  | { readonly kind: 'not needed'; readonly wanted: Sound }
  | { readonly kind: 'too long'; readonly wanted: Sound }
  | {
      readonly kind: 'scarf' | 'too narrow'
      readonly wanted: Sound
      readonly found: ScarfSearch
      /** At the numbered end, then at the far end. */
      readonly ends: readonly [CutEnd, CutEnd]
      /** Along the cut, from where the trued faces are closed up squarely. */
      readonly slide: number
      readonly step: number
      /** All along the seam. */
      readonly seam: number
    }

/**
 * Advice for one leaf: `usable` is its sound wood, `outline` its border, `rough` the piece that it lacks wood for. The
 * piece is taken as the upright rectangle round it.
 */
export function scarfAdvice(
  leaf: LeafRef,
  { usable, outline }: { readonly usable: Region<'leaf'>; readonly outline: Ring<'leaf'> },
  rough: Ring<'leaf'>,
): ScarfAdvice {
  const box = boxAround(rough)
  const wanted = { width: boxWidth(box), length: boxHeight(box) }
  const uncut = widestRectangle(regionEdges(usable), wanted.length)
  if (uncut && boxWidth(uncut.box) >= wanted.width) return { kind: 'not needed', wanted }
  const found = searchScarf(leaf, usable, wanted, SCARF_LOSS)
  const ends = found && cutEnds(outline, found.cut)
  if (!found || !ends) return { kind: 'too long', wanted }
  const seam = found.piece.seams.reduce((sum, edge) => sum + edgeLength(edge), 0)
  const kind = found.enough ? 'scarf' : 'too narrow'
  return { kind, wanted, found, ends, slide: slideAlongCut(found.cut), step: figureStep(found.cut), seam }
}

/** The marked line's two outermost meetings with the outline, told from the wild edge that lies nearer. */
function cutEnds(outline: Ring<'leaf'>, cut: SlantedCut): readonly [CutEnd, CutEnd] | null {
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
