import type { Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import type { FlitchId } from '../ids'
import type { Job } from '../job/job'
import { refused, type Result } from '../result'
import type { Next } from './change-within'
import type { CommandTrouble } from './command-trouble'
import { setCommonOutline } from './flitch-commands'
import { setLeafOutline } from './leaf-commands'

/** The outline of one leaf, or with null the one that the leaves of a flitch have in common. */
export interface OutlineRef {
  readonly flitch: FlitchId
  readonly leaf: number | null
}

/** A leaf that had the common outline gets one of its own. Points are numbered from 0. */
export const moveOutlinePoint = (job: Job, ref: OutlineRef, index: number, to: Point<'leaf'>): Next =>
  changeOutline(job, ref, (ring) => (index in ring ? ring.with(index, to) : noSuchPoint(index, ring)))

/** Puts a point before point `index`; at the number of points, behind the last. */
export const insertOutlinePoint = (job: Job, ref: OutlineRef, index: number, at: Point<'leaf'>): Next =>
  changeOutline(job, ref, (ring) =>
    index in ring || index === ring.length ? ring.toSpliced(index, 0, at) : noSuchPoint(index, ring),
  )

export const removeOutlinePoint = (job: Job, ref: OutlineRef, index: number): Next =>
  changeOutline(job, ref, (ring) => {
    if (!(index in ring)) return noSuchPoint(index, ring)
    return ring.length > 3 ? ring.toSpliced(index, 1) : { trouble: 'too few points' }
  })

const noSuchPoint = (point: number, ring: Ring<'leaf'>): CommandTrouble => ({
  trouble: 'no such point',
  point,
  points: ring.length,
})

function changeOutline(job: Job, ref: OutlineRef, change: (ring: Ring<'leaf'>) => Ring<'leaf'> | CommandTrouble): Next {
  const ring = outlineAt(job, ref)
  if (!ring.ok) return ring
  const changed = change(ring.value)
  if ('trouble' in changed) return refused(changed)
  const { flitch, leaf } = ref
  return leaf === null ? setCommonOutline(job, flitch, changed) : setLeafOutline(job, { flitch, leaf }, changed)
}

function outlineAt(job: Job, { flitch: id, leaf: number }: OutlineRef): Result<Ring<'leaf'>, CommandTrouble> {
  const flitch = job.flitches.find((f) => f.id === id)
  if (!flitch) return refused({ trouble: 'not there', thing: 'flitch', id })
  if (number === null) return { ok: true, value: flitch.outline }
  const leaf = flitch.leaves.find((l) => l.number === number)
  if (!leaf) return refused({ trouble: 'not there', thing: 'leaf', id: String(number) })
  return { ok: true, value: leaf.outline ?? flitch.outline }
}
