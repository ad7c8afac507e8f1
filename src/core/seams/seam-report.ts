import { depthShown } from '../leaves/bundle'
import type { LaidFace, Piece } from '../fit/lay-face'
import { edgeLength } from '../geometry/segment'
import { present } from '../invariant'
import { partStretches } from './part-stretches'
import { centreOfFace } from '../faces/field'
import { findSeams, type Seam, type Stretch } from './find-seams'
import { figureJump, howFigureMeets, type Meets } from './meeting'

/** A seam with what the figure does there, the worst of its stretches. */
export interface SeamReport extends Seam {
  readonly meets: Meets
  /** How far apart in the log lie the faces on its two sides; 0 for the two faces of one knife cut. */
  readonly depthOffset: number | null
  /** How far the figure jumps along the leaf where it should mirror; 0 where the two sides come from two flitches. */
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
    face.sizes.outlines.finished.ring,
    centreOfFace(face.part),
  ).map((seam) => reportSeam(face, seam))

const WORST: readonly Meets[] = ['mirrors', 'repeats', 'breaks']

function reportSeam(face: LaidFace, seam: Seam): SeamReport {
  const pieceOf = (id: string): Piece =>
    present(
      face.pieces.find(({ cell }) => cell.id === id),
      `no cell ${id}`,
    )
  const sides = seam.stretches.flatMap((stretch) => {
    const [left, right] = [pieceOf(stretch.left), pieceOf(stretch.right)]
    // two logs have no spot in common
    const isOneLog = left.flitch.id === right.flitch.id
    return partStretches(stretch.edge, left, right).map(({ edge, left: onLeft, right: onRight }) => ({
      ...stretch,
      edge,
      length: edge === stretch.edge ? stretch.length : edgeLength(edge),
      meets: isOneLog ? howFigureMeets(edge, onLeft.logToPanel, onRight.logToPanel) : 'breaks',
      jump: isOneLog ? figureJump(edge, onLeft.logToPanel, onRight.logToPanel) : 0,
      depthOffset: depthOffset(left, right, onLeft.leaf, onRight.leaf),
    }))
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

/** null where a side has no leaf, or the two come from two logs. */
function depthOffset(left: Piece, right: Piece, leafOnLeft: number | null, leafOnRight: number | null): number | null {
  if (leafOnLeft === null || leafOnRight === null || left.flitch.id !== right.flitch.id) return null
  return Math.abs(
    depthShown(left.flitch, leafOnLeft, left.cell.turn.turnedOver) -
      depthShown(right.flitch, leafOnRight, right.cell.turn.turnedOver),
  )
}
