import { ok, refused, type Result } from '../result'
import { lengthSentence } from './length-sentence'
import { plainTyping, quoted } from './plain-typing'
import { countSentence, readCount, type CountTrouble } from './read-count'
import { LEAF_LIMITS, MOST_LEAVES } from './read-leaf-table'
import { readLength, type LengthTrouble } from './read-length'
import { unitNamed, type LengthUnit, type UnitName } from './unit'

/** Leaves of one size, numbered onwards from `first`; sizes in mm. */
export interface Bulk {
  readonly count: number
  readonly length: number
  readonly width: number
  readonly first: number
}

/** Why a line such as `24 leaves, 2440 x 200` was not understood. */
export type BulkTrouble =
  | { readonly about: 'form'; readonly text: string }
  | { readonly about: 'one unit'; readonly text: string }
  | { readonly about: 'count' | 'first'; readonly trouble: CountTrouble; readonly max: number }
  | { readonly about: 'length' | 'width'; readonly trouble: LengthTrouble }

const COUNT = String.raw`(\S+?) ?(?:(?:leaves|leaf|sheets?|pieces?)(?: of| at|[,:;])?|[,:;](?= )|[x×*@]) ?`
const SIZES = String.raw`(.+?) ?(?:[x×*]|\bby\b) ?(.+?)`
const LINE = new RegExp(String.raw`^${COUNT}${SIZES}(?:,? from (?:leaf |number |no\.? ?)?(\S+))?$`)

/** No line of this kind has as many signs as this. */
const MOST_SIGNS = 120

/**
 * `24 leaves, 2440 x 200`, `24 x 8 ft by 8 in`, `12 leaves 2440 × 200 mm from 5`: count, length along the grain,
 * width. A unit behind the last size (not the foot) holds for both; one that could mean either is asked about.
 */
export function readBulk(text: string, unit: LengthUnit): Result<Bulk, BulkTrouble> {
  const plain = plainTyping(text)
  const found = plain.length > MOST_SIGNS ? null : LINE.exec(plain)
  if (found === null) return refused({ about: 'form', text })
  const [, countText = '', lengthText = '', widthText = '', firstText = '1'] = found
  const count = readCount(countText, { min: 1, max: MOST_LEAVES })
  if (!count.ok) return refused({ about: 'count', trouble: count.reason, max: MOST_LEAVES })
  const max = MOST_LEAVES - count.value + 1
  const first = readCount(firstText, { min: 1, max })
  if (!first.ok) return refused({ about: 'first', trouble: first.reason, max })
  const bare = commonUnit(lengthText, widthText, unit)
  if (bare === null) return refused({ about: 'one unit', text })
  const length = readLength(lengthText, bare, LEAF_LIMITS)
  if (!length.ok) return refused({ about: 'length', trouble: length.reason })
  const width = readLength(widthText, bare, LEAF_LIMITS)
  if (!width.ok) return refused({ about: 'width', trouble: width.reason })
  return ok({ count: count.value, length: length.value, width: width.value, first: first.value })
}

/** Why a bulk line was not understood, and what to type. */
export function bulkSentence(trouble: BulkTrouble, unit: LengthUnit): string {
  const example = unit === 'mm' ? '24 leaves, 2440 x 200' : '24 leaves, 96 x 8 1/2'
  switch (trouble.about) {
    case 'form':
      return `Leaves: ${quoted(trouble.text)} is not a count and two sizes. Type a line such as ${example}.`
    case 'one unit':
      return `Leaves: in ${quoted(trouble.text)} only one of the sizes has a unit. Type the unit behind both.`
    case 'count':
      return countSentence(trouble.trouble, { name: 'Number of leaves', min: 1, max: trouble.max })
    case 'first':
      return countSentence(trouble.trouble, { name: 'First leaf', min: 1, max: trouble.max })
    case 'length':
      return lengthSentence(trouble.trouble, { name: 'Length', unit })
    case 'width':
      return lengthSentence(trouble.trouble, { name: 'Width', unit })
  }
}

/** The unit of a bare size in the line; null when `96 in x 8` leaves it open. */
function commonUnit(length: string, width: string, unit: LengthUnit): UnitName | null {
  const lengthUnit = unitBehind(length)
  const widthUnit = unitBehind(width)
  if ((lengthUnit === null) === (widthUnit === null)) return unit
  if (lengthUnit === null && widthUnit !== 'ft') return widthUnit
  return (lengthUnit ?? widthUnit) === unit ? unit : null
}

/** The unit typed at the end of a size; `3' 6` ends in inches. */
function unitBehind(size: string): UnitName | null {
  const word = /([a-z]+\.?|['"])$/.exec(size)?.[1]
  if (word !== undefined) return unitNamed(word)
  return /(?:'|ft\.?|feet|foot) ?-? ?[\d /.,-]+$/.test(size) ? 'in' : null
}
