/**
 * The parts that hang beside a face, across their gaps.
 *
 * Input: a face, and the faces of its pairs. Output: the same drawing as of a face, in panel mm of the one that is shown.
 * Finished they hang with their gap between them; as they are worked on, what stands over at both edges lies between them
 * too, so that no sheet covers another. Failure: none; a pair that does not hold hangs nothing.
 */
import type { DerivedPart } from '../../core/derive'
import { asTheyHang, beyondAtGap } from '../../core/fit/pair-edges'
import { add, point, type Point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import { compose, translation } from '../../core/geometry/transform'
import type { PairReport } from '../../core/seams/pair-report'
import type { FaceBeside, FaceCell } from '../board-types'

/** How a face is drawn by itself. */
export type DrawnFace = Pick<FaceBeside, 'cells' | 'seams'>

export const faceBeside = (
  face: DerivedPart,
  faces: readonly DerivedPart[],
  isFinished: boolean,
  drawn: (other: DerivedPart) => DrawnFace,
): readonly FaceBeside[] =>
  face.pairs.flatMap((report) => {
    const other = faces.find(({ part }) => part.id === report.other.id)
    if (!other || report.void) return []
    return [hungBeside(other, wayTo(report, face, other, isFinished), drawn(other))]
  })

/** From the panel of the other part to that of the face. */
function wayTo({ pair, is }: PairReport, face: DerivedPart, other: DerivedPart, isFinished: boolean): Point<'panel'> {
  const [first, second] = is === 'first' ? [face, other] : [other, face]
  const hang = asTheyHang(pair, first.part, second.part)
  const over = isFinished || pair.pressed === 'one board' ? 0 : 2 * beyondAtGap(pair)
  const apart = add(hang, pair.meet === 'same leaves' ? point(0, over) : point(over, 0))
  return is === 'first' ? apart : point(-apart.x, -apart.y)
}

function hungBeside({ part, sizes }: DerivedPart, by: Point<'panel'>, { cells, seams }: DrawnFace): FaceBeside {
  const moved = (ring: Ring<'panel'>): Ring<'panel'> => ring.map((p) => add(p, by))
  return {
    part: part.id,
    name: part.name,
    cells: cells.map((cell) => movedCell(cell, by)),
    seams: seams.map((seam) => ({
      ...seam,
      edge: { a: add(seam.edge.a, by), b: add(seam.edge.b, by) },
      line: seam.line.map((p) => add(p, by)),
    })),
    finished: moved(sizes.outlines.finished.ring),
    sheet: moved(sizes.outlines.sheet.ring),
  }
}

function movedCell(cell: FaceCell, by: Point<'panel'>): FaceCell {
  const move = translation<'panel'>(by.x, by.y)
  const { made } = cell
  return {
    ...cell,
    ring: cell.ring.map((p) => add(p, by)),
    leafToPanel: compose(move, cell.leafToPanel),
    made: made && {
      ...made,
      parts: made.parts.map((one) => ({ ...one, leafToPanel: compose(move, one.leafToPanel) })),
      joints: made.joints.map(({ a, b }) => ({ a: add(a, by), b: add(b, by) })),
    },
  }
}
