import type { Governing } from '../../core/fit/governing'
import type { Aim } from '../../core/fit/proposals'
import type { FitAdvice } from '../../core/fit/ways-to-fit'

type Say = (length: number) => string

/** Which leaf takes the room from the others, and what dropping it would gain; '' where no single one does. */
export function governingSentence(governing: readonly Governing[], say: Say): string {
  const [first, ...others] = governing
  if (!first?.without) return ''
  const { along, across } = first.without
  const room = `Without it the others could move ${say(along)} along the leaf and ${say(across)} across.`
  const more = others.some(({ without }) => without !== null) ? ' Dropping another one would do as well.' : ''
  return `Leaf ${first.leaf} governs the run. ${room}${more}`
}

/** Why no scarf is offered: the size it would have to give, and the most that one gives. */
export function scarfSentence({ wanted, most }: NonNullable<FitAdvice['scarf']>, say: Say): string {
  const size = `${say(wanted.length)} by ${say(Math.ceil(wanted.width))}`
  if (most === null) return `No scarf found makes the leaves ${say(wanted.length)} long.`
  return most < wanted.width
    ? `No scarf found gives ${size}: at that length the widest is ${say(Math.floor(most))}.`
    : `A scarf alone does not help: ${size} can be had of these leaves, but not for all cells together.`
}

/** What a proposal is best at, and by how much. */
export function aimWords(aim: Aim, measure: number, say: Say): string {
  switch (aim) {
    case 'most play':
      return 'Most room to move'
    case 'fewest leaves':
      return `Fewest leaves: ${measure}`
    case 'longest remainder':
      return `Longest remainder: ${say(measure)}`
    case 'clear of splits':
      return measure < 0.5 ? 'Farthest from splits' : `Clear of splits by ${say(measure)}`
    case 'figure centred':
      return 'Figure centred'
    case 'most symmetric':
      return 'Most symmetric'
    case 'liveliest':
      return 'Liveliest'
  }
}
