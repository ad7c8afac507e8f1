import { add, subtract, type Point } from '../geometry/point'
import type { FlitchId } from '../ids'
import { BORDER } from '../faces/window-group'
import { checkJob } from '../job/check-job'
import { checkRing } from '../job/check-ring'
import type { Job } from '../job/job'
import { MOST_LEAVES } from '../job/limits'
import { borderFlitch, isCutFrom } from '../job/part-flitches'
import { flitchInWords } from '../job/place-words'
import { blankLeaf } from '../job/usual'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { pressingFollows } from '../press/follow-flitch'
import { ok, refused } from '../result'
import { leavesGone } from './fixed-cuts'
import { setDrift } from './leaf-commands'
import { changeWithinFlitch, patched, type Next } from './change-within'

/** Puts a flitch behind the others. */
export const addFlitch = (job: Job, flitch: Flitch): Next => checkJob({ ...job, flitches: [...job.flitches, flitch] })

/** Takes a flitch away; refused while a part, or the border of one, is cut from it. */
export function removeFlitch(job: Job, id: FlitchId): Next {
  const flitch = job.flitches.find((f) => f.id === id)
  if (!flitch) return refused({ trouble: 'not there', thing: 'flitch', id })
  const parts = job.parts.filter((part) => isCutFrom(part, id)).map(({ name }) => name)
  if (parts.length > 0) return refused({ trouble: 'flitch in use', flitch: flitch.name, parts })
  return ok({ ...job, flitches: job.flitches.filter((f) => f !== flitch) })
}

/** What is said of a flitch as a whole. */
export type FlitchPatch = Partial<Omit<Flitch, 'id' | 'leaves' | 'missing' | 'outline'>>

/** Leaves of it that lie in build-ups follow; figure that has a grain line lays the windows of its parts straight again. */
export function changeFlitch(job: Job, id: FlitchId, patch: FlitchPatch): Next {
  const next = changeWithinFlitch(job, id, (flitch) => ok(patched(flitch, patch)))
  const before = job.flitches.find((flitch) => flitch.id === id)
  const after = next.ok && next.value.flitches.find((flitch) => flitch.id === id)
  if (!next.ok || !before || !after || before === after) return next
  const parts = next.value.parts.map((part) =>
    part.flitch === id
      ? patched(part, {
          pressing: pressingFollows(part.pressing, before, after),
          windowTurn: after.figure === 'burl' ? part.windowTurn : 0,
        })
      : part,
  )
  return ok(parts.every((part, i) => part === next.value.parts[i]) ? next.value : { ...next.value, parts })
}

/** Sets the common outline: that of every leaf that has none of its own. */
export const setCommonOutline = (job: Job, id: FlitchId, outline: Flitch['outline']): Next =>
  changeWithinFlitch(job, id, (flitch) => {
    const owner = flitchInWords(job.flitches.indexOf(flitch), flitch.name)
    const checked = checkRing(outline, [owner], 'outline')
    return checked.ok ? ok(patched(flitch, { outline: checked.value })) : checked
  })

/**
 * Says which leaves there are, in sequence. What is known of a number that stays is kept, a new number gets a blank
 * leaf, and the gap after a leaf that goes is put after the one before it. A leaf of which a piece has been cut stays.
 *
 * Drift is measured from the first leaf: when another becomes the first, all drift, and the window positions of the
 * parts faced from this flitch, are measured anew from that one, so that every cut stays where it is.
 */
export function setLeaves(job: Job, id: FlitchId, numbers: readonly number[]): Next {
  const before = job.flitches.find((flitch) => flitch.id === id)
  if (!before) return refused({ trouble: 'not there', thing: 'flitch', id })
  if (isSameSequence(before, numbers)) return ok(job)
  const cut = leavesGone(job, id, new Set(numbers))
  if (cut) return refused(cut)
  const known = new Map(before.leaves.map((leaf) => [leaf.number, leaf]))
  const listed = numbers.map((number) => known.get(number) ?? blankLeaf(number))
  const origin = listed[0]?.drift ?? { x: 0, y: 0 }
  const leaves = listed.map((leaf) => (known.has(leaf.number) ? measuredFrom(origin, leaf) : leaf))
  const flitch = { ...before, leaves, missing: gapsKept(before, new Set(numbers)) }
  return checkJob({
    ...job,
    flitches: job.flitches.map((f) => (f === before ? flitch : f)),
    parts: positionsMoved(job, id, origin),
  })
}

/** As many leaves as `count`: the last ones go, or new ones come, numbered on from the highest. */
export function setLeafCount(job: Job, id: FlitchId, count: number): Next {
  const flitch = job.flitches.find((f) => f.id === id)
  if (!flitch) return refused({ trouble: 'not there', thing: 'flitch', id })
  const numbers = flitch.leaves.map(({ number }) => number)
  const highest = Math.max(0, ...numbers)
  // an absurd count is refused by its number; it must not be counted up to first
  const wanted = Number.isInteger(count) ? Math.min(Math.max(count, 0), numbers.length + MOST_LEAVES + 1) : 0
  const more = Array.from({ length: Math.max(0, wanted - numbers.length) }, (_, i) => highest + 1 + i)
  return setLeaves(job, id, [...numbers.slice(0, wanted), ...more])
}

/** So many leaves are missing after leaf `after`; 0 if none. */
export const setMissing = (job: Job, id: FlitchId, after: number, count: number): Next =>
  changeWithinFlitch(job, id, (flitch) => {
    const before = flitch.missing.find((gap) => gap.after === after)
    if ((before?.count ?? 0) === count) return ok(flitch)
    const others = flitch.missing.filter((gap) => gap !== before)
    return ok({ ...flitch, missing: count === 0 ? others : [...others, { after, count }] })
  })

/** Drift accepted for several leaves at once, by number; leaves that are not named keep theirs. */
export const setDrifts = (job: Job, id: FlitchId, drifts: ReadonlyMap<number, Point<'leaf'>>): Next => {
  let next: Next = ok(job)
  for (const [leaf, drift] of drifts) next = next.ok ? setDrift(next.value, { flitch: id, leaf }, drift) : next
  return next
}

const isSameSequence = ({ leaves }: Flitch, numbers: readonly number[]): boolean =>
  leaves.length === numbers.length && leaves.every(({ number }, i) => number === numbers[i])

const measuredFrom = (origin: Point<'leaf'>, leaf: Leaf): Leaf =>
  origin.x === 0 && origin.y === 0 ? leaf : { ...leaf, drift: subtract(leaf.drift, origin) }

function positionsMoved(job: Job, id: FlitchId, by: Point<'leaf'>): Job['parts'] {
  if (by.x === 0 && by.y === 0) return job.parts
  return job.parts.map((part) => {
    if (!isCutFrom(part, id)) return part
    const flitchOf = (group: string) => (group === BORDER ? borderFlitch(part) : part.flitch)
    const moved = Object.entries(part.positions).map(
      ([group, at]) => [group, flitchOf(group) === id ? add(at, by) : at] as const,
    )
    return { ...part, positions: Object.fromEntries(moved) }
  })
}

function gapsKept({ leaves, missing }: Flitch, stays: ReadonlySet<number>): Flitch['missing'] {
  const counts = new Map<number, number>()
  let last: number | null = null
  for (const { number } of leaves) {
    if (stays.has(number)) last = number
    const count = missing.find(({ after }) => after === number)?.count ?? 0
    if (last !== null && count > 0) counts.set(last, (counts.get(last) ?? 0) + count)
  }
  return [...counts].map(([after, count]) => ({ after, count }))
}
