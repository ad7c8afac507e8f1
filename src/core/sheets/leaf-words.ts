import { BORDER } from '../faces/window-group'
import { otherFlitch, type LaidFace, type Piece } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'

/**
 * `leaves 3, 4` or `leaf 3`, each once; where one gives several pieces these are named too: `leaf 5 (XT2, XT3)`. Pieces
 * without a leaf are told as missing. The pieces are of one flitch, which is named if it is not the field's.
 */
export function leavesInWords(face: Pick<LaidFace, 'flitch'>, pieces: readonly Piece[]): string {
  const numbers = [...new Set(pieces.map(({ leaf }) => (leaf ? String(leaf.number) : 'none left')))]
  const named = numbers.length < pieces.length ? ` (${pieces.map(({ cell }) => cell.id).join(', ')})` : ''
  const from = ofFlitch(pieces[0] ? otherFlitch(face, pieces[0]) : null)
  return `${numbers.length === 1 ? 'leaf' : 'leaves'} ${numbers.join(', ')}${from}${named}`
}

/** What stands on a piece in a drawing: the number of its leaf; a border's, of which a leaf gives many, has its name. */
export function pieceLabel({ cell, leaf }: Piece, unknown: string): string {
  if (!leaf) return unknown
  return cell.group === BORDER ? cell.id : String(leaf.number)
}

/** How a leaf comes to lie in the face, once it is cut. */
export function turnInWords({ cell: { turn } }: Piece): string {
  if (turn.spun) return turn.turnedOver ? 'end over end' : 'spun, number up'
  return turn.turnedOver ? 'turned over' : 'number up'
}
