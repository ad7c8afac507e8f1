import type { Point } from '../../core/geometry/point'
import type { Gesture } from './gesture'

/** The drawing pushed about; `where` says whether a press may begin it there. */
export const pan =
  (where: (at: Point<'screen'>, middleButton: boolean) => boolean, panBy: (dx: number, dy: number) => void): Gesture =>
  (from, { button }) => {
    if (!where(from, button === 1)) return null
    let last = from
    const move = (at: Point<'screen'>) => {
      panBy(at.x - last.x, at.y - last.y)
      last = at
    }
    return { move, complete: move, cancel: () => move(from) }
  }
