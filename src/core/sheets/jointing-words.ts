import type { LaidFace } from '../fit/lay-face'
import type { CellId } from '../ids'
import { cellsOf, type JoinedPieces } from '../seams/assembly'
import { pieceLabel } from './leaf-words'

/** The number of the leaf that lies in a cell, as it is chalked; the name of a border's piece. */
export function leafIn({ pieces }: LaidFace, id: CellId): string {
  const piece = pieces.find(({ cell }) => cell.id === id)
  return piece ? pieceLabel(piece, '–') : '–'
}

/** `3 + 4`, `3 4 + 5 6`: the leaves on both sides of a joint; more than four as the first and the last. */
export const joinedWords = (face: LaidFace, { first, second }: JoinedPieces): string =>
  [first, second].map((side) => groupWords(cellsOf(side).map((id) => leafIn(face, id)))).join(' + ')

const groupWords = (leaves: readonly string[]): string =>
  leaves.length > 4 ? `${leaves[0]} … ${leaves.at(-1)}` : leaves.join(' ')
