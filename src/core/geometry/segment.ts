/**
 * Straight lines between two points.
 *
 * Input: edges anywhere, also of no length. Output: points and distances in the same space. Tolerance: given by the
 * caller where lines are to count as one, else that of floating-point steps. Failure: null where there is no answer.
 */
import { add, between, cross, distance, dot, scale, subtract, type Point, type Space } from './point'
import { ringEdges, type Edge, type Ring } from './polygon'

export const edgeLength = <S extends Space>({ a, b }: Edge<S>): number => distance(a, b)

/** The point of an edge that lies nearest to p. */
export function nearestOnEdge<S extends Space>({ a, b }: Edge<S>, p: Point<S>): Point<S> {
  const along = subtract(b, a)
  const squared = dot(along, along)
  if (squared === 0) return a
  const t = dot(subtract(p, a), along) / squared
  if (t <= 0) return a
  return t >= 1 ? b : between(a, b, t)
}

/** How far p lies from an edge. */
export function distanceToEdge<S extends Space>({ a, b }: Edge<S>, p: Point<S>): number {
  // written out in numbers: the searches over whole regions spend their time here
  const x = b.x - a.x
  const y = b.y - a.y
  const squared = x * x + y * y
  const t = squared === 0 ? 0 : ((p.x - a.x) * x + (p.y - a.y) * y) / squared
  const share = t < 0 ? 0 : t > 1 ? 1 : t
  return Math.hypot(p.x - a.x - x * share, p.y - a.y - y * share)
}

/** From a point to the nearest spot of a ring's border, inside or out. */
export const distanceToRing = <S extends Space>(ring: Ring<S>, p: Point<S>): number =>
  Math.min(...ringEdges(ring).map((edge) => distanceToEdge(edge, p)))

/** Where two edges cross or touch, their ends counted in; null where they don't, or run in parallel. */
export function edgeCrossing<S extends Space>(e: Edge<S>, f: Edge<S>): Point<S> | null {
  const along = subtract(e.b, e.a)
  const other = subtract(f.b, f.a)
  const area = cross(along, other)
  if (area === 0) return null
  const gap = subtract(f.a, e.a)
  const t = cross(gap, other) / area
  const u = cross(gap, along) / area
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? between(e.a, e.b, t) : null
}

/** The nearest that two edges come to each other. */
export function distanceBetweenEdges<S extends Space>(e: Edge<S>, f: Edge<S>): number {
  if (edgeCrossing(e, f)) return 0
  return Math.min(distanceToEdge(e, f.a), distanceToEdge(e, f.b), distanceToEdge(f, e.a), distanceToEdge(f, e.b))
}

/**
 * The stretch along which two edges of neighbouring rings run against each other in one line: on `edge`, in its
 * direction. null when they run the same way, lie further apart than the tolerance anywhere along the stretch, or
 * share no more of their length than the tolerance.
 */
export function sharedStretch<S extends Space>(edge: Edge<S>, other: Edge<S>, tolerance: number): Edge<S> | null {
  // nearly all pairs of edges lie far from each other
  if (isClear(edge, other, tolerance)) return null
  const length = edgeLength(edge)
  if (length <= tolerance || edgeLength(other) <= tolerance) return null
  const along = scale(subtract(edge.b, edge.a), 1 / length)
  const start = dot(subtract(other.b, edge.a), along)
  const end = dot(subtract(other.a, edge.a), along)
  const from = Math.max(0, start)
  const to = Math.min(length, end)
  if (to - from <= tolerance) return null
  const offsetAt = (reach: number) =>
    cross(along, subtract(between(other.b, other.a, (reach - start) / (end - start)), edge.a))
  if (Math.abs(offsetAt(from)) > tolerance || Math.abs(offsetAt(to)) > tolerance) return null
  const pointAt = (reach: number) =>
    reach === 0 ? edge.a : reach === length ? edge.b : add(edge.a, scale(along, reach))
  return { a: pointAt(from), b: pointAt(to) }
}

/** The boxes of two edges are farther apart than a distance. */
const isClear = <S extends Space>({ a, b }: Edge<S>, { a: c, b: d }: Edge<S>, by: number): boolean =>
  (a.x < b.x ? a.x : b.x) - (c.x > d.x ? c.x : d.x) > by ||
  (c.x < d.x ? c.x : d.x) - (a.x > b.x ? a.x : b.x) > by ||
  (a.y < b.y ? a.y : b.y) - (c.y > d.y ? c.y : d.y) > by ||
  (c.y < d.y ? c.y : d.y) - (a.y > b.y ? a.y : b.y) > by

/** The other coordinate of every place where edges cross the straight line on which `fixed` has the value `level`. */
export const levelCrossings = <S extends Space>(
  edges: readonly Edge<S>[],
  fixed: 'x' | 'y',
  level: number,
): readonly number[] => {
  const free = fixed === 'x' ? 'y' : 'x'
  return edges.flatMap(({ a, b }) =>
    a[fixed] > level === b[fixed] > level
      ? []
      : [a[free] + ((b[free] - a[free]) * (level - a[fixed])) / (b[fixed] - a[fixed])],
  )
}
