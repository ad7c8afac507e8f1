import { add, subtract, type Point } from '../geometry/point'
import type { DefectId, LeafRef } from '../ids'
import { idTrouble } from '../job/check-job'
import type { Job } from '../job/job'
import type { Defect, DefectShape } from '../leaves/leaf'
import { ok, refused } from '../result'
import { changeWithinLeaf, type Next } from './change-within'

export const addDefect = (job: Job, ref: LeafRef, defect: Defect): Next =>
  withOwnIds(changeWithinLeaf(job, ref, (leaf) => ok({ ...leaf, defects: [...leaf.defects, defect] })))

/** Puts `defect` in the place of the one that has its id. */
export const changeDefect = (job: Job, ref: LeafRef, defect: Defect): Next =>
  changeWithinLeaf(job, ref, (leaf) => {
    const nth = leaf.defects.findIndex(({ id }) => id === defect.id)
    if (nth < 0) return refused({ trouble: 'not there', thing: 'defect', id: defect.id })
    return ok({ ...leaf, defects: leaf.defects.with(nth, defect) })
  })

export const removeDefect = (job: Job, ref: LeafRef, id: DefectId): Next =>
  changeWithinLeaf(job, ref, (leaf) => {
    const defects = leaf.defects.filter((defect) => defect.id !== id)
    if (defects.length === leaf.defects.length) return refused({ trouble: 'not there', thing: 'defect', id })
    return ok({ ...leaf, defects })
  })

/** Copies a defect to other leaves of its flitch, to the spot that the drift says is the same in the log. */
export function copyDefect(
  job: Job,
  ref: LeafRef,
  id: DefectId,
  copies: readonly { readonly leaf: number; readonly id: DefectId }[],
): Next {
  const leaves = job.flitches.find((flitch) => flitch.id === ref.flitch)?.leaves ?? []
  const source = leaves.find(({ number }) => number === ref.leaf)
  const defect = source?.defects.find((d) => d.id === id)
  if (!source || !defect) return refused({ trouble: 'not there', thing: 'defect', id })
  let next = job
  for (const copy of copies) {
    const target = { flitch: ref.flitch, leaf: copy.leaf }
    const copied = changeWithinLeaf(next, target, (leaf) => {
      const moved = { ...defect, ...shapeMoved(defect, subtract(leaf.drift, source.drift)), id: copy.id }
      return ok({ ...leaf, defects: [...leaf.defects, moved] })
    })
    if (!copied.ok) return copied
    next = copied.value
  }
  return withOwnIds(ok(next))
}

function shapeMoved(defect: DefectShape, by: Point<'leaf'>): DefectShape {
  switch (defect.shape) {
    case 'spot':
      return { shape: 'spot', centre: add(defect.centre, by), radius: defect.radius }
    case 'area':
      return { shape: 'area', ring: defect.ring.map((p) => add(p, by)) }
    case 'line':
      return { shape: 'line', from: add(defect.from, by), to: add(defect.to, by) }
  }
}

function withOwnIds(next: Next): Next {
  const wrong = next.ok ? idTrouble(next.value) : null
  return wrong ? refused(wrong) : next
}
