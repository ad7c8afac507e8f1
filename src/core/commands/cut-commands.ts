import { WINDOW } from '../fit/window-group'
import type { Point } from '../geometry/point'
import type { LeafRef, PartId } from '../ids'
import type { Job } from '../job/job'
import { gateWords } from '../ledger/gate-wording'
import type { PlannedCut } from '../ledger/ledger'
import { isCutFor, type PieceRef } from '../leaves/done-cuts'
import { ok, refused } from '../result'
import { changeWithinLeaf, changeWithinPart, type Next } from './change-within'

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

function withCut(job: Job, { part, cell, outline, flitch, leaf, position }: PlannedCut): Next {
  const marked = changeWithinLeaf(job, { flitch, leaf }, (held) =>
    ok({ ...held, cuts: [...held.cuts.filter((cut) => !isCutFor(cut, { part, cell })), { part, cell, outline }] }),
  )
  return marked.ok ? withPosition(marked.value, part, position) : marked
}

const withPosition = (job: Job, id: PartId, position: Point<'leaf'>): Next =>
  changeWithinPart(job, id, (part) =>
    ok(part.positions[WINDOW] ? part : { ...part, positions: { ...part.positions, [WINDOW]: position } }),
  )

/** Takes a mark off again: the piece was not cut after all. */
export const unmarkCut = (job: Job, ref: LeafRef, piece: PieceRef): Next =>
  changeWithinLeaf(job, ref, (leaf) => {
    const cuts = leaf.cuts.filter((cut) => !isCutFor(cut, piece))
    if (cuts.length === leaf.cuts.length) return refused({ trouble: 'not there', thing: 'cut', id: piece.cell })
    return ok({ ...leaf, cuts })
  })

const pieceWords = ({ name, cell }: PlannedCut): string => `${cell} of “${name}”`
