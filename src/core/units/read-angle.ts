import { ok, refused, type Result } from '../result'
import { numeralValue } from './numeral'
import { plainTyping, quoted } from './plain-typing'
import { decimalText } from './show-length'

/** Why a text was not taken as an angle; limits in degrees. */
export type AngleTrouble =
  | { readonly trouble: 'empty' }
  | { readonly trouble: 'not an angle'; readonly text: string }
  | { readonly trouble: 'too small'; readonly text: string; readonly minDegrees: number }
  | { readonly trouble: 'too large'; readonly text: string; readonly maxDegrees: number }

/** Both ends included. */
export interface AngleLimits {
  readonly minDegrees: number
  readonly maxDegrees: number
}

/** An angle in decimal degrees, the sign or word behind it or not. No angle has thousands: a comma is decimal. */
export function readAngle(text: string, { minDegrees, maxDegrees }: AngleLimits): Result<number, AngleTrouble> {
  const plain = plainTyping(text)
  if (plain === '') return refused({ trouble: 'empty' })
  const found = /^([-+])? ?(\d*(?:[.,]\d*)?) ?(?:°|º|deg\.?|degrees?)?$/.exec(plain)
  const size = found?.[2] === undefined ? null : numeralValue(found[2], 'decimal')
  if (size === null) return refused({ trouble: 'not an angle', text })
  const degrees = (found?.[1] === '-' ? -size : size) + 0
  if (degrees < minDegrees) return refused({ trouble: 'too small', text, minDegrees })
  if (degrees > maxDegrees) return refused({ trouble: 'too large', text, maxDegrees })
  return ok(degrees)
}

/** Degrees to the hundredth: `22.5°`, `−7.25°`. */
export function showAngle(degrees: number): string {
  const size = decimalText(Math.abs(degrees), 2)
  return `${degrees < 0 && size !== '0' ? '−' : ''}${size}°`
}

/** Why an angle was not taken: names the thing, what was typed, and the limit. */
export function angleSentence(trouble: AngleTrouble, name: string): string {
  const example = 'Type degrees such as 45 or 22.5.'
  switch (trouble.trouble) {
    case 'empty':
      return `${name}: nothing is typed. ${example}`
    case 'not an angle':
      return `${name}: ${quoted(trouble.text)} is not an angle. ${example}`
    case 'too small':
      return `${name}: ${quoted(trouble.text)} is less than ${showAngle(trouble.minDegrees)}, the least it can be.`
    case 'too large':
      return `${name}: ${quoted(trouble.text)} is more than ${showAngle(trouble.maxDegrees)}, the most it can be.`
  }
}
