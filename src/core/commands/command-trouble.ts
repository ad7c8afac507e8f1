import type { MeaningTrouble } from '../job/trouble'
import { jobSentence, type LengthWords } from '../job/trouble-wording'

/** Why a decision can't be taken: what it would say can't be so, or what it speaks of is not there. */
export type CommandTrouble =
  | MeaningTrouble
  | { readonly trouble: 'not there'; readonly thing: 'flitch' | 'part' | 'leaf' | 'defect'; readonly id: string }
  | { readonly trouble: 'flitch in use'; readonly flitch: string; readonly parts: readonly string[] }
  | { readonly trouble: 'no such point'; readonly point: number; readonly points: number }
  | { readonly trouble: 'too few points' }
  | { readonly trouble: 'leaf already there'; readonly leaf: number }

/** One sentence, or two; lengths as `length` shows them, else in mm. */
export function commandSentence(trouble: CommandTrouble, length?: LengthWords): string {
  switch (trouble.trouble) {
    case 'not there':
      return `There is no ${trouble.thing} “${trouble.id}” any more.`
    case 'flitch in use':
      return `The flitch “${trouble.flitch}” is used by ${listed(trouble.parts)}. Take another flitch there first.`
    case 'no such point':
      return `The outline has no point ${trouble.point + 1}: it has ${trouble.points}.`
    case 'too few points':
      return 'An outline needs at least 3 points; this one can spare none.'
    case 'leaf already there':
      return `There is a leaf ${trouble.leaf} in the flitch already.`
    default:
      return jobSentence(trouble, length)
  }
}

const listed = (names: readonly string[]): string => {
  const quoted = names.map((name) => `“${name}”`)
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`
}
