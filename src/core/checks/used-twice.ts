import type { Finding } from '../finding'
import { boxAround, boxesOverlap } from '../geometry/box'
import { convexOverlapArea } from '../geometry/convex'
import type { LaidFace, Piece } from '../fit/lay-face'
import type { PartId } from '../ids'

/** Rough pieces that overlap by less than this many square millimetres only touch. */
const TOUCHING = 1

interface Claim {
  readonly face: LaidFace
  readonly piece: Piece
  readonly order: number
}

/**
 * Wood that two rough pieces claim, on any leaf, across all parts: a finding for the part that comes later in the job,
 * one for each leaf and pair of parts.
 */
export function checkUsedTwice(faces: readonly LaidFace[]): ReadonlyMap<PartId, readonly Finding[]> {
  const byLeaf = new Map<string, Claim[]>()
  faces.forEach((face, order) => {
    for (const piece of face.pieces) {
      if (!piece.leaf) continue
      const key = `${face.flitch.id} ${piece.leaf.number}`
      byLeaf.set(key, [...(byLeaf.get(key) ?? []), { face, piece, order }])
    }
  })
  const found = new Map<PartId, Finding[]>()
  for (const claims of byLeaf.values()) {
    for (const finding of clashes(claims)) found.set(finding.part, [...(found.get(finding.part) ?? []), finding])
  }
  return found
}

function clashes(claims: readonly Claim[]): readonly Finding[] {
  const findings = new Map<string, Finding>()
  claims.forEach((one, i) => {
    for (const other of claims.slice(i + 1)) {
      if (!boxesOverlap(boxAround(one.piece.roughOnLeaf), boxAround(other.piece.roughOnLeaf))) continue
      const area = convexOverlapArea(one.piece.roughOnLeaf, other.piece.roughOnLeaf)
      if (area < TOUCHING) continue
      const [earlier, later] = one.order <= other.order ? [one, other] : [other, one]
      const key = `${later.face.part.id} ${earlier.face.part.id}`
      if (!findings.has(key)) findings.set(key, usedTwice(earlier, later, area))
    }
  })
  return [...findings.values()]
}

const usedTwice = (earlier: Claim, later: Claim, area: number): Finding => ({
  code: 'used-twice',
  grade: 'wrong',
  part: later.face.part.id,
  place: {
    on: 'leaf',
    leaf: { flitch: later.face.flitch.id, leaf: later.piece.leaf!.number },
    at: later.piece.roughOnLeaf[0]!,
  },
  measured: area,
  limit: 0,
  about: {
    leaf: later.piece.leaf!.number,
    other: earlier.face.part.name,
    cell: later.piece.cell.id,
    same: earlier.face === later.face ? 1 : 0,
  },
  remedies: [],
})
