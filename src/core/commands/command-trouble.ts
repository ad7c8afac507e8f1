import type { MeaningTrouble } from '../job/trouble'
import { jobSentence, type LengthWords } from '../job/trouble-wording'

/** Why a decision can't be taken: what it would say can't be so, or what it speaks of is not there. */
export type CommandTrouble =
  | MeaningTrouble
  | {
      readonly trouble: 'not there'
      readonly thing: 'flitch' | 'part' | 'leaf' | 'defect' | 'cut' | 'layer' | 'pair'
      readonly id: string
    }
  | { readonly trouble: 'flitch in use'; readonly flitch: string; readonly parts: readonly string[] }
  | { readonly trouble: 'no such point'; readonly point: number; readonly points: number }
  | { readonly trouble: 'too few points' }
  | { readonly trouble: 'two flitches' }
  | { readonly trouble: 'leaf already there'; readonly leaf: number }
  | { readonly trouble: 'not safe'; readonly leaf: number; readonly piece: string; readonly why: string }
  | CutAlready
  /** `part` in quotes. */
  | { readonly trouble: 'not all cut'; readonly part: string; readonly left: number }
  | { readonly trouble: 'finished already'; readonly part: string }

/** What a decision would make of a piece that has been cut. `beyond`: how far it would reach out of what was cut. */
export interface CutAlready {
  readonly trouble: 'cut already'
  readonly leaf: number
  readonly cell: string
  readonly part: string
  readonly why: 'gone' | 'other leaf' | 'other wood'
  readonly beyond: number
}

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
    case 'two flitches':
      return 'Field and border are cut from two flitches here: their leaves can’t change places.'
    case 'leaf already there':
      return `There is a leaf ${trouble.leaf} in the flitch already.`
    case 'not safe':
      return `Leaf ${trouble.leaf}, ${trouble.piece}: ${trouble.why}.`
    case 'not all cut':
      return (
        `${trouble.part} has ${trouble.left === 1 ? 'a piece' : `${trouble.left} pieces`} not marked as cut. ` +
        'Tick what is cut first: what is left of the leaves is known only then.'
      )
    case 'finished already':
      return `${trouble.part} is marked as finished, and stays as it was made. If it is not, take that mark off at the cutting station.`
    case 'cut already':
      return cutSentence(trouble, length)
    default:
      return jobSentence(trouble, length)
  }
}

function cutSentence({ leaf, cell, part, why, beyond }: CutAlready, length: LengthWords = (mm) => `${mm} mm`): string {
  const fixed = `Leaf ${leaf} is cut for ${cell} of ${part}`
  // less than can be read off a rule is still more than nothing
  const needs = {
    gone: 'there would be no such piece any more',
    'other leaf': 'this would take another leaf there',
    'other wood': `this needs ${length(Math.max(beyond, 0.1))} of wood beyond the cut`,
  }[why]
  return `${fixed}, and ${needs}. If it was not cut after all, take the tick off at the cutting station.`
}

const listed = (names: readonly string[]): string => {
  const quoted = names.map((name) => `“${name}”`)
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`
}
