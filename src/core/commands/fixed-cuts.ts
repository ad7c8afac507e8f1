/**
 * A command's own refusal where a decision is sure to undo what has been cut, told without laying the face; whatever
 * else would is refused by the check that every decision passes (`hold-cuts`).
 */
import type { CellId, FlitchId, PartId } from '../ids'
import type { Job } from '../job/job'
import { isCutFor } from '../leaves/done-cuts'
import type { DoneCut, Leaf } from '../leaves/leaf'
import type { CutAlready } from './command-trouble'

/** No knife cuts finer: what a fit without play may be off by, and what the grid leaves. */
export const SLACK = 0.05

interface Found {
  readonly leaf: Leaf
  readonly cut: DoneCut
}

const cutsOf = (job: Job, part: PartId): readonly Found[] =>
  job.flitches.flatMap(({ leaves }) =>
    leaves.flatMap((leaf) => leaf.cuts.filter((cut) => cut.part === part).map((cut) => ({ leaf, cut }))),
  )

function trouble(job: Job, { leaf, cut }: Found, why: CutAlready['why'], beyond = 0): CutAlready {
  const name = job.parts.find(({ id }) => id === cut.part)?.name ?? cut.part
  return { trouble: 'cut already', leaf: leaf.number, cell: cut.cell, part: `“${name}”`, why, beyond }
}

/** The part would go, with pieces that have been cut for it. */
export function partGone(job: Job, part: PartId): CutAlready | null {
  const [first] = cutsOf(job, part)
  return first ? trouble(job, first, 'gone') : null
}

/** Leaves would go of which pieces have been cut for parts that are there. */
export function leavesGone(job: Job, id: FlitchId, stays: ReadonlySet<number>): CutAlready | null {
  const isThere = (part: PartId) => job.parts.some((one) => one.id === part)
  const gone = job.flitches.find((flitch) => flitch.id === id)?.leaves.filter(({ number }) => !stays.has(number)) ?? []
  const [first] = gone.flatMap((leaf) => leaf.cuts.filter(({ part }) => isThere(part)).map((cut) => ({ leaf, cut })))
  return first ? trouble(job, first, 'gone') : null
}

/** Another leaf would lie in a cell that has been cut. */
export function otherLeaf(job: Job, part: PartId, cell: CellId, wanted: number): CutAlready | null {
  const cuts = cutsOf(job, part).filter(({ cut }) => isCutFor(cut, { part, cell }))
  const [first] = cuts
  return first && cuts.every(({ leaf }) => leaf.number !== wanted) ? trouble(job, first, 'other leaf') : null
}

/** What has been cut would be moved by so much: one cell, or all of a part. */
export function movedBy(job: Job, part: PartId, cell: CellId | null, by: number): CutAlready | null {
  const first = cutsOf(job, part).find(({ cut }) => cell === null || cut.cell === cell)
  return first && by > SLACK ? trouble(job, first, 'other wood', by) : null
}
