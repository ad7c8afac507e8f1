import { arrow, frame, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { Piece } from '../fit/lay-face'
import { point, type Point } from '../geometry/point'
import type { ChalkMark } from '../templates/chalk-mark'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** Where the mark goes, in a sentence. */
export function chalkSentence(mark: ChalkMark | null, unit: LengthUnit): string {
  if (!mark)
    return 'Before the cut: leaf, piece and arrow on a strip of painter’s tape, numbered side; no overhang lies at this piece.'
  return `Before the cut, in chalk in the overhang at the ${mark.at}, ${showLength(mark.depth, unit, 'seam')} deep: leaf, piece, arrow to the numbered end.`
}

/** Room that a drawn mark takes. */
export const CHALK = { width: 40, height: 17 }

/** A mark as it is chalked: the leaf, the piece, and an arrow to the numbered end, which is up. */
export function chalkItems(leaf: string, { cell }: Piece, { x, y }: Point<'sheet'>): readonly Item[] {
  return [
    frame('mark', { min: point(x, y), max: point(x + CHALK.width, y + CHALK.height) }, { dash: [1.5, 1.5], pen: 0.25 }),
    text(point(x + 3, y + 11.5), leaf, { size: 9, weight: 'bold' }),
    text(point(x + 17, y + 11), cell.id, { size: 6 }),
    ...arrow('mark', point(x + CHALK.width - 4, y + CHALK.height - 3), point(x + CHALK.width - 4, y + 3), {
      head: 5,
      pen: 0.8,
    }),
  ]
}
