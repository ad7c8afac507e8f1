import { distance, type Point } from '../../core/geometry/point'
import { ringCovers, ringEdges } from '../../core/geometry/polygon'
import { distanceToEdge } from '../../core/geometry/segment'
import type { Defect, DefectShape } from '../../core/leaves/leaf'

/** How far a spot lies from a defect, 0 upon it; mm. */
export function distanceToDefect(shape: DefectShape, at: Point<'leaf'>): number {
  if (shape.shape === 'spot') return Math.max(0, distance(shape.centre, at) - shape.radius)
  if (shape.shape === 'line') return distanceToEdge({ a: shape.from, b: shape.to }, at)
  if (ringCovers(shape.ring, at)) return 0
  return Math.min(...ringEdges(shape.ring).map((edge) => distanceToEdge(edge, at)))
}

/** The defect that is meant by pointing at a spot: the nearest within reach. */
export function defectAt(defects: readonly Defect[], at: Point<'leaf'>, reach: number): Defect | null {
  const near = defects
    .map((defect) => ({ defect, off: distanceToDefect(defect, at) }))
    .filter(({ off }) => off <= reach)
    .sort((p, q) => p.off - q.off)
  return near[0]?.defect ?? null
}
