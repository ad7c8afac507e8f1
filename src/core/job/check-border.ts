import { innerOutline } from '../geometry/inner-outline'
import { boxAround, boxHeight, boxWidth } from '../geometry/box'
import type { Flitch } from '../leaves/flitch'
import { borderDepth } from '../patterns/border'
import type { Part } from './job'
import { numberTrouble } from './check-number'
import { textTrouble } from './check-text'
import { LIMITS, LONGEST_NAME } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

/** The least that a border must leave of the field, either way. */
export const LEAST_FIELD = 10

/** What about the border of a part can't be so, or null. */
export function borderTrouble(part: Part, owner: string): MeaningTrouble | null {
  const { border } = part
  if (!border) return null
  const place = (...fields: string[]) => inPlace([owner], ['border', ...fields])
  const { string } = border
  return (
    numberTrouble(border.width, LIMITS.borderWidth, place('width')) ??
    numberTrouble(border.pieceLength, LIMITS.borderPiece, place('pieceLength')) ??
    (border.count === 'fewest' ? null : numberTrouble(border.count, LIMITS.count, place('count'))) ??
    (border.firstLeaf === 'after the field'
      ? null
      : numberTrouble(border.firstLeaf, LIMITS.leafNumber, place('firstLeaf'))) ??
    (string && numberTrouble(string.width, LIMITS.stringWidth, place('string', 'width'))) ??
    (string && textTrouble(string.species, LONGEST_NAME, place('string', 'species'))) ??
    fieldTrouble(part, place())
  )
}

/** The border names a flitch that is not in the job, or null. */
export function borderFlitchTrouble(part: Part, flitches: readonly Flitch[], owner: string): MeaningTrouble | null {
  const wanted = part.border?.flitch ?? null
  if (wanted === null || flitches.some(({ id }) => id === wanted)) return null
  return { trouble: 'no such flitch', place: inPlace([owner], ['border', 'flitch']), flitch: wanted }
}

function fieldTrouble({ outline, width, length, border }: Part, place: string): MeaningTrouble | null {
  const depth = borderDepth(border!)
  const field = innerOutline(outline, { width, length }, depth)
  const box = field && boxAround(field.ring)
  const isLeft = box && Math.min(boxWidth(box), boxHeight(box)) >= LEAST_FIELD
  return isLeft ? null : { trouble: 'no field', place, value: depth }
}
