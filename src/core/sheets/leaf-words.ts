import type { Piece } from '../fit/lay-face'

/** `leaves 3, 4` or `leaf 3`; pieces without a leaf are told as missing. */
export function leavesInWords(pieces: readonly Piece[]): string {
  const numbers = pieces.map(({ leaf }) => (leaf ? String(leaf.number) : 'none left'))
  return `${numbers.length === 1 ? 'leaf' : 'leaves'} ${numbers.join(', ')}`
}

/** How a leaf comes to lie in the face, once it is cut. */
export function turnInWords({ cell: { turn } }: Piece): string {
  if (turn.spun) return turn.turnedOver ? 'end over end' : 'spun, number up'
  return turn.turnedOver ? 'turned over' : 'number up'
}
