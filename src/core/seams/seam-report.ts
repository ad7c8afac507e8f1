import { depthShown } from '../leaves/bundle'
import type { LaidFace, Piece } from '../fit/lay-face'
import { present } from '../invariant'
import { findSeams, type Seam, type Stretch } from './find-seams'
import { figureJump, howFigureMeets, type Meets } from './meeting'

/** A seam with what the figure does there, the worst of its stretches. */
export interface SeamReport extends Seam {
  readonly meets: Meets
  /** How far apart in the log lie the faces on its two sides; 0 for the two faces of one knife cut. */
  readonly depthOffset: number | null
  /** How far the figure jumps along the leaf where it should mirror. */
  readonly jump: number
  readonly sides: readonly SideReport[]
}

export interface SideReport extends Stretch {
  readonly meets: Meets
  readonly depthOffset: number | null
  readonly jump: number
}

export const reportSeams = (face: LaidFace): readonly SeamReport[] =>
  findSeams(
    face.pieces.map(({ cell }) => cell),
    face.sizes.finished,
  ).map((seam) => reportSeam(face, seam))

const WORST: readonly Meets[] = ['mirrors', 'repeats', 'breaks']

function reportSeam(face: LaidFace, seam: Seam): SeamReport {
  const pieceOf = (id: string): Piece =>
    present(
      face.pieces.find(({ cell }) => cell.id === id),
      `no cell ${id}`,
    )
  const sides = seam.stretches.map((stretch) => {
    const [left, right] = [pieceOf(stretch.left), pieceOf(stretch.right)]
    return {
      ...stretch,
      meets: howFigureMeets(stretch.edge, left.logToPanel, right.logToPanel),
      jump: figureJump(stretch.edge, left.logToPanel, right.logToPanel),
      depthOffset: depthOffset(face, left, right),
    }
  })
  return {
    ...seam,
    sides,
    meets: sides
      .map(({ meets }) => meets)
      .reduce((worst, meets) => (WORST.indexOf(meets) > WORST.indexOf(worst) ? meets : worst)),
    jump: Math.max(...sides.map(({ jump }) => jump)),
    depthOffset: sides.some((side) => side.depthOffset === null)
      ? null
      : Math.max(...sides.map((side) => side.depthOffset!)),
  }
}

function depthOffset({ flitch }: LaidFace, left: Piece, right: Piece): number | null {
  if (!left.leaf || !right.leaf) return null
  const depth = (piece: Piece) => depthShown(flitch, piece.leaf!.number, piece.cell.turn.turnedOver)
  return Math.abs(depth(left) - depth(right))
}
