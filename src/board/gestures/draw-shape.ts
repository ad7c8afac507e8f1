import { distance, type Point } from '../../core/geometry/point'
import type { DefectShape } from '../../core/leaves/leaf'
import type { Gesture } from './gesture'

export interface ShapeDrawing {
  readonly tool: () => 'spot' | 'line' | null
  readonly toLeaf: (at: Point<'screen'>) => Point<'leaf'>
  /** The shape so far; null when there is none any more. */
  readonly show: (shape: DefectShape | null) => void
  readonly done: (shape: DefectShape) => void
  /** Shorter drags draw nothing, mm. */
  readonly least: number
}

/** A spot drawn from its middle outwards, or a line from one end to the other. */
export const drawShape =
  ({ tool, toLeaf, show, done, least }: ShapeDrawing): Gesture =>
  (from, { button }) => {
    const kind = button === 0 ? tool() : null
    if (!kind) return null
    const start = toLeaf(from)
    const shapeTo = (at: Point<'screen'>): DefectShape =>
      kind === 'spot'
        ? { shape: 'spot', centre: start, radius: distance(start, toLeaf(at)) }
        : { shape: 'line', from: start, to: toLeaf(at) }
    return {
      move: (at) => show(shapeTo(at)),
      complete(at) {
        show(null)
        if (distance(start, toLeaf(at)) >= least) done(shapeTo(at))
      },
      cancel: () => show(null),
    }
  }
