import { point, type Point } from '../../core/geometry/point'
import { stepLength } from '../../core/units/step'
import type { LengthUnit } from '../../core/units/unit'

/**
 * How far an arrow key moves the window on its leaf, which lies with its numbered end to the left: left and right go
 * along the leaf, up and down across it. Shift goes further, Ctrl finer. null for any other key.
 */
export function nudgeStep(
  { key, shiftKey, ctrlKey, metaKey }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey'>,
  unit: LengthUnit,
): Point<'leaf'> | null {
  const by = stepLength(unit, shiftKey ? 'large' : ctrlKey || metaKey ? 'small' : 'plain')
  switch (key) {
    case 'ArrowLeft':
      return point(0, -by)
    case 'ArrowRight':
      return point(0, by)
    // a quarter turn that puts the numbered end to the left puts the leaf's left edge at the bottom
    case 'ArrowUp':
      return point(by, 0)
    case 'ArrowDown':
      return point(-by, 0)
    default:
      return null
  }
}
