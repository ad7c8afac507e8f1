import type { DerivedPart } from '../derive'
import { subtract, type Point } from '../geometry/point'
import type { PartId, WindowGroup } from '../ids'
import { pairsTrouble } from '../job/check-pairs'
import type { Job, Pair } from '../job/job'
import { usualPair } from '../job/usual'
import { ok, refused } from '../result'
import { patched, type Next } from './change-within'
import { setPosition } from './face-commands'

/** Which pair is meant. */
export type PairRef = Pick<Pair, 'first' | 'second'>

/** Lets one part follow another across a gap: booked, pressed apart, with the gap that hinges leave. */
export const pairParts = (job: Job, first: PartId, second: PartId): Next =>
  checked({ ...job, pairs: [...job.pairs, usualPair(first, second)] })

/** How the two meet, how wide the gap is, how they are pressed, and what stands over where they meet. */
export type PairPatch = Partial<Omit<Pair, 'first' | 'second'>>

export function changePair(job: Job, ref: PairRef, patch: PairPatch): Next {
  const nth = placeOf(job, ref)
  const pair = job.pairs[nth]
  if (!pair) return gone(ref)
  const next = patched(pair, patch)
  return next === pair ? ok(job) : checked({ ...job, pairs: job.pairs.with(nth, next) })
}

/** The one that followed leads from now on. */
export function changeSides(job: Job, ref: PairRef): Next {
  const nth = placeOf(job, ref)
  const pair = job.pairs[nth]
  if (!pair) return gone(ref)
  return checked({ ...job, pairs: job.pairs.with(nth, { ...pair, first: pair.second, second: pair.first }) })
}

/** Each of the two stands for itself again, as it was decided before. */
export function partThePair(job: Job, ref: PairRef): Next {
  const nth = placeOf(job, ref)
  return nth < 0 ? gone(ref) : ok({ ...job, pairs: job.pairs.toSpliced(nth, 1) })
}

/** Where the window of a face lies; that of a part that follows moves with the one it follows, which is put so. */
export const placeWindow = (
  job: Job,
  { part, follows }: Pick<DerivedPart, 'part' | 'follows'>,
  group: WindowGroup,
  at: Point<'leaf'> | null,
): Next =>
  follows
    ? setPosition(job, follows.part, group, at && subtract(at, follows.apart))
    : setPosition(job, part.id, group, at)

/** The part where it is decided what lies in the cells of a face: another one where both are cut from the same leaves. */
export const cellsDecidedIn = ({ part, follows }: Pick<DerivedPart, 'part' | 'follows'>): PartId =>
  follows?.cells ?? part.id

const placeOf = (job: Job, { first, second }: PairRef): number =>
  job.pairs.findIndex((pair) => pair.first === first && pair.second === second)

const gone = ({ second }: PairRef) => refused({ trouble: 'not there', thing: 'pair', id: second } as const)

function checked(job: Job): Next {
  const wrong = pairsTrouble(job)
  return wrong ? refused(wrong) : ok(job)
}
