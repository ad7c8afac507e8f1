import { point, scale, subtract, type Point } from '../../core/geometry/point'
import { transformVector, type Transform } from '../../core/geometry/transform'
import type { CellId } from '../../core/ids'
import type { WindowDrag } from '../board-types'
import type { Gesture } from './gesture'

/** What is taken hold of: the wood under a fixed window, or the window on a fixed leaf. */
export type Hold = 'wood' | 'window'

/** What is held at a spot: a piece, with the map back from the screen to its leaf. */
export interface Held {
  readonly cell: CellId
  readonly toLeaf: Transform<'screen', 'leaf'>
}

/** null where there is nothing to hold. */
export type HoldAt = (at: Point<'screen'>) => Held | null

/**
 * The window moved on its leaf by dragging. What is held follows the pointer: wood that is pulled one way lets the
 * window go the other. A cell's own placement carries the way back, so that a turned leaf goes where it is pulled.
 */
export const dragWindow =
  (hold: Hold, holdAt: HoldAt, tell: (drag: WindowDrag) => void): Gesture =>
  (from, { button }) => {
    const held = button === 0 ? holdAt(from) : null
    if (!held) return null
    const { cell, toLeaf } = held
    const by = (at: Point<'screen'>): Point<'leaf'> =>
      scale(transformVector(toLeaf, subtract(at, from)), hold === 'wood' ? -1 : 1)
    return {
      move: (at) => tell({ cell, by: by(at), phase: 'move' }),
      complete: (at) => tell({ cell, by: by(at), phase: 'end' }),
      cancel: () => tell({ cell, by: point(0, 0), phase: 'cancel' }),
    }
  }
