import type { PartId } from '../ids'
import type { Job } from '../job/job'
import { cutCounts, type PartLedger } from '../ledger/ledger'
import { ok, refused } from '../result'
import { changeWithinPart, patched, type Next } from './change-within'

/** How many pieces of a part are not marked as cut, those without a leaf too. */
export function piecesToCut(ledger: PartLedger): number {
  const { safe, 'not yet': waiting } = cutCounts([ledger])
  return safe + waiting + ledger.packets.reduce((sum, { lacking }) => sum + lacking.length, 0)
}

/**
 * Marks a panel as finished: what is left of its leaves is let go of, and nothing about its face changes any more.
 * Refused while a piece of it is not marked as cut: where it would be cut is not settled then.
 */
export const finishPart = (job: Job, ledger: PartLedger): Next => {
  const left = piecesToCut(ledger)
  const { id, name } = ledger.face.part
  if (left > 0) return refused({ trouble: 'not all cut', part: `“${name}”`, left })
  return changeWithinPart(job, id, (part) => ok(patched(part, { finished: true })))
}

/** The panel is not finished after all. */
export const reopenPart = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => ok(patched(part, { finished: false })))
