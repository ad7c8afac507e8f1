import { lengthPieces } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/**
 * A place on a leaf as it is read off a rule, to a whole millimetre or 1/32 in: the head of the table says so once,
 * and no figure says that it is rounded.
 */
export function placeFigure(length: number, unit: LengthUnit): string {
  const { minus, whole, fraction } = lengthPieces(length, unit, 'place')
  return `${minus ? '−' : ''}${[whole, fraction].filter((piece) => piece !== '').join(' ')}`
}

/** How finely `placeFigure` reads. */
export const placeGrain = (unit: LengthUnit): string => (unit === 'mm' ? 'the nearest mm' : 'the nearest 1/32 in')
