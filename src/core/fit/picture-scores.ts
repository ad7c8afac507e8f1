/**
 * How a face does by the pictures of its leaves: how alike its windows are to their mirror images, and how much goes on
 * in them.
 *
 * Input: for each leaf its numbered side as a figure, that is with slow changes of light taken off, in leaf mm. Output:
 * the mean over the pieces of a face. Tolerance: a window is cut out to the nearest pixel. Failure: null where a piece
 * has no leaf, or its leaf no picture there.
 */
import { figureLiveliness, figureSymmetry } from '../figure/align/scores'
import { figureWithin } from '../figure/align/figure-within'
import type { GreyPicture } from '../figure/align/grey'
import type { LaidFace, Piece } from './lay-face'
import type { FaceScore } from './proposals'

export function pictureScores(figures: ReadonlyMap<number, GreyPicture>): readonly FaceScore[] {
  const scoreOf = meanOverPieces(figures)
  const same = (score: number): number => score
  return [
    // a window that is turned on the leaf has its own middle line, which the rows of the picture do not cross squarely
    {
      aim: 'most symmetric',
      of: (face) => (face.part.windowTurn === 0 ? scoreOf(face, figureSymmetry) : null),
      measure: same,
    },
    { aim: 'liveliest', of: (face) => scoreOf(face, figureLiveliness), measure: same },
  ]
}

type WindowScore = (window: GreyPicture) => number | null

/** The pieces of a face are cut out of their pictures once for all scores: it is asked of one face after the other. */
function meanOverPieces(figures: ReadonlyMap<number, GreyPicture>) {
  let last: { readonly face: LaidFace; readonly windows: readonly (GreyPicture | null)[] } | null = null
  return (face: LaidFace, score: WindowScore): number | null => {
    if (last?.face !== face) last = { face, windows: piecesPictured(face).map((piece) => windowOf(piece, figures)) }
    let sum = 0
    for (const window of last.windows) {
      const one = window && score(window)
      if (one === null) return null
      sum += one
    }
    return last.windows.length > 0 ? sum / last.windows.length : null
  }
}

/** The pictures are those of the field's flitch; a border of another frames the figure. */
const piecesPictured = ({ pieces, flitch }: LaidFace): readonly Piece[] =>
  pieces.filter((piece) => piece.flitch.id === flitch.id)

function windowOf({ leaf, roughOnLeaf }: Piece, figures: ReadonlyMap<number, GreyPicture>): GreyPicture | null {
  const figure = leaf && figures.get(leaf.number)
  return figure ? figureWithin(figure, roughOnLeaf) : null
}
