/**
 * How much two rings have in common.
 *
 * Input: simple rings running positively, convex or not. Output: an area. Tolerance: floating-point steps where one of
 * them is convex, else the grid. Failure: none.
 */
import { intersect } from './clip'
import { convexOverlapArea, isConvex } from './convex'
import type { Space } from './point'
import { regionArea, type Ring } from './polygon'

export function overlapArea<S extends Space>(ring: Ring<S>, other: Ring<S>): number {
  if (isConvex(other)) return Math.abs(convexOverlapArea(ring, other))
  return isConvex(ring) ? Math.abs(convexOverlapArea(other, ring)) : regionArea(intersect([[ring]], [[other]]))
}
