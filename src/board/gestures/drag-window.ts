import { point, scale, subtract, type Point } from '../../core/geometry/point'
import { transformVector, type Transform } from '../../core/geometry/transform'
import type { WindowDrag } from '../board-types'
import type { Gesture } from './gesture'

/** What is taken hold of: the wood under a fixed window, or the window on a fixed leaf. */
export type Hold = 'wood' | 'window'

/** How a spot is held: the map back from the screen to the leaf there; null where there is nothing to hold. */
export type HoldAt = (at: Point<'screen'>) => Transform<'screen', 'leaf'> | null

/**
 * The window moved on its leaf by dragging. What is held follows the pointer: wood that is pulled one way lets the
 * window go the other. A cell's own placement carries the way back, so that a turned leaf goes where it is pulled.
 */
export const dragWindow =
  (hold: Hold, holdAt: HoldAt, tell: (drag: WindowDrag) => void): Gesture =>
  (from, { button }) => {
    const toLeaf = button === 0 ? holdAt(from) : null
    if (!toLeaf) return null
    const by = (at: Point<'screen'>): Point<'leaf'> =>
      scale(transformVector(toLeaf, subtract(at, from)), hold === 'wood' ? -1 : 1)
    return {
      move: (at) => tell({ by: by(at), phase: 'move' }),
      complete: (at) => tell({ by: by(at), phase: 'end' }),
      cancel: () => tell({ by: point(0, 0), phase: 'cancel' }),
    }
  }
