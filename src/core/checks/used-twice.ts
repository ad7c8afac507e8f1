import type { Finding } from '../finding'
import { boxesOverlap, regionBox } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { overlapArea } from '../geometry/overlap'
import { regionArea } from '../geometry/polygon'
import type { LaidFace, Piece } from '../fit/lay-face'
import { ofOther } from './of-other'
import { pieceParts, type PiecePart } from '../fit/piece-parts'
import type { PartId } from '../ids'

/** Rough pieces that overlap by less than this many square millimetres only touch. */
const TOUCHING = 1

interface Claim {
  readonly face: LaidFace
  readonly piece: Piece
  readonly part: PiecePart
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
      for (const part of pieceParts(piece)) {
        const key = `${piece.flitch.id} ${part.leaf}`
        byLeaf.set(key, [...(byLeaf.get(key) ?? []), { face, piece, part, order }])
      }
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
      if (!boxesOverlap(regionBox(one.part.rough), regionBox(other.part.rough))) continue
      const area = sharedArea(one, other)
      if (area < TOUCHING) continue
      const [earlier, later] = one.order <= other.order ? [one, other] : [other, one]
      const key = `${later.face.part.id} ${earlier.face.part.id}`
      if (!findings.has(key)) findings.set(key, usedTwice(earlier, later, area))
    }
  })
  return [...findings.values()]
}

function sharedArea(one: Claim, other: Claim): number {
  if (one.piece.made || other.piece.made) return regionArea(intersect(one.part.rough, other.part.rough))
  return overlapArea(one.piece.roughOnLeaf, other.piece.roughOnLeaf)
}

const usedTwice = (earlier: Claim, later: Claim, area: number): Finding => ({
  code: 'used-twice',
  grade: 'wrong',
  part: later.face.part.id,
  place: {
    on: 'leaf',
    leaf: { flitch: later.piece.flitch.id, leaf: later.part.leaf },
    at: later.part.rough[0]![0][0]!,
  },
  measured: area,
  limit: 0,
  about: {
    leaf: later.part.leaf,
    ...ofOther(later.face, later.piece),
    other: earlier.face.part.name,
    cell: later.piece.cell.id,
    same: earlier.face === later.face ? 1 : 0,
  },
  remedies: [],
})
