import { windowTemplates } from '../templates/window-template'
import { claimOf, claimsOf, inCuttingOrder, type Claim, type LedgerFace } from './claims'
import { gateOf, type Gate } from './gate'

/** A piece in the list of cuts. */
export interface PlannedCut extends Claim {
  readonly gate: Gate
}

/** The leaves of a part that are cut by one template. */
export interface Packet {
  readonly template: string
  readonly cuts: readonly PlannedCut[]
  /** Cells for which there is no leaf. */
  readonly lacking: readonly string[]
}

export interface PartLedger {
  readonly face: LedgerFace
  readonly packets: readonly Packet[]
}

/**
 * Every piece of a job on its real leaf, in the order in which it is cut: the faces that are seen most first, packet by
 * packet, each with its gate. All parts must be among the faces: what is not looked at can't be guarded.
 */
export function planLedger(faces: readonly LedgerFace[]): readonly PartLedger[] {
  const all = faces.flatMap(claimsOf)
  return inCuttingOrder(faces).map((face) => ({
    face,
    packets: windowTemplates(face).map(({ name, pieces }) => ({
      template: name,
      cuts: pieces.flatMap((piece): readonly PlannedCut[] => {
        const claim = claimOf(face, piece)
        return claim ? [{ ...claim, gate: gateOf(claim, face, faces, all) }] : []
      }),
      lacking: pieces.filter(({ leaf }) => !leaf).map(({ cell }) => cell.id),
    })),
  }))
}

/** How many cuts of a ledger are done, safe, and not yet. */
export function cutCounts(ledger: readonly PartLedger[]): Readonly<Record<Gate['state'], number>> {
  const counts = { done: 0, safe: 0, 'not yet': 0 }
  for (const { packets } of ledger) for (const { cuts } of packets) for (const { gate } of cuts) counts[gate.state]++
  return counts
}
