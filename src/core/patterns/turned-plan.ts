import { compose, rotation } from '../geometry/transform'
import type { Plan, PlannedCell } from './pattern'

/**
 * The same cells with every window turned on its leaf, by `degrees` clockwise as seen from the numbered side. As all
 * turn alike, neighbours mirror, repeat or break as before; only how the axes of a leaf lie can no longer be told.
 */
export function turnedPlan(plan: Plan, degrees: number): Plan {
  if (degrees === 0) return plan
  const back = rotation<'window'>((-degrees * Math.PI) / 180)
  const turned = <L extends Pick<PlannedCell, 'lay' | 'turn'>>(laid: L): L => ({
    ...laid,
    lay: compose(laid.lay, back),
    turn: { turnedOver: laid.turn.turnedOver, spun: null },
  })
  const cells = plan.cells.map((cell) => ({
    ...turned(cell),
    ...(cell.strips ? { strips: cell.strips.map(turned) } : {}),
  }))
  return { ...plan, cells }
}
