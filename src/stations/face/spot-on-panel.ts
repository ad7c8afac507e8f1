import { point, type Point } from '../../core/geometry/point'
import type { Part } from '../../core/job/job'

/** A spot measured from the left and the top edge of the finished face as drawn, lying or upright, in panel mm. */
export function spotOnPanel(
  { width, length, lying }: Pick<Part, 'width' | 'length' | 'lying'>,
  { left, top }: { readonly left: number; readonly top: number },
): Point<'panel'> {
  // drawn lying, the panel's top is at the left and its left at the foot
  return lying ? point(width / 2 - top, left - length / 2) : point(left - width / 2, top - length / 2)
}

/** A spot in panel mm as it is measured on the face as drawn. */
export const spotAsDrawn = (
  { width, length, lying }: Pick<Part, 'width' | 'length' | 'lying'>,
  at: Point<'panel'>,
): { readonly left: number; readonly top: number } =>
  lying ? { left: at.y + length / 2, top: width / 2 - at.x } : { left: at.x + width / 2, top: at.y + length / 2 }
