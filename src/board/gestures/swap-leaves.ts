import type { Point } from '../../core/geometry/point'
import type { CellId } from '../../core/ids'
import type { Gesture } from './gesture'

/** A tag on its way from its cell to another. */
export interface TagOnTheWay {
  readonly from: CellId
  readonly at: Point<'screen'>
  /** The cell under the pointer, where it is another. */
  readonly onto: CellId | null
}

export interface SwapPlan {
  readonly tagAt: (at: Point<'screen'>, touch: boolean) => CellId | null
  readonly cellAt: (at: Point<'screen'>) => CellId | null
  /** null when it is over. */
  readonly show: (tag: TagOnTheWay | null) => void
  readonly swap: (one: CellId, other: CellId) => void
}

/** A number tag dragged onto another cell: the two leaves change places. Dropped anywhere else, nothing happens. */
export const swapLeaves =
  ({ tagAt, cellAt, show, swap }: SwapPlan): Gesture =>
  (from, { touch, button }) => {
    const cell = button === 0 ? tagAt(from, touch) : null
    if (cell === null) return null
    const target = (at: Point<'screen'>): CellId | null => {
      const under = cellAt(at)
      return under === cell ? null : under
    }
    return {
      move: (at) => show({ from: cell, at, onto: target(at) }),
      complete(at) {
        show(null)
        const onto = target(at)
        if (onto !== null) swap(cell, onto)
      },
      cancel: () => show(null),
    }
  }
