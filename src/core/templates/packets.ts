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
    const together = judged.filter(({ why }) => why === null).map(({ piece }) => piece)
    if (together.length > 1) packets.push({ name: String(packets.length + 1), template, pieces: together })
    for (const { piece, why } of judged)
      if (why) alone.push({ template, piece, why })
      else if (together.length === 1) alone.push({ template, piece, why: 'only one' })
  }
  return { packets, alone }
}

/** Why a piece can't be cut with the others of its shape, or null. */
function ownWay({ part }: LaidFace, { cell, leaf, place }: Piece): WhyAlone | null {
  if (!leaf) return 'no leaf'
  if (part.chosen[cell.id] === leaf.number) return 'chosen'
  return place.nudge.x !== 0 || place.nudge.y !== 0 ? 'shifted' : null
}
