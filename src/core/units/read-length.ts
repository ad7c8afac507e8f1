import { ok, refused, type Result } from '../result'
import { termsLength, type FormTrouble } from './length-terms'
import { plainTyping } from './plain-typing'
import { LONGEST, toNanometre, type UnitName } from './unit'

/** Why a text was not taken as a length; `text` is what was typed, lengths are mm. */
export type LengthTrouble =
  | { readonly trouble: 'empty' }
  | FormTrouble
  | { readonly trouble: 'ambiguous'; readonly text: string; readonly readings: readonly [Reading, Reading] }
  | { readonly trouble: 'too small'; readonly text: string; readonly min: number }
  | { readonly trouble: 'too large'; readonly text: string; readonly max: number }

/** One way of understanding a text: the length in mm, and how to type it so that it means nothing else. */
export interface Reading {
  readonly length: number
  readonly text: string
}

/** What a field takes, both ends included, mm. Without `min` the least is 0, or -100 m where `negative` is set. */
export interface LengthLimits {
  readonly min?: number | undefined
  readonly max?: number | undefined
  readonly negative?: boolean | undefined
}

/** No length has as many signs as this; what is longer is not looked into. */
const MOST_SIGNS = 80

/** A limit may be missed by this much, so that 16 in keeps to a limit of 16 in after sums in mm; mm. */
const HAIR = 1e-5

/**
 * A length as people type it, in mm to the nanometre: mm, cm, m, inches and feet with decimals or fractions, the
 * unit typed or, for a bare number, `unit`. A comma that could be a decimal sign or a thousands sign is not guessed.
 */
export function readLength(text: string, unit: UnitName, limits: LengthLimits = {}): Result<number, LengthTrouble> {
  const plain = plainTyping(text).replace(/^[≈~] ?/, '')
  if (plain === '') return refused({ trouble: 'empty' })
  const found = plain.length > MOST_SIGNS ? refused({ trouble: 'not a length', text } as const) : readPlain(plain, unit)
  if (!found.ok) return refused('text' in found.reason ? { ...found.reason, text } : found.reason)
  return keepTo(limits, found.value, text)
}

function readPlain(plain: string, unit: UnitName): Result<number, LengthTrouble> {
  const sign = plain.startsWith('-') ? -1 : 1
  const unsigned = plain.replace(/^[-+] ?/, '')
  const grouped = termsLength(unsigned, unit, 'groups')
  const decimal = termsLength(unsigned, unit, 'decimal')
  if (!grouped.ok && !decimal.ok) return grouped
  if (grouped.ok && decimal.ok && grouped.value !== decimal.value) {
    const reading = (length: number, text: string) => ({ length: toNanometre(sign * length), text })
    const readings = [
      reading(decimal.value, plain.replace(',', '.')),
      reading(grouped.value, plain.replace(',', '')),
    ] as const
    return refused({ trouble: 'ambiguous', text: plain, readings })
  }
  const length = grouped.ok ? grouped.value : decimal.ok ? decimal.value : 0
  return ok(toNanometre(sign * length))
}

function keepTo(limits: LengthLimits, length: number, text: string): Result<number, LengthTrouble> {
  const { min, max } = lengthRange(limits)
  if (length < min - HAIR) return refused({ trouble: 'too small', text, min })
  if (length > max + HAIR) return refused({ trouble: 'too large', text, max })
  return ok(length)
}

/** The least and the greatest length that the limits leave, mm. */
export function lengthRange(limits: LengthLimits): { readonly min: number; readonly max: number } {
  return {
    min: Math.max(limits.min ?? -Infinity, limits.negative ? -LONGEST : 0),
    max: Math.min(limits.max ?? Infinity, LONGEST),
  }
}
