import type { Point } from '../geometry/point'
import type { FlitchId, PartId, WindowGroup } from '../ids'
import type { Job } from '../job/job'
import { gateWords } from '../ledger/gate-wording'
import type { PlannedCut } from '../ledger/ledger'
import { isCutFor, type PieceRef } from '../leaves/done-cuts'
import type { Leaf } from '../leaves/leaf'
import { ok, refused } from '../result'
import { holdFinished } from './hold-finished'
import { changeWithinFlitch, changeWithinLeaf, changeWithinPart, type Next } from './change-within'

/**
 * Marks pieces as cut: from now on they are fixed where they were cut. Refused for one that is not safe. The place of
 * the window is kept with it, even where it was not chosen by hand.
 */
export function markCut(job: Job, cuts: readonly PlannedCut[]): Next {
  let next: Next = ok(job)
  for (const cut of cuts) {
    if (cut.gate.state === 'done') continue
    if (cut.gate.state === 'not yet') {
      return refused({ trouble: 'not safe', leaf: cut.leaf, piece: pieceWords(cut), why: gateWords(cut.gate) })
    }
    if (next.ok) next = withCut(next.value, cut)
  }
  return next
}

function withCut(job: Job, { part, cell, takes, flitch, group, position, placedIn }: PlannedCut): Next {
  let next = withPosition(job, placedIn, group, position)
  for (const { leaf, region } of takes) {
    if (!next.ok) return next
    next = changeWithinLeaf(next.value, { flitch, leaf }, (held) => {
      const others = held.cuts.filter((cut) => !isCutFor(cut, { part, cell }))
      return ok({ ...held, cuts: [...others, ...region.map(([outline]) => ({ part, cell, outline }))] })
    })
  }
  return next
}

const withPosition = (job: Job, id: PartId, group: WindowGroup, position: Point<'leaf'>): Next =>
  changeWithinPart(job, id, (part) =>
    ok(part.positions[group] ? part : { ...part, positions: { ...part.positions, [group]: position } }),
  )

/** Takes a mark off again: the piece was not cut after all. Refused in a panel that is finished. */
export function unmarkCut(job: Job, id: FlitchId, piece: PieceRef): Next {
  const isOurs = (leaf: Leaf) => leaf.cuts.some((cut) => isCutFor(cut, piece))
  const next = changeWithinFlitch(job, id, (flitch) => {
    if (!flitch.leaves.some(isOurs)) return refused({ trouble: 'not there', thing: 'cut', id: piece.cell })
    const without = (leaf: Leaf): Leaf => ({ ...leaf, cuts: leaf.cuts.filter((cut) => !isCutFor(cut, piece)) })
    return ok({ ...flitch, leaves: flitch.leaves.map((leaf) => (isOurs(leaf) ? without(leaf) : leaf)) })
  })
  return holdFinished(job, next)
}

const pieceWords = ({ name, cell }: PlannedCut): string => `${cell} of “${name}”`
