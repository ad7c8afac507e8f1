/**
 * Which leaves are cut together and which alone.
 *
 * Input: a laid face. Output: each template's leaves as a packet where at least two lie at the run's own window
 * position; a leaf that was chosen by hand or shifted, one without companions, and a piece without a leaf come alone.
 * The pieces of a packet have one rough piece and one position, drift taken off: stacked by the register lines they are
 * cut at once.
 */
import type { LaidFace, Piece } from '../fit/lay-face'
import { windowTemplates, type WindowTemplate } from './window-template'

export interface Packet {
  /** `1`, `2` … within the part. */
  readonly name: string
  readonly template: WindowTemplate
  /** In the order of the run; each has a leaf. */
  readonly pieces: readonly Piece[]
}

export type WhyAlone = 'chosen' | 'shifted' | 'only one' | 'no leaf'

export interface LoneLeaf {
  readonly template: WindowTemplate
  readonly piece: Piece
  readonly why: WhyAlone
}

export interface Cutting {
  readonly packets: readonly Packet[]
  readonly alone: readonly LoneLeaf[]
}

export function cuttingOf(face: LaidFace): Cutting {
  const packets: Packet[] = []
  const alone: LoneLeaf[] = []
  for (const template of windowTemplates(face)) {
    const judged = template.pieces.map((piece) => ({ piece, why: ownWay(face, piece) }))
    const inPackets = judged.filter(({ why }) => why === null).map(({ piece }) => piece)
    const places = atOnePlace(inPackets)
    for (const pieces of places)
      if (pieces.length > 1) packets.push({ name: String(packets.length + 1), template, pieces })
    for (const { piece, why } of judged)
      if (why) alone.push({ template, piece, why })
      else if (places.some((pieces) => pieces.length === 1 && pieces[0] === piece))
        alone.push({ template, piece, why: 'only one' })
  }
  return { packets, alone }
}

/** Of pieces of which a leaf gives several, those that lie at the same place of their leaves. */
function atOnePlace(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const byPlace = new Map<string, Piece[]>()
  for (const piece of pieces) {
    const { x, y } = piece.place.farther
    // field and border have a window each
    const place = `${piece.cell.group} ${x.toFixed(2)} ${y.toFixed(2)}`
    byPlace.set(place, [...(byPlace.get(place) ?? []), piece])
  }
  return [...byPlace.values()]
}

/** Why a piece can't be cut with the others of its shape, or null. */
function ownWay({ part }: LaidFace, { cell, leaf, place }: Piece): WhyAlone | null {
  if (!leaf) return 'no leaf'
  if (part.chosen[cell.id] === leaf.number) return 'chosen'
  return place.nudge.x !== 0 || place.nudge.y !== 0 ? 'shifted' : null
}
