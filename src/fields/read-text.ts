import { ok, refused, type Result } from '../core/result'

/** Why a text was not taken. */
export type TextTrouble =
  { readonly trouble: 'empty' } | { readonly trouble: 'too long'; readonly signs: number; readonly max: number }

/** What a text field takes: at most `max` signs, and something at all where it is required. */
export interface TextLimits {
  readonly required: boolean
  readonly max: number
}

/** A name or a remark on one line, with single spaces and none at its ends. */
export function readText(text: string, { required, max }: TextLimits): Result<string, TextTrouble> {
  const line = text.replace(/\s+/g, ' ').trim()
  const signs = [...line].length
  if (required && signs === 0) return refused({ trouble: 'empty' })
  return signs > max ? refused({ trouble: 'too long', signs, max }) : ok(line)
}

/** Why a text was not taken: names the thing, how long it is, and the limit. */
export function textSentence(trouble: TextTrouble, name: string): string {
  if (trouble.trouble === 'empty') return `${name}: nothing is typed. Type at least one letter.`
  return `${name}: this has ${trouble.signs} letters, and there is room for ${trouble.max}. Make it shorter.`
}
