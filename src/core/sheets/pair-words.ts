import { pairMeetsWords } from '../checks/pair-wording'
import type { Part } from '../job/job'
import type { PairReport } from '../seams/pair-report'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** Where the other part of a pair hangs, as the face is drawn: lying, its right is at the head of the drawing. */
export function whereTheOther({ pair: { meet }, is }: PairReport, { lying }: Pick<Part, 'lying'>): PairPlace {
  const isAlong = meet === 'same leaves'
  if (is === 'first') return isAlong ? (lying ? 'at the right' : 'below') : lying ? 'above' : 'at the right'
  return isAlong ? (lying ? 'at the left' : 'above') : lying ? 'below' : 'at the left'
}

export type PairPlace = 'at the right' | 'at the left' | 'above' | 'below'

const MEET_WORDS: Readonly<Record<PairReport['pair']['meet'], string>> = {
  booked: 'booked',
  'running through': 'running through',
  'same leaves': 'from the same leaves',
}

/** With which part this one belongs together and at which edge; what the figure does there and what is lost. */
export function pairSentences(report: PairReport, part: Part, unit: LengthUnit): readonly string[] {
  const { pair, other, side, meeting } = report
  if (report.void) return []
  const say = {
    seam: (length: number) => showLength(length, unit, 'seam'),
    depth: (length: number) => showLength(length, unit, 'depth'),
  }
  const edge = `the ${side} edge${part.lying ? ', the grain upright,' : ''}`
  const together = `One of a pair: “${other.name}” hangs ${whereTheOther(report, part)}, ${MEET_WORDS[pair.meet]}, with a gap of ${say.seam(pair.gap)} between them; ${edge} meets it.`
  return meeting ? [together, pairMeetsWords(meetingFacts(report, meeting), say)] : [together]
}

const meetingFacts = (
  { pair, other }: PairReport,
  { meets, jump, depthOffset, lost }: NonNullable<PairReport['meeting']>,
) => ({
  measured: lost,
  about: {
    other: other.name,
    meets,
    jump: jump ?? 0,
    depth: depthOffset ?? 0,
    over: pair.overhang,
    gap: pair.gap,
    pressed: pair.pressed,
  },
})

/** How two parts are made from one board; nothing where they are pressed apart. */
export function oneBoardWords({ pair, other }: PairReport, unit: LengthUnit): readonly string[] {
  if (pair.pressed === 'apart') return []
  const leaves =
    pair.meet === 'same leaves' ? ['Each leaf goes through both in one length: do not cut it at the gap.'] : []
  const gap = showLength(pair.gap, unit, 'seam')
  return [...leaves, `Press it with “${other.name}” as one board, ${gap} between the finished edges.`]
}

/** What is to be minded when that board is sawn, at the step where it is. */
export const SAW_THROUGH =
  'Saw the board through along the gap: guard on, hands out of the line of the cut, tape on the line against chips.'
