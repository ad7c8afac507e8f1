import { ok, refused, type Result } from '../result'
import { plainTyping, quoted } from './plain-typing'

/** Why a text was not taken as a whole number. */
export type CountTrouble =
  | { readonly trouble: 'empty' }
  | { readonly trouble: 'not a count'; readonly text: string }
  | { readonly trouble: 'too few'; readonly text: string; readonly min: number }
  | { readonly trouble: 'too many'; readonly text: string; readonly max: number }

/** Both ends included. */
export interface CountLimits {
  readonly min: number
  readonly max: number
}

/** A whole number typed in digits; separators and decimals are not guessed at. */
export function readCount(text: string, { min, max }: CountLimits): Result<number, CountTrouble> {
  const plain = plainTyping(text)
  if (plain === '') return refused({ trouble: 'empty' })
  if (!/^[-+]?\d+$/.test(plain)) return refused({ trouble: 'not a count', text })
  const count = Number(plain) + 0
  if (count < min) return refused({ trouble: 'too few', text, min })
  if (count > max) return refused({ trouble: 'too many', text, max })
  return ok(count)
}

/** Why a count was not taken: names the thing, what was typed, and the limits. */
export function countSentence(
  trouble: CountTrouble,
  { name, min, max }: CountLimits & { readonly name: string },
): string {
  const range = `Type a whole number from ${min} to ${max}.`
  switch (trouble.trouble) {
    case 'empty':
      return `${name}: nothing is typed. ${range}`
    case 'not a count':
      return `${name}: ${quoted(trouble.text)} is not a whole number. ${range}`
    case 'too few':
      return `${name}: ${quoted(trouble.text)} is less than ${trouble.min}, the least it can be.`
    case 'too many':
      return `${name}: ${quoted(trouble.text)} is more than ${trouble.max}, the most it can be.`
  }
}
