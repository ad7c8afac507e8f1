import { pieceParts, partAt } from '../fit/piece-parts'
import type { Piece } from '../fit/lay-face'
import { between, cross, subtract, type Point } from '../geometry/point'
import type { Edge } from '../geometry/polygon'
import { edgeLength } from '../geometry/segment'
import { MEETS } from '../geometry/tolerance'
import { invert, transformPoint, type Transform } from '../geometry/transform'

/** What lies on one side of a stretch. */
export interface StretchSide {
  /** null where there is no leaf. */
  readonly leaf: number | null
  readonly logToPanel: Transform<'leaf', 'panel'>
}

export interface PartStretch {
  readonly edge: Edge<'panel'>
  readonly left: StretchSide
  readonly right: StretchSide
}

/**
 * A stretch of a seam cut where a joint within a piece runs into it, so that each bit has one part on either side. Where
 * neither leaf is made up it stays whole.
 */
export function partStretches(edge: Edge<'panel'>, left: Piece, right: Piece): readonly PartStretch[] {
  const turns = [left, right].flatMap((piece) => jointCrossings(edge, piece))
  // the faces of two leaves are snapped each on its own: what lies between their ends is no bit
  const least = MEETS / edgeLength(edge)
  const at = [0, ...turns.filter((t) => t > least && t < 1 - least).sort((p, q) => p - q), 1]
  return at.slice(1).flatMap((to, i) => {
    const from = at[i]!
    if (to - from < least) return []
    const middle = between(edge.a, edge.b, (from + to) / 2)
    const bit = turns.length === 0 ? edge : { a: between(edge.a, edge.b, from), b: between(edge.a, edge.b, to) }
    return [{ edge: bit, left: sideAt(left, middle), right: sideAt(right, middle) }]
  })
}

/** Where the lines of a piece's joints cross an edge, as shares of its length. */
function jointCrossings(edge: Edge<'panel'>, { made, leafToPanel }: Piece): readonly number[] {
  if (!made) return []
  const along = subtract(edge.b, edge.a)
  return made.seams.flatMap((seam) => {
    const start = transformPoint(leafToPanel, seam.edge.a)
    const way = subtract(transformPoint(leafToPanel, seam.edge.b), start)
    const turn = cross(along, way)
    return Math.abs(turn) < 1e-9 ? [] : [cross(subtract(start, edge.a), way) / turn]
  })
}

function sideAt(piece: Piece, at: Point<'panel'>): StretchSide {
  const parts = piece.made ? pieceParts(piece) : []
  const part = partAt(parts, transformPoint(invert(piece.leafToPanel), at)) ?? parts[0]
  return part
    ? { leaf: part.leaf, logToPanel: part.logToPanel }
    : { leaf: piece.leaf?.number ?? null, logToPanel: piece.logToPanel }
}
