/**
 * Edges moved out or in, and shapes grown all round.
 *
 * Input: for `movedOut` a convex ring running positively, without repeated points, and a distance for each edge; for
 * `grown` a spot, a line or a simple ring running either way, and a distance of 0 or more. Output: convex rings and
 * regions running positively. Corners are mitred without limit when edges are moved, and rounded when shapes are grown.
 * Tolerance: floating-point steps for `movedOut`; `grown` gives polygons outside the true curve, by no more than
 * the chord error and two steps of the grid. Failure: null when nothing is left of a ring moved in.
 */
import { circleOutside } from './arc'
import { toGridRing, gridTwiceArea } from './clip-grid'
import { unite, woundRegion } from './clip'
import { convexHull } from './convex'
import { touchingPath } from './inner-fit-path'
import { invariant } from '../invariant'
import { cross, dot, point, scale, subtract, type Point, type Space } from './point'
import { ringEdges, signedArea, type Region, type Ring } from './polygon'
import { GRID, ROUNDING } from './tolerance'

/** A ring with its edges moved; edge i of it lies on the moved edge `sources[i]` of the ring it was made from. */
export interface MovedRing<S extends Space> {
  readonly ring: Ring<S>
  readonly sources: readonly number[]
}

/**
 * The convex ring with edge i (from point i to the next) moved out by `distances[i]`, in where that is negative: what
 * all the half-planes have in common. Of edges in one line the innermost counts. null when nothing is left.
 */
export const movedOut = <S extends Space>(ring: Ring<S>, distances: readonly number[]): Ring<S> | null =>
  movedOutWithSources(ring, distances)?.ring ?? null

/** As `movedOut`, telling which edge each edge of the result comes from. */
export function movedOutWithSources<S extends Space>(ring: Ring<S>, distances: readonly number[]): MovedRing<S> | null {
  invariant(ring.length === distances.length, `${ring.length} edges and ${distances.length} distances to move them`)
  invariant(signedArea(ring) > 0, 'a ring whose edges are to be moved must run positively')
  const lines = withoutOuterParallels(movedLines(ring, distances))
  const bounding = boundingLines(lines)
  if (bounding.length < 3) return null
  const corners = bounding.map((line, i) => meeting(bounding[(i + bounding.length - 1) % bounding.length]!, line))
  const isLeft = corners.every((p) => lines.every((line) => depthIn(line, p) >= -1e3 * ROUNDING))
  if (!isLeft || signedArea(corners) <= 0) return null
  return { ring: corners, sources: bounding.map(({ source }) => source) }
}

/** A line with the inside on its positive side; `along` has length 1. */
interface Line<S extends Space> {
  readonly at: Point<S>
  readonly along: Point<S>
  readonly source: number
}

function movedLines<S extends Space>(ring: Ring<S>, distances: readonly number[]): Line<S>[] {
  const lines: Line<S>[] = []
  ringEdges(ring).forEach(({ a, b }, source) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (length < ROUNDING) return
    const along = scale(subtract(b, a), 1 / length)
    const by = distances[source]!
    lines.push({ at: point(a.x + along.y * by, a.y - along.x * by), along, source })
  })
  return lines
}

/** Of lines that run the same way only the innermost is kept. */
function withoutOuterParallels<S extends Space>(lines: readonly Line<S>[]): Line<S>[] {
  const kept: Line<S>[] = []
  for (const line of lines) {
    const last = kept[kept.length - 1]
    if (!last || !isParallel(last, line)) kept.push(line)
    else if (depthIn(last, line.at) > 0) kept[kept.length - 1] = line
  }
  const [first, last] = [kept[0]!, kept[kept.length - 1]!]
  if (kept.length > 1 && isParallel(first, last)) {
    if (depthIn(first, last.at) > 0) kept.shift()
    else kept.pop()
  }
  return kept
}

const isParallel = <S extends Space>(p: Line<S>, q: Line<S>): boolean =>
  Math.abs(cross(p.along, q.along)) < ROUNDING && dot(p.along, q.along) > 0

const depthIn = <S extends Space>({ at, along }: Line<S>, p: Point<S>): number => cross(along, subtract(p, at))

function meeting<S extends Space>(p: Line<S>, q: Line<S>): Point<S> {
  const t = cross(subtract(q.at, p.at), q.along) / cross(p.along, q.along)
  return point(p.at.x + p.along.x * t, p.at.y + p.along.y * t)
}

/** The lines, sorted by direction, that take part in the border of what lies inside all of them. */
function boundingLines<S extends Space>(lines: readonly Line<S>[]): Line<S>[] {
  const kept: Line<S>[] = []
  const endsOutside = (line: Line<S>) =>
    kept.length > 1 && depthIn(line, meeting(kept[kept.length - 2]!, kept[kept.length - 1]!)) <= ROUNDING
  const startsOutside = (line: Line<S>) => kept.length > 1 && depthIn(line, meeting(kept[0]!, kept[1]!)) <= ROUNDING

  for (const line of lines) {
    while (endsOutside(line)) kept.pop()
    while (startsOutside(line)) kept.shift()
    kept.push(line)
  }
  while (kept.length > 2 && endsOutside(kept[0]!)) kept.pop()
  while (kept.length > 2 && startsOutside(kept[kept.length - 1]!)) kept.shift()
  return kept
}

/** What can be grown: a round spot, a straight line, or an area. */
export type Growable<S extends Space> =
  | { readonly shape: 'spot'; readonly centre: Point<S>; readonly radius: number }
  | { readonly shape: 'line'; readonly from: Point<S>; readonly to: Point<S> }
  | { readonly shape: 'area'; readonly ring: Ring<S> }

/** Everything within a distance of a shape. A line grown by 0 has no area. */
export function grown<S extends Space>(shape: Growable<S>, by: number): Region<S> {
  invariant(by >= 0, `a shape cannot be grown by ${by} mm`)
  switch (shape.shape) {
    case 'spot':
      return shape.radius + by > 0 ? [[circleOutside(shape.centre, shape.radius + by)]] : []
    case 'line':
      return by > 0 ? [[convexHull([...circleOutside(shape.from, by), ...circleOutside(shape.to, by)])]] : []
    case 'area':
      return by > 0 ? grownArea(shape.ring, by) : unite([[shape.ring]])
  }
}

function grownArea<S extends Space>(ring: Ring<S>, by: number): Region<S> {
  const onGrid = toGridRing(ring)
  if (gridTwiceArea(onGrid) < 0) onGrid.reverse()
  if (onGrid.length === 0) return []
  // one step more, so that rounding to the grid does not bring the border nearer than asked
  const disc = toGridRing(circleOutside(point<S>(0, 0), by + 2 * GRID))
  return woundRegion([touchingPath(onGrid, gridHull(disc))])
}

/** Snapping can dent a convex ring. */
const gridHull = (ring: { x: number; y: number }[]) => [...convexHull<'leaf'>(ring)]
