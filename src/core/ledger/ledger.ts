import { windowTemplates } from '../templates/window-template'
import { otherFlitch, type Piece } from '../fit/lay-face'
import { subtract, type Point } from '../geometry/point'
import type { CellId, FlitchId, PartId, WindowGroup } from '../ids'
import { claimsOf, claimsOfPiece, inCuttingOrder, type Claim, type LedgerFace } from './claims'
import { gateOf, type Gate } from './gate'

/** A piece in the list of cuts. */
export interface PlannedCut {
  readonly part: PartId
  readonly name: string
  readonly cell: CellId
  readonly flitch: FlitchId
  /** The name of the flitch where it is not that of the field; else null. */
  readonly ofFlitch: string | null
  /** The leaf that lies in the cell; of a made-up one, the leaf that is made longer or wider. */
  readonly leaf: number
  /** What it takes, leaf by leaf. */
  readonly takes: readonly Claim[]
  /** Where the window lies that the piece moves with. */
  readonly group: WindowGroup
  readonly position: Point<'leaf'>
  /** The part in which that place is decided. */
  readonly placedIn: PartId
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
      cuts: pieces.flatMap((piece) => plannedCut(face, piece, faces, all) ?? []),
      lacking: pieces.filter(({ leaf }) => !leaf).map(({ cell }) => cell.id),
    })),
  }))
}

function plannedCut(
  face: LedgerFace,
  piece: Piece,
  faces: readonly LedgerFace[],
  all: readonly Claim[],
): PlannedCut | null {
  if (!piece.leaf) return null
  const takes = claimsOfPiece(face, piece)
  return {
    part: face.part.id,
    name: face.part.name,
    cell: piece.cell.id,
    flitch: piece.flitch.id,
    ofFlitch: otherFlitch(face, piece),
    leaf: piece.leaf.number,
    takes,
    group: piece.cell.group,
    ...placeOf(face, piece.place.position),
    gate: gateOf(takes, face, faces, all),
  }
}

/** The window of a part that follows another is put where that one's is. */
const placeOf = ({ part, follows }: LedgerFace, position: Point<'leaf'>): Pick<PlannedCut, 'position' | 'placedIn'> =>
  follows ? { position: subtract(position, follows.apart), placedIn: follows.part } : { position, placedIn: part.id }

/** How many cuts of a ledger are done, safe, and not yet. */
export function cutCounts(ledger: readonly PartLedger[]): Readonly<Record<Gate['state'], number>> {
  const counts = { done: 0, safe: 0, 'not yet': 0 }
  for (const { packets } of ledger) for (const { cuts } of packets) for (const { gate } of cuts) counts[gate.state]++
  return counts
}
