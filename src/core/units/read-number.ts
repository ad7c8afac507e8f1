import { ok, refused, type Result } from '../result'
import { numeralValue } from './numeral'
import { plainTyping, quoted } from './plain-typing'
import { decimalText } from './show-length'

/** A unit in which a number may be typed; `toKept` and `toShown` lead to the unit in which it is kept, and back. */
export interface NumberUnit {
  /** As it stands behind the number; '' for a bare number. */
  readonly sign: string
  /** Other ways in which people write it. */
  readonly written: readonly string[]
  /** Decimals that are shown. */
  readonly places: number
  readonly toKept: (shown: number) => number
  readonly toShown: (kept: number) => number
}

/** A kind of number: the units in which it may be typed, first the one in which it is shown and a bare number is. */
export interface NumberKind {
  readonly units: readonly [NumberUnit, ...NumberUnit[]]
}

/** Ends included, in the unit in which the number is kept. */
export interface NumberLimits {
  readonly least: number
  readonly most: number
}

/** Why a text was not taken as a number. */
export type NumberTrouble =
  | { readonly trouble: 'empty' }
  | { readonly trouble: 'not a number'; readonly text: string }
  | { readonly trouble: 'other unit'; readonly text: string }
  | { readonly trouble: 'too small' | 'too large'; readonly text: string }

/** A number in decimals, with one of its kind's units behind it or bare; a comma is decimal. Given as it is kept. */
export function readNumber(
  text: string,
  kind: NumberKind,
  { least, most }: NumberLimits,
): Result<number, NumberTrouble> {
  const plain = plainTyping(text)
  if (plain === '') return refused({ trouble: 'empty' })
  const found = /^([-+])? ?(\d*(?:[.,]\d*)?) ?((?:\D.*)?)$/.exec(plain)
  const size = found?.[2] === undefined ? null : numeralValue(found[2], 'decimal')
  if (size === null) return refused({ trouble: 'not a number', text })
  const unit = unitTyped(found?.[3] ?? '', kind)
  if (!unit) return refused({ trouble: 'other unit', text })
  // a limit shown in another unit is rounded: what is typed as it is shown must be taken
  const kept = settled(unit.toKept(found?.[1] === '-' ? -size : size), unit, { least, most })
  if (kept < least) return refused({ trouble: 'too small', text })
  if (kept > most) return refused({ trouble: 'too large', text })
  return ok(kept)
}

/** A value that rounds to the limit as shown is the limit. */
function settled(kept: number, unit: NumberUnit, { least, most }: NumberLimits): number {
  const isShownAs = (limit: number) => showIn(unit, kept) === showIn(unit, limit)
  if (kept < least && isShownAs(least)) return least
  if (kept > most && isShownAs(most)) return most
  return kept + 0
}

const bare = (sign: string): string => plainTyping(sign).replace(/[\s.°º²·]/g, '')

function unitTyped(typed: string, { units }: NumberKind): NumberUnit | undefined {
  if (bare(typed) === '') return units[0]
  return units.find(({ sign, written }) => [sign, ...written].some((way) => bare(way) === bare(typed)))
}

function showIn({ places, toShown }: NumberUnit, kept: number): string {
  const shown = toShown(kept)
  const size = places === 0 ? String(Math.round(Math.abs(shown))) : decimalText(Math.abs(shown), places)
  return `${shown < 0 && Number(size) !== 0 ? '−' : ''}${size}`
}

/** The number in its first unit: `21 °C`, `45 %`. */
export function showNumber(kept: number, { units: [unit] }: NumberKind): string {
  return unit.sign === '' ? showIn(unit, kept) : `${showIn(unit, kept)} ${unit.sign}`
}

/** Why a number was not taken: names the thing, what was typed, and the limit. */
export function numberSentence(
  trouble: NumberTrouble,
  { name, kind, least, most }: NumberLimits & { readonly name: string; readonly kind: NumberKind },
): string {
  const [low, high] = [showNumber(least, kind), showNumber(most, kind)]
  switch (trouble.trouble) {
    case 'empty':
      return `${name}: nothing is typed. Type ${low} to ${high}.`
    case 'not a number':
      return `${name}: ${quoted(trouble.text)} is not a number. Type ${low} to ${high}.`
    case 'other unit': {
      const signs = kind.units.map(({ sign }) => sign).filter((sign) => sign !== '')
      const units = signs.length === 0 ? 'Type the number alone.' : `Type it in ${signs.join(' or ')}.`
      return `${name}: ${quoted(trouble.text)} has a unit that doesn’t belong here. ${units}`
    }
    case 'too small':
      return `${name}: ${quoted(trouble.text)} is less than ${low}, the least it can be.`
    case 'too large':
      return `${name}: ${quoted(trouble.text)} is more than ${high}, the most it can be.`
  }
}
