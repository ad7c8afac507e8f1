import { cross, subtract, type Point, type Space } from './point'
import { transformPoint, type Transform } from './transform'

/**
 * Contract. A `Ring` is a closed line of at least three points, the last not repeating the first, not
 * crossing itself. A `Polygon` is one outer ring followed by its holes; a `Region` is any number of polygons
 * that do not overlap. What this program makes has outer rings of positive area (clockwise as seen, y down)
 * and holes of negative; what it is given may have either, unless a function says otherwise.
 */
export type Ring<S extends Space> = readonly Point<S>[]
export type Polygon<S extends Space> = readonly [Ring<S>, ...Ring<S>[]]
export type Region<S extends Space> = readonly Polygon<S>[]

/** Positive for a ring that runs clockwise as seen (y down). */
export function signedArea<S extends Space>(ring: Ring<S>): number {
  const origin = ring[0]
  if (!origin) return 0
  // measured from the first point: far from the origin, products of large coordinates would cancel badly
  let twice = 0
  for (let i = 1; i + 1 < ring.length; i++) twice += cross(subtract(ring[i]!, origin), subtract(ring[i + 1]!, origin))
  return twice / 2
}

/** Area of the outer ring less its holes, whatever way they run. */
export function polygonArea<S extends Space>([outer, ...holes]: Polygon<S>): number {
  return Math.abs(signedArea(outer)) - holes.reduce((sum, hole) => sum + Math.abs(signedArea(hole)), 0)
}

export const regionArea = <S extends Space>(region: Region<S>): number =>
  region.reduce((sum, polygon) => sum + polygonArea(polygon), 0)

/** The ring carried over, run again so that its area keeps its sign under a mirroring map. */
export function transformRing<A extends Space, B extends Space>(t: Transform<A, B>, ring: Ring<A>): Ring<B> {
  const moved = ring.map((p) => transformPoint(t, p))
  return t.a * t.d - t.b * t.c < 0 ? moved.reverse() : moved
}

export const transformRegion = <A extends Space, B extends Space>(t: Transform<A, B>, region: Region<A>): Region<B> =>
  region.map((polygon) => polygon.map((ring) => transformRing(t, ring)) as unknown as Polygon<B>)

/** The edges of a ring, from each point to the next. */
export function ringEdges<S extends Space>(ring: Ring<S>): readonly Edge<S>[] {
  return ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]! }))
}

/** A straight line from a to b. */
export interface Edge<S extends Space> {
  readonly a: Point<S>
  readonly b: Point<S>
}

/** Even-odd: a point on the border may fall either way. */
export function ringCovers<S extends Space>(ring: Ring<S>, p: Point<S>): boolean {
  let inside = false
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i]!
    const b = ring[j]!
    if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) inside = !inside
  }
  return inside
}

export const polygonCovers = <S extends Space>([outer, ...holes]: Polygon<S>, p: Point<S>): boolean =>
  ringCovers(outer, p) && !holes.some((hole) => ringCovers(hole, p))

export const regionCovers = <S extends Space>(region: Region<S>, p: Point<S>): boolean =>
  region.some((polygon) => polygonCovers(polygon, p))
