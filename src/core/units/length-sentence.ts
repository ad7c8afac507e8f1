import { plainTyping, quoted } from './plain-typing'
import type { LengthTrouble } from './read-length'
import { showLength } from './show-length'
import { unitNamed, type LengthUnit } from './unit'

/** What the length is for, as a heading of a sentence, and the job's unit. */
export interface LengthFor {
  readonly name: string
  readonly unit: LengthUnit
}

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  mm: 'Type a number such as 420, 42 cm or 16 1/2 in.',
  in: 'Type a number such as 16 1/2, 3\' 6" or 42 cm.',
}

/** Why a length was not taken and what to do: names the thing, what was typed, and the limit if there is one. */
export function lengthSentence(trouble: LengthTrouble, { name, unit }: LengthFor): string {
  switch (trouble.trouble) {
    case 'empty':
      return `${name}: nothing is typed. ${EXAMPLES[unit]}`
    case 'not a length':
      return `${name}: ${quoted(trouble.text)} is not a length. ${EXAMPLES[unit]}`
    case 'unit':
      return `${name}: in ${quoted(trouble.text)}, ${quoted(trouble.word)} is not a unit. Use mm, cm, m, in or ft.`
    case 'fraction':
      return `${name}: in ${quoted(trouble.text)}, ${trouble.fraction} cannot be used. ${fractionRule(trouble.fraction)}`
    case 'inches':
      return `${name}: in ${quoted(trouble.text)}, the inches after the feet must be a number below 12.`
    case 'ambiguous':
      return ambiguousSentence(trouble, name, unit)
    case 'too small':
      return `${name}: ${quoted(trouble.text)} is less than ${showLength(trouble.min, unit, 'exact')}, the least it can be.`
    case 'too large':
      return `${name}: ${quoted(trouble.text)} is more than ${showLength(trouble.max, unit, 'exact')}, the most it can be.`
  }
}

const fractionRule = (fraction: string): string =>
  /\/0+$/.test(fraction)
    ? 'The number under the line must be 1 or more.'
    : 'A fraction after a whole number must be less than 1.'

type Ambiguous = Extract<LengthTrouble, { trouble: 'ambiguous' }>

function ambiguousSentence({ text, readings: [one, other] }: Ambiguous, name: string, unit: LengthUnit): string {
  // the job's unit is said where none was typed
  const typedUnit = /([a-z]+\.?|['"])$/.exec(plainTyping(text))
  const behind = typedUnit !== null && unitNamed(typedUnit[0]) !== null ? '' : ` ${unit}`
  return `${name}: ${quoted(text)} may mean ${one.text}${behind} or ${other.text}${behind}. Type it without the comma.`
}
