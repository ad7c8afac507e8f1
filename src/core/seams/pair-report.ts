import type { LaidFace } from '../fit/lay-face'
import { meetingEdges, type PairVoid } from '../fit/pair-edges'
import { followed } from '../fit/pair-follow'
import type { Side } from '../geometry/box'
import type { PartId } from '../ids'
import type { Pair } from '../job/job'
import { pairMeeting, type PairMeeting } from './pair-meeting'

/** One part of a pair as seen from it. */
export interface PairReport {
  readonly pair: Pair
  readonly is: 'first' | 'second'
  readonly other: { readonly id: PartId; readonly name: string }
  /** The edge at the gap. */
  readonly side: Side
  /** Why the pair does not hold; null when it does. */
  readonly void: PairVoid | null
  /** null where it does not hold, or a leaf is missing at the gap. */
  readonly meeting: PairMeeting | null
}

/** A pair from both of its parts, which are laid as it has them. */
export function reportPair(pair: Pair, first: LaidFace, second: LaidFace): readonly [PairReport, PairReport] {
  const next = followed(pair, first, second.part)
  const why = typeof next === 'object' ? null : next
  const meeting = why ? null : pairMeeting(pair, first, second)
  const sides = meetingEdges(pair)
  const from = (is: 'first' | 'second', { part: { id, name } }: LaidFace): PairReport => ({
    pair,
    is,
    other: { id, name },
    side: sides[is],
    void: why,
    meeting,
  })
  return [from('first', second), from('second', first)]
}
