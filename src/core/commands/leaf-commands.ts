import type { Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import type { CellId, FlitchId, LeafRef } from '../ids'
import type { Job, Nudge, Part } from '../job/job'
import type { MakeUp } from '../job/make-up'
import { borderFlitch, isCutFrom } from '../job/part-flitches'
import type { Flitch } from '../leaves/flitch'
import type { LeafState } from '../leaves/leaf'
import type { Border } from '../patterns/border'
import { ok, refused } from '../result'
import { flitchOfCell } from './border-places'
import { changeWithinFlitch, changeWithinLeaf, isSamePoint, patched, type Next } from './change-within'

/** null: the flitch's common outline. */
export const setLeafOutline = (job: Job, ref: LeafRef, outline: Ring<'leaf'> | null): Next =>
  changeWithinLeaf(job, ref, (leaf) => ok(patched(leaf, { outline })))

/** In bulk; a number that is not in the flitch is refused. */
export const setLeafState = (job: Job, id: FlitchId, numbers: readonly number[], state: LeafState): Next =>
  changeWithinFlitch(job, id, (flitch) => {
    const unknown = numbers.find((number) => !flitch.leaves.some((leaf) => leaf.number === number))
    if (unknown !== undefined) return refused({ trouble: 'not there', thing: 'leaf', id: String(unknown) })
    const leaves = flitch.leaves.map((leaf) => (numbers.includes(leaf.number) ? patched(leaf, { state }) : leaf))
    return ok(leaves.some((leaf, i) => leaf !== flitch.leaves[i]) ? { ...flitch, leaves } : flitch)
  })

export const setLeafNote = (job: Job, ref: LeafRef, note: string): Next =>
  changeWithinLeaf(job, ref, (leaf) => ok(patched(leaf, { note })))

/** Where the spot at p on the flitch's first leaf lies on this one, minus p; that of the first leaf itself is 0. */
export const setDrift = (job: Job, ref: LeafRef, drift: Point<'leaf'>): Next =>
  changeWithinLeaf(job, ref, (leaf) => ok(isSamePoint(leaf.drift, drift) ? leaf : { ...leaf, drift }))

/** Gives a leaf another number, and calls it so wherever a gap or a part of this flitch speaks of it. */
export function renumberLeaf(job: Job, ref: LeafRef, to: number): Next {
  const { flitch: id, leaf: from } = ref
  if (from === to) return ok(job)
  const taken = job.flitches.find((f) => f.id === id)?.leaves.some(({ number }) => number === to)
  if (taken) return refused({ trouble: 'leaf already there', leaf: to })
  const renumbered = changeWithinLeaf(renamedGaps(job, id, from, to), ref, (leaf) => ok({ ...leaf, number: to }))
  if (!renumbered.ok) return renumbered
  const parts = job.parts.map((part) => (isCutFrom(part, id) ? renamedInPart(part, id, from, to) : part))
  return ok({ ...renumbered.value, parts })
}

const renamedGaps = (job: Job, id: FlitchId, from: number, to: number): Job => ({
  ...job,
  flitches: job.flitches.map((flitch): Flitch => {
    if (flitch.id !== id) return flitch
    return { ...flitch, missing: flitch.missing.map((gap) => (gap.after === from ? { ...gap, after: to } : gap)) }
  }),
})

/** Field and border speak of leaves of a flitch each. */
function renamedInPart(part: Part, id: FlitchId, from: number, to: number): Part {
  const renamed = (leaf: number) => (leaf === from ? to : leaf)
  const nudged = ({ leaf, by }: Nudge): Nudge => ({ leaf: renamed(leaf), by })
  const remade = (makeUp: MakeUp): MakeUp => {
    const leaf = makeUp.leaf === null ? null : renamed(makeUp.leaf)
    if (makeUp.how === 'longer') return { ...makeUp, leaf }
    return { ...makeUp, leaf, from: makeUp.from === null ? null : renamed(makeUp.from) }
  }
  const isOurs = (cell: CellId) => flitchOfCell(part, cell) === id
  const inOurs = <T>(all: Readonly<Record<CellId, T>>, change: (held: T) => T): Readonly<Record<CellId, T>> =>
    Object.fromEntries(Object.entries(all).map(([cell, held]) => [cell, isOurs(cell) ? change(held) : held]))
  const { recipe, border } = part
  return {
    ...part,
    recipe: part.flitch === id ? { ...recipe, firstLeaf: renamed(recipe.firstLeaf) } : recipe,
    border: border && borderFlitch(part) === id ? renamedInBorder(border, renamed) : border,
    chosen: inOurs(part.chosen, renamed),
    nudges: inOurs(part.nudges, nudged),
    madeUp: inOurs(part.madeUp, remade),
  }
}

const renamedInBorder = (border: Border, renamed: (leaf: number) => number): Border =>
  border.firstLeaf === 'after the field' ? border : { ...border, firstLeaf: renamed(border.firstLeaf) }
