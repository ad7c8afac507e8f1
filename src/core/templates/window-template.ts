import type { EdgeTag } from '../faces/cells'
import type { LaidFace, Piece } from '../fit/lay-face'
import { shapeOf } from '../fit/play'
import { boxAround, boxHeight, boxWidth } from '../geometry/box'
import type { Ring } from '../geometry/polygon'

/** One shape to cut: the pieces that have it, in the order of the run. Leaf orientation, numbered side up. */
export interface WindowTemplate {
  /** `1`, `2` … within the part; a part with one template has `1`. */
  readonly name: string
  /** What is cut on the leaf, jointing allowance included. */
  readonly rough: Ring<'window'>
  /** What it is jointed to, its edges tagged: the piece as it lies in the taped sheet, or a wedge cut full. */
  readonly window: Ring<'window'>
  readonly tags: readonly EdgeTag<'window'>[]
  readonly pieces: readonly Piece[]
  /** Whether it is a rectangle, to be set out by rule, stop and square. */
  readonly straight: boolean
}

/** The templates of a face, one for each shape of each flitch, those for most leaves first. */
export function windowTemplates(face: LaidFace): readonly WindowTemplate[] {
  const groups = new Map<string, Piece[]>()
  const inRun = [...face.pieces].sort((p, q) => p.cell.rank - q.cell.rank)
  for (const piece of inRun) {
    // leaves of two flitches are not cut together
    const shape = `${piece.flitch.id} / ${shapeOf(piece.rough)} / ${shapeOf(piece.cell.toCut.ring)}`
    groups.set(shape, [...(groups.get(shape) ?? []), piece])
  }
  return [...groups.values()]
    .sort((p, q) => q.length - p.length)
    .map((pieces, i) => {
      const [first] = pieces as [Piece, ...Piece[]]
      return {
        name: String(i + 1),
        rough: first.rough,
        window: first.cell.toCut.ring,
        tags: first.cell.toCut.tags,
        pieces,
        straight: isRectangle(first.rough),
      }
    })
}

/** What is crosscut and ripped for a straight piece. */
export const roughSize = ({ rough }: WindowTemplate): { readonly width: number; readonly length: number } => {
  const box = boxAround(rough)
  return { width: boxWidth(box), length: boxHeight(box) }
}

const isRectangle = (ring: Ring<'window'>): boolean => {
  const { min, max } = boxAround(ring)
  const onCorner = ({ x, y }: { x: number; y: number }) =>
    (Math.abs(x - min.x) < 1e-3 || Math.abs(x - max.x) < 1e-3) &&
    (Math.abs(y - min.y) < 1e-3 || Math.abs(y - max.y) < 1e-3)
  return ring.length === 4 && ring.every(onCorner)
}
