import { ok, refused, type Result } from '../result'
import { checkEach } from './check-each'
import { checkFlitch } from './check-flitch'
import { repeated } from './check-number'
import { borderFlitchTrouble } from './check-border'
import { pairsTrouble } from './check-pairs'
import { figureTrouble, partTrouble, pressRoomTrouble, shopTrouble } from './check-part'
import type { Job } from './job'
import { textTrouble } from './check-text'
import { LONGEST_NAME, MOST_FLITCHES, MOST_LEAVES, MOST_PARTS } from './limits'
import { flitchInWords, inPlace, partInWords } from './place-words'
import type { MeaningTrouble } from './trouble'

/** The job with its outlines in order, or the first thing in it that can't be so. */
export function checkJob(job: Job): Result<Job, MeaningTrouble> {
  const wrong =
    textTrouble(job.name, LONGEST_NAME, 'the job: name') ??
    shopTrouble(job.shop) ??
    pressRoomTrouble(job.pressRoom) ??
    countTrouble(job) ??
    idTrouble(job)
  if (wrong) return refused(wrong)
  const flitches = checkEach(job.flitches, (flitch, i) => checkFlitch(flitch, flitchInWords(i, flitch.name)))
  if (!flitches.ok) return flitches
  const part = partsTrouble(job) ?? pairsTrouble(job)
  if (part) return refused(part)
  return ok(flitches.value === job.flitches ? job : { ...job, flitches: flitches.value })
}

/** How much a job may hold. */
export function countTrouble({ flitches, parts }: Job): MeaningTrouble | null {
  const leaves = flitches.reduce((sum, flitch) => sum + flitch.leaves.length, 0)
  const counts: readonly (readonly [string, number, number])[] = [
    ['flitches', flitches.length, MOST_FLITCHES],
    ['leaves', leaves, MOST_LEAVES],
    ['parts', parts.length, MOST_PARTS],
  ]
  const over = counts.find(([, value, limit]) => value > limit)
  if (!over) return null
  const [things, value, limit] = over
  return { trouble: 'too many', place: 'the job', value, things, limit }
}

/** Ids are never used twice for things of one kind. */
export function idTrouble({ flitches, parts }: Job): MeaningTrouble | null {
  const defects = flitches.flatMap(({ leaves }) => leaves.flatMap((leaf) => leaf.defects))
  for (const [place, things] of [
    ['flitches', flitches],
    ['parts', parts],
    ['defects', defects],
  ] as const) {
    const twice = repeated(things.map(({ id }) => id))
    if (twice !== null) return { trouble: 'repeated id', place, id: twice }
  }
  return null
}

function partsTrouble({ flitches, parts }: Job): MeaningTrouble | null {
  const byId = new Map(flitches.map((flitch) => [flitch.id, flitch]))
  for (const [i, part] of parts.entries()) {
    const owner = partInWords(i, part.name)
    const flitch = byId.get(part.flitch)
    const wrong: MeaningTrouble | null = flitch
      ? (partTrouble(part, owner) ?? figureTrouble(part, flitch, owner) ?? borderFlitchTrouble(part, flitches, owner))
      : { trouble: 'no such flitch', place: inPlace([owner], ['flitch']), flitch: part.flitch }
    if (wrong) return wrong
  }
  return null
}
