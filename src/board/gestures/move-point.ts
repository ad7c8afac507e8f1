import { subtract, type Point } from '../../core/geometry/point'
import type { Gesture } from './gesture'

/** Something at a place on the leaf that can be dragged. */
export interface Movable {
  /** Where it was taken hold of: the point itself, not the spot beside it that was pressed. */
  readonly at: Point<'leaf'>
  readonly moved: (to: Point<'leaf'>, phase: 'move' | 'end') => void
  readonly cancelled: () => void
}

/** A point dragged on the leaf. The finger may take hold of it beside its middle: it keeps that distance. */
export const movePoint =
  (
    find: (spot: Point<'leaf'>, touch: boolean) => Movable | null,
    toLeaf: (at: Point<'screen'>) => Point<'leaf'>,
  ): Gesture =>
  (from, { touch, button }) => {
    const movable = button === 0 ? find(toLeaf(from), touch) : null
    if (!movable) return null
    const off = subtract(movable.at, toLeaf(from))
    const to = (at: Point<'screen'>): Point<'leaf'> => {
      const spot = toLeaf(at)
      return { x: spot.x + off.x, y: spot.y + off.y }
    }
    return {
      move: (at) => movable.moved(to(at), 'move'),
      complete: (at) => movable.moved(to(at), 'end'),
      cancel: movable.cancelled,
    }
  }
