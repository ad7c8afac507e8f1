import type { Point } from '../geometry/point'
import { add, point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { compose, translation, type Transform } from '../geometry/transform'

/** Where a window lies on one leaf: the position shared by its group, the leaf's drift, and the cell's own nudge. */
export interface WindowPlace {
  readonly position: Point<'leaf'>
  readonly drift: Point<'leaf'>
  readonly nudge: Point<'leaf'>
  /** How far it lies from the first piece of its leaf, where a leaf gives several pieces of a border. */
  readonly farther: Point<'leaf'>
}

/** Where the window's origin lies on the leaf. */
export const originOnLeaf = ({ position, drift, nudge, farther }: WindowPlace): Point<'leaf'> =>
  add(add(add(position, drift), nudge), farther)

/** Leaf → panel: the leaf is moved until the window's origin is at 0, then laid. */
export function placement(lay: Transform<'window', 'panel'>, place: WindowPlace): Transform<'leaf', 'panel'> {
  const origin = originOnLeaf(place)
  return compose(lay, translation<'leaf', 'window'>(-origin.x, -origin.y))
}

/** As `placement`, with the drift taken off: log → panel, since leaves without drift show the log at one place. */
export const logPlacement = (lay: Transform<'window', 'panel'>, place: WindowPlace): Transform<'leaf', 'panel'> =>
  placement(lay, { ...place, drift: point(0, 0) })

/** A ring in the frame of the window, carried to where it lies on the leaf. */
export const onLeaf = (ring: Ring<'window'>, at: Point<'leaf'>): Ring<'leaf'> =>
  ring.map((p) => point(p.x + at.x, p.y + at.y))
