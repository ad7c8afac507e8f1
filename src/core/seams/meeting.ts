import { distance, type Point } from '../geometry/point'
import type { Edge } from '../geometry/polygon'
import { MEETS } from '../geometry/tolerance'
import { determinant, invert, transformPoint, type Transform } from '../geometry/transform'

/** How the figure meets: mirrored in the seam; the same again beside itself; or neither. */
export type Meets = 'mirrors' | 'repeats' | 'breaks'

/**
 * The jump of the figure across a seam, in millimetres of leaf: the distance between the two spots of the log that come
 * to lie at one point of the seam, at its worst. 0 in a book match all along its axis.
 *
 * The maps are placements with the drift taken off, so that one spot of the log has one place; what the knife removed
 * between the leaves is the depth offset, not the jump.
 */
export function figureJump(
  edge: Edge<'panel'>,
  left: Transform<'leaf', 'panel'>,
  right: Transform<'leaf', 'panel'>,
): number {
  const toLeft = invert(left)
  const toRight = invert(right)
  const jumpAt = (p: Point<'panel'>) => distance(transformPoint(toLeft, p), transformPoint(toRight, p))
  // placements are affine, so the jump is convex along the edge and worst at one of its ends
  return Math.max(jumpAt(edge.a), jumpAt(edge.b))
}

/** Mirrors: opposite sides up, and no jump. Repeats: the same side up, one leaf only slid against the other. */
export function howFigureMeets(
  edge: Edge<'panel'>,
  left: Transform<'leaf', 'panel'>,
  right: Transform<'leaf', 'panel'>,
): Meets {
  const opposite = determinant(left) * determinant(right) < 0
  if (opposite) return figureJump(edge, left, right) <= MEETS ? 'mirrors' : 'breaks'
  const turned = Math.hypot(left.a - right.a, left.b - right.b)
  return turned < 1e-9 ? 'repeats' : 'breaks'
}
