/**
 * What is finished stays as it was made: nothing of its face is decided anew, and no mark of its cuts goes, before the
 * mark that it is finished is taken off.
 */
import type { Job, Part } from '../job/job'
import type { DoneCut } from '../leaves/leaf'
import { refused } from '../result'
import type { Next } from './change-within'

/** The decision, or why it can't be taken. `before` is the job as it was decided. */
export function holdFinished(before: Job, next: Next): Next {
  if (!next.ok || next.value === before) return next
  const after = next.value
  const changed = before.parts.find((part) => part.finished && isChanged(part, before, after))
  return changed ? refused({ trouble: 'finished already', part: `“${changed.name}”` }) : next
}

/** What may still be said of a finished panel: how it is called and shown, and how it was glued up and came out. */
const OPEN: ReadonlySet<keyof Part> = new Set<keyof Part>(['name', 'lying', 'finished', 'asCut', 'pressing'])

function isChanged(part: Part, before: Job, after: Job): boolean {
  const now = after.parts.find(({ id }) => id === part.id)
  if (!now) return true
  if (!now.finished) return false
  const keys = Object.keys(part) as (keyof Part)[]
  return keys.some((key) => !OPEN.has(key) && now[key] !== part[key]) || cutsDiffer(part, before, after)
}

function cutsDiffer({ id }: Part, before: Job, after: Job): boolean {
  if (before.flitches === after.flitches) return false
  const [was, is] = [before, after].map((job) => cutsOf(job, id))
  return was!.length !== is!.length || was!.some((cut) => !is!.includes(cut))
}

const cutsOf = (job: Job, part: Part['id']): readonly DoneCut[] =>
  job.flitches.flatMap(({ leaves }) => leaves.flatMap(({ cuts }) => cuts.filter((cut) => cut.part === part)))
