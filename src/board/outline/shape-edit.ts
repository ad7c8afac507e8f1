import { add, between, distance, point, type Point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import type { DefectShape } from '../../core/leaves/leaf'

/** Rings and shapes with one thing changed; what was given stays as it is. */

export const ringWithMoved = (ring: Ring<'leaf'>, index: number, to: Point<'leaf'>): Ring<'leaf'> =>
  ring.map((p, i) => (i === index ? to : p))

/** A point put in on the edge that begins at `edge`. */
export const ringWithInserted = (ring: Ring<'leaf'>, edge: number, at: Point<'leaf'>): Ring<'leaf'> => [
  ...ring.slice(0, edge + 1),
  at,
  ...ring.slice(edge + 1),
]

/** null where fewer than three would be left. */
export const ringWithout = (ring: Ring<'leaf'>, index: number): Ring<'leaf'> | null =>
  ring.length <= 3 ? null : ring.filter((_, i) => i !== index)

/** The points by which a shape can be taken hold of: the rim of a spot, the ends of a line, the corners of an area. */
export function shapeHandles(shape: DefectShape): readonly Point<'leaf'>[] {
  if (shape.shape === 'spot') return [point(shape.centre.x, shape.centre.y + shape.radius)]
  return shape.shape === 'line' ? [shape.from, shape.to] : shape.ring
}

/** No spot is smaller, mm. */
export const LEAST_RADIUS = 0.5

export function shapeWithHandle(shape: DefectShape, index: number, to: Point<'leaf'>): DefectShape {
  if (shape.shape === 'spot')
    return { shape: 'spot', centre: shape.centre, radius: Math.max(LEAST_RADIUS, distance(shape.centre, to)) }
  if (shape.shape === 'area') return { shape: 'area', ring: ringWithMoved(shape.ring, index, to) }
  return index === 0 ? { shape: 'line', from: to, to: shape.to } : { shape: 'line', from: shape.from, to }
}

export function shapeMoved(shape: DefectShape, by: Point<'leaf'>): DefectShape {
  if (shape.shape === 'spot') return { shape: 'spot', centre: add(shape.centre, by), radius: shape.radius }
  if (shape.shape === 'area') return { shape: 'area', ring: shape.ring.map((p) => add(p, by)) }
  return { shape: 'line', from: add(shape.from, by), to: add(shape.to, by) }
}

/** Only the shape of a defect, without its name, kind and note. */
export function bareShape(shape: DefectShape): DefectShape {
  if (shape.shape === 'spot') return { shape: 'spot', centre: shape.centre, radius: shape.radius }
  return shape.shape === 'area'
    ? { shape: 'area', ring: shape.ring }
    : { shape: 'line', from: shape.from, to: shape.to }
}

/** The corner of a ring nearest to a spot, within reach. */
export function cornerAt(corners: readonly Point<'leaf'>[], at: Point<'leaf'>, reach: number): number | null {
  let best: number | null = null
  let least = reach
  corners.forEach((corner, i) => {
    const off = distance(corner, at)
    if (off <= least) [best, least] = [i, off]
  })
  return best
}

/** The edge of a ring nearest to a spot, within reach: where it begins, and the place on it. */
export function edgeAt(
  ring: Ring<'leaf'>,
  at: Point<'leaf'>,
  reach: number,
): { readonly edge: number; readonly at: Point<'leaf'> } | null {
  let best: { edge: number; at: Point<'leaf'> } | null = null
  let least = reach
  ring.forEach((a, edge) => {
    const on = nearestOn(a, ring[(edge + 1) % ring.length]!, at)
    const off = distance(on, at)
    if (off <= least) [best, least] = [{ edge, at: on }, off]
  })
  return best
}

function nearestOn(a: Point<'leaf'>, b: Point<'leaf'>, p: Point<'leaf'>): Point<'leaf'> {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
  const t = squared === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / squared
  return between(a, b, Math.min(1, Math.max(0, t)))
}
