import type { Point, Space } from '../geometry/point'
import type { FlitchId, LeafRef, PartId } from '../ids'
import { borderFlitchTrouble } from '../job/check-border'
import { flitchTrouble, checkLeaf } from '../job/check-flitch'
import { partTrouble } from '../job/check-part'
import type { Job, Part } from '../job/job'
import { flitchInWords, partInWords } from '../job/place-words'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { ok, refused, type Result } from '../result'
import type { CommandTrouble } from './command-trouble'

/** What every command gives: the next job, which is the same object when nothing changes. */
export type Next = Result<Job, CommandTrouble>

type Change<T> = (held: T) => Result<T, CommandTrouble>

/** The job with one flitch changed; outlines and leaves must have been checked by whoever changes them. */
export function changeWithinFlitch(job: Job, id: FlitchId, change: Change<Flitch>): Next {
  const nth = job.flitches.findIndex((flitch) => flitch.id === id)
  const flitch = job.flitches[nth]
  if (!flitch) return refused({ trouble: 'not there', thing: 'flitch', id })
  const changed = change(flitch)
  if (!changed.ok) return changed
  if (changed.value === flitch) return ok(job)
  const wrong = flitchTrouble(changed.value, flitchInWords(nth, changed.value.name))
  return wrong ? refused(wrong) : ok({ ...job, flitches: job.flitches.with(nth, changed.value) })
}

/** The job with one leaf changed and checked. */
export const changeWithinLeaf = (job: Job, { flitch: id, leaf: number }: LeafRef, change: Change<Leaf>): Next =>
  changeWithinFlitch(job, id, (flitch) => {
    const nth = flitch.leaves.findIndex((leaf) => leaf.number === number)
    const leaf = flitch.leaves[nth]
    if (!leaf) return refused({ trouble: 'not there', thing: 'leaf', id: String(number) })
    const changed = change(leaf)
    if (!changed.ok) return changed
    const checked = checkLeaf(changed.value, flitchInWords(job.flitches.indexOf(flitch), flitch.name))
    if (!checked.ok || checked.value === leaf) return checked.ok ? ok(flitch) : checked
    return ok({ ...flitch, leaves: flitch.leaves.with(nth, checked.value) })
  })

/** The job with one part changed and checked. */
export function changeWithinPart(job: Job, id: PartId, change: Change<Part>): Next {
  const nth = job.parts.findIndex((part) => part.id === id)
  const part = job.parts[nth]
  if (!part) return refused({ trouble: 'not there', thing: 'part', id })
  const changed = change(part)
  if (!changed.ok) return changed
  if (changed.value === part) return ok(job)
  const owner = partInWords(nth, changed.value.name)
  const wrong = partTrouble(changed.value, owner) ?? borderFlitchTrouble(changed.value, job.flitches, owner)
  return wrong ? refused(wrong) : ok({ ...job, parts: job.parts.with(nth, changed.value) })
}

/** `held` with some fields changed, or itself when they are so already; what is undefined stays as it is. */
export function patched<T extends object>(held: T, patch: Partial<NoInfer<T>>): T {
  const changes = (Object.keys(patch) as (keyof T)[]).filter(
    (key) => patch[key] !== undefined && patch[key] !== held[key],
  )
  if (changes.length === 0) return held
  return { ...held, ...Object.fromEntries(changes.map((key) => [key, patch[key]])) }
}

/** A record with one entry set, or taken out where the value is null. */
export function withEntry<T>(record: Readonly<Record<string, T>>, key: string, value: T | null) {
  const { [key]: _before, ...others } = record
  return value === null ? others : { ...record, [key]: value }
}

/** Also for two that are not there. */
export const isSamePoint = <S extends Space>(a: Point<S> | null, b: Point<S> | null): boolean =>
  a === b || (a !== null && b !== null && a.x === b.x && a.y === b.y)
