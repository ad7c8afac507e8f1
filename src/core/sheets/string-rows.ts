import { isBorderPiece } from '../faces/window-group'
import { ringEdges } from '../geometry/polygon'
import { edgeLength } from '../geometry/segment'
import { cellsOf, type JoinedPieces } from '../seams/assembly'
import type { JudgedFace } from './judged-face'
import { stringRuns } from './tape'

/** A piece of the string between border and field, by its outer edge. */
export interface StringPiece {
  readonly where: string
  readonly length: number
}

/** The pieces of a string, from corner to corner; one all round where there are none. */
export function stringPieces({ border, part }: JudgedFace): readonly StringPiece[] {
  if (!border?.string) return []
  const { outside } = border.string
  const runs = stringRuns(outside)
  if (runs.length === 1) return [{ where: 'all round, its ends meeting', length: runs[0]!.length }]
  const sideFrom = (at: (typeof runs)[number]['line'][number]) => outside.edges[outside.ring.indexOf(at)]!.side
  return runs.map(({ line, length }, i) => ({
    where: part.outline.shape === 'rectangle' ? `${sideFrom(line[0]!)} edge, mitred` : `edge ${i + 1}, mitred`,
    length,
  }))
}

/**
 * How far a step brings a band of the border to the string: along the inner edges of its pieces, mm; 0 where none comes
 * to it.
 */
export function alongString({ border, pieces }: JudgedFace, { first, second }: JoinedPieces): number {
  const sides = [first, second].map(cellsOf)
  const band = sides.find((cells) => cells.every(isBorderPiece))
  const isBroughtToField = sides.some((cells) => !cells.every(isBorderPiece))
  if (!border?.string || !band || !isBroughtToField) return 0
  return pieces
    .filter(({ cell }) => band.includes(cell.id))
    .flatMap(({ cell: { face } }) =>
      ringEdges(face.ring).filter((_, i) => {
        const tag = face.tags[i]!
        return tag.kind === 'seam' && tag.joint === 'border'
      }),
    )
    .reduce((sum, edge) => sum + edgeLength(edge), 0)
}
