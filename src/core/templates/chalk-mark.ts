/**
 * Where a piece is chalked before it is cut: in its overhang, which is sawn off after pressing.
 *
 * Input: a laid face and one of its pieces. Output: the outer edge of the piece with the deepest overhang, ends before
 * sides, told by the side of the leaf that it faces; null for a piece without enough overhang at any edge.
 */
import type { LaidFace, Piece } from '../fit/lay-face'
import { ringEdges, type Edge } from '../geometry/polygon'
import { distance } from '../geometry/point'

export type LeafSide = 'numbered end' | 'far end' | 'left edge' | 'right edge'

export interface ChalkMark {
  /** The side of the leaf, numbered side up, to which the overhang looks. */
  readonly at: LeafSide
  /** How deep the overhang is there. */
  readonly depth: number
  /** The edge of the piece beside which it is. */
  readonly edge: Edge<'window'>
}

/** Less than this takes no chalk; a shorter edge takes no words. */
const LEAST_DEPTH = 4
const LEAST_LENGTH = 25

export function chalkMark({ part }: LaidFace, { cell }: Piece): ChalkMark | null {
  const { ring, tags } = cell.window
  const outer = new Map<number, { depth: number; edges: Edge<'window'>[] }>()
  ringEdges(ring).forEach((edge, i) => {
    const tag = tags[i]!
    if (tag.kind !== 'outer') return
    const depth = part.core[tag.side] + part.overhang[tag.side]
    const known = outer.get(tag.source) ?? { depth, edges: [] }
    outer.set(tag.source, { depth: Math.min(known.depth, depth), edges: [...known.edges, edge] })
  })
  // a curved rim comes as many short edges: it looks where its chord looks
  const marks = [...outer.values()].flatMap(({ depth, edges }): readonly ChalkMark[] => {
    const chord = { a: edges[0]!.a, b: edges.at(-1)!.b }
    if (depth < LEAST_DEPTH || distance(chord.a, chord.b) < LEAST_LENGTH) return []
    return [{ at: facing(chord), depth, edge: chord }]
  })
  return marks.reduce<ChalkMark | null>((best, mark) => (best && rank(best) >= rank(mark) ? best : mark), null)
}

/** Depth first; of equal ones an end before a side, and the numbered end before the far one. */
const rank = ({ at, depth }: ChalkMark): number =>
  depth + { 'numbered end': 0.03, 'far end': 0.02, 'left edge': 0.01, 'right edge': 0 }[at]

/** Rings run with their inside clockwise of the edge, so an edge looks out anticlockwise of its way. */
function facing({ a, b }: Edge<'window'>): LeafSide {
  const [x, y] = [b.y - a.y, a.x - b.x]
  if (Math.abs(y) >= Math.abs(x)) return y < 0 ? 'numbered end' : 'far end'
  return x < 0 ? 'left edge' : 'right edge'
}
