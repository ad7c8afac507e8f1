import type { Finding } from '../finding'
import { showAngle } from '../units/read-angle'

/** As lengths of seams are shown. */
type Say = (length: number) => string

const number = ({ about }: Finding, key: string): number => Number(about[key] ?? 0)

/** Why a mirror cannot be had at every seam, however well the leaves are laid. */
const CANNOT: Readonly<Record<string, string>> = {
  box: 'round a box that is not square it cannot meet at every seam.',
  'odd ring': 'an odd number of wedges cannot mirror all the way round. Take one more, or one fewer.',
}

/** A mirror that is not there: grain and figure are two claims, and it is told which of them holds. */
export function breaksWords(f: Finding, say: Say, advice: string): string {
  const { letter, promised, why } = f.about
  if (promised !== 'mirrors' && promised !== 'grain') return `The figure does not repeat at seam ${letter}.`
  const jump = f.measured ?? 0
  const cannot = CANNOT[String(why)]
  if (cannot)
    return promised === 'grain'
      ? `At seam ${letter} the grain mirrors, but the figure jumps by up to ${say(jump)}: ${cannot}`
      : `At seam ${letter} the figure jumps by up to ${say(jump)}: ${cannot}`
  const jumps = jump > 0.1 ? `: it jumps ${say(jump)} there` : ''
  const grain = f.about['grain'] === undefined ? '' : ` ${grainWords(number(f, 'grain'))}`
  return `The figure does not mirror at seam ${letter}${jumps}.${grain} ${advice}`
}

const grainWords = (miss: number): string =>
  miss === 0 ? 'The grain does.' : `Nor does the grain: it misses by ${showAngle(miss)}.`

/** What is said where the match asks nothing of the figure. */
const NOTHING_ASKED: Readonly<Record<string, string>> = {
  'reverse slip':
    'Neighbours lie end against end: the figure is not asked to meet at any seam, and the grain runs straight on.',
  parquet: 'Grain meets grain across at the seams: the figure is not asked to meet.',
  basket:
    'Grain meets grain across between blocks, and strips of a block lie as they come: the figure is not asked to meet.',
  'as they come':
    'No match is wanted: the leaves lie in the order of the log, and at no seam is the figure asked to meet.',
  shuffled: 'No match is wanted: the leaves lie in a mixed order, and at no seam is the figure asked to meet.',
  'slip ring': 'The grain mirrors at every seam; the figure, all of one side, does not and is not asked to.',
}

export const nothingAskedWords = (f: Finding): string => NOTHING_ASKED[String(f.about['what'])]!

/** A diamond whose angle does not go with its panel. */
export function diamondWords(f: Finding, say: Say): string {
  const [by, fits] = [say(f.measured ?? 0), showAngle(number(f, 'fits'))]
  const { runs, on } = f.about
  const where =
    runs === 'round'
      ? `The diamonds do not touch the middles of the sides: grain that starts at the middle of ${on === 'side' ? 'an end' : 'a side'} meets the ${on} ${by} off its middle.`
      : `The grain does not run from corner to centre: through the centre it meets the ${on} ${by} off the corner.`
  return `${where} It mirrors at the seams all the same. At ${fits} it fits this panel.`
}

/** Offsets that differ along one seam; `say` as depths in the log are shown. */
export function offsetWords(f: Finding, say: Say): string {
  const more = number(f, 'more')
  const others = more === 0 ? '' : ` So at ${more === 1 ? 'one more seam' : `${more} more seams`}.`
  return `Along seam ${f.about['letter']} the faces that meet lie from ${say(number(f, 'least'))} to ${say(number(f, 'most'))} apart in the log, so figure that leans in the log is not alike on both sides of the centre.${others} Four leaves laid from the spine have one offset at each seam.`
}
