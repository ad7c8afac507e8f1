/**
 * Convex rings.
 *
 * Input: points anywhere; where a ring is asked for it is convex and runs positively (clockwise as seen). Output:
 * convex rings running positively, no point repeated; null when nothing with an area is left. Tolerance: that of
 * floating-point steps. Failure: none.
 */
import { between, cross, distance, subtract, type Point, type Space } from './point'
import { ringEdges, signedArea, type Edge, type Ring } from './polygon'
import { GRID, ROUNDING } from './tolerance'

/**
 * The smallest convex ring round some points, without points on its straight edges. Points that all lie on one line
 * give its two ends, equal ones a single point.
 */
export function convexHull<S extends Space>(points: readonly Point<S>[]): Ring<S> {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y)
  const distinct = sorted.filter((p, i) => i === 0 || p.x !== sorted[i - 1]!.x || p.y !== sorted[i - 1]!.y)
  if (distinct.length < 3) return distinct
  const there = halfHull(distinct)
  const back = halfHull([...distinct].reverse())
  return [...there.slice(0, -1), ...back.slice(0, -1)]
}

function halfHull<S extends Space>(sorted: readonly Point<S>[]): Point<S>[] {
  const hull: Point<S>[] = []
  for (const p of sorted) {
    while (hull.length > 1 && turn(hull[hull.length - 2]!, hull[hull.length - 1]!, p) <= 0) hull.pop()
    hull.push(p)
  }
  return hull
}

const turn = <S extends Space>(a: Point<S>, b: Point<S>, c: Point<S>): number => cross(subtract(b, a), subtract(c, b))

/** The ring, running either way, follows its hull once round, no point lying further inside than the grid. */
export function isConvex<S extends Space>(ring: Ring<S>): boolean {
  if (isPlainlyConvex(ring)) return true
  const hull = convexHull(ring)
  if (hull.length < 3) return true
  const edges = ringEdges(hull)
  return ring.every((p) => edges.some((edge) => depthBehind(edge, p) <= GRID)) && windsOnce(ring, hull)
}

/** It turns one way at every corner and goes round once: most rings that are convex, told in one pass. */
function isPlainlyConvex<S extends Space>(ring: Ring<S>): boolean {
  if (ring.length < 3) return false
  let [before, at] = [ring[ring.length - 2]!, ring[ring.length - 1]!]
  let [turned, wasDown, changes] = [0, goesDown(before, at), 0]
  for (const next of ring) {
    const turns = Math.sign((at.x - before.x) * (next.y - at.y) - (at.y - before.y) * (next.x - at.x))
    if (turns === 0 || turns === -turned) return false
    const isDown: boolean = goesDown(at, next)
    if (isDown !== wasDown) changes++
    ;[before, at, turned, wasDown] = [at, next, turns, isDown]
  }
  return changes === 2
}

/** Down the drawing, or level to the left. */
const goesDown = <S extends Space>(a: Point<S>, b: Point<S>): boolean => b.y > a.y || (b.y === a.y && b.x < a.x)

const windsOnce = <S extends Space>(ring: Ring<S>, hull: Ring<S>): boolean =>
  signedArea(hull) - Math.abs(signedArea(ring)) <=
  GRID * ringEdges(hull).reduce((sum, { a, b }) => sum + distance(a, b), 0)

/** How far a point lies from the line through an edge, on the side that a positive ring has inside. */
export function depthBehind<S extends Space>({ a, b }: Edge<S>, p: Point<S>): number {
  return cross(subtract(b, a), subtract(p, a)) / distance(a, b)
}

/** The part of a convex ring on the inner side of the line through an edge of a positive ring. */
export function insideHalfPlane<S extends Space>(ring: Ring<S>, edge: Edge<S>): Ring<S> | null {
  const depths = ring.map((p) => depthBehind(edge, p))
  const kept: Point<S>[] = []
  ring.forEach((p, i) => {
    const j = (i + 1) % ring.length
    const [here, there] = [depths[i]!, depths[j]!]
    if (here >= 0) kept.push(p)
    if ((here > 0 && there < 0) || (here < 0 && there > 0)) kept.push(onLine(p, ring[j]!, here, there))
  })
  const distinct = kept.filter((p, i) => distance(p, kept[(i + 1) % kept.length]!) > ROUNDING)
  return distinct.length > 2 ? distinct : null
}

/** Where the line from p to q, lying at these depths, comes to depth 0. */
function onLine<S extends Space>(p: Point<S>, q: Point<S>, depthP: number, depthQ: number): Point<S> {
  const whole = depthP - depthQ
  return { x: (p.x * -depthQ + q.x * depthP) / whole, y: (p.y * -depthQ + q.y * depthP) / whole }
}

/** What two convex rings have in common. */
export function convexOverlap<S extends Space>(ring: Ring<S>, other: Ring<S>): Ring<S> | null {
  let left: Ring<S> | null = ring
  for (const edge of ringEdges(other)) left = left && insideHalfPlane(left, edge)
  return left
}

export function convexOverlapArea<S extends Space>(ring: Ring<S>, other: Ring<S>): number {
  const overlap = convexOverlap(ring, other)
  return overlap ? signedArea(overlap) : 0
}

/** The part of an edge that lies in a convex ring that runs positively; null where it does not come in. */
export function edgeWithin<S extends Space>(edge: Edge<S>, ring: Ring<S>): Edge<S> | null {
  let [from, to] = [0, 1]
  for (const side of ringEdges(ring)) {
    const [a, b] = [depthBehind(side, edge.a), depthBehind(side, edge.b)]
    if (a < 0 && b < 0) return null
    if (a < 0) from = Math.max(from, a / (a - b))
    if (b < 0) to = Math.min(to, a / (a - b))
  }
  if (to - from <= ROUNDING) return null
  return { a: from === 0 ? edge.a : between(edge.a, edge.b, from), b: to === 1 ? edge.b : between(edge.a, edge.b, to) }
}
