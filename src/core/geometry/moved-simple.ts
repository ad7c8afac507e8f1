/**
 * Any simple ring with its edges moved out or in.
 *
 * Input: a ring running positively, convex or not, and a distance for each edge. Output: the ring whose edges lie on the
 * moved ones, and if asked for the edge that each comes from; sharp corners outside are cut off at `LONGEST_MITRE` times the
 * distance unless the ring is convex. Where parts fall asunder the largest is kept. Tolerance: the grid, except for
 * convex rings, which are exact. Failure: null when nothing is left.
 */
import { woundRegion } from './clip'
import { toGridRing } from './clip-grid'
import { isConvex } from './convex'
import { movedOut, movedOutWithSources, type MovedRing } from './offset'
import { add, between, cross, dot, point, scale, subtract, type Point, type Space } from './point'
import { polygonArea, ringEdges, type Ring } from './polygon'
import { distanceToEdge } from './segment'

const LONGEST_MITRE = 4

export function movedSimple<S extends Space>(ring: Ring<S>, distances: readonly number[]): Ring<S> | null {
  if (distances.every((by) => by === 0)) return ring
  return isConvex(ring) ? movedOut(ring, distances) : largestRound(movedPath(ring, distances))
}

/** As `movedSimple`, telling which edge each edge of the result comes from. */
export function movedSimpleWithSources<S extends Space>(
  ring: Ring<S>,
  distances: readonly number[],
): MovedRing<S> | null {
  if (distances.every((by) => by === 0)) return { ring, sources: ring.map((_, i) => i) }
  if (isConvex(ring)) return movedOutWithSources(ring, distances)
  const path = movedPath(ring, distances)
  const largest = largestRound(path)
  return largest && { ring: largest, sources: sourcesOf(largest, path) }
}

/** The border of the largest part that a path winds round. */
function largestRound<S extends Space>(path: readonly Step<S>[]): Ring<S> | null {
  const region = woundRegion<S>([toGridRing(path.map(({ at }) => at))])
  return [...region].sort((p, q) => polygonArea(q) - polygonArea(p))[0]?.[0] ?? null
}

/** A corner of the path along which the edges were moved; the source is that of the edge which follows. */
interface Step<S extends Space> {
  readonly at: Point<S>
  readonly source: number
}

/** Every edge moved by itself; outside corners mitred, inside ones led back through the old corner, which winds backwards. */
function movedPath<S extends Space>(ring: Ring<S>, distances: readonly number[]): readonly Step<S>[] {
  const edges = ringEdges(ring).map(({ a, b }, i) => {
    const along = scale(subtract(b, a), 1 / Math.hypot(b.x - a.x, b.y - a.y))
    const shift = point<S>(along.y * distances[i]!, -along.x * distances[i]!)
    return { a: add(a, shift), b: add(b, shift), along }
  })
  return ring.flatMap((corner, i): readonly Step<S>[] => {
    const before = edges[(i + edges.length - 1) % edges.length]!
    const [by, byBefore] = [distances[i]!, distances[(i + edges.length - 1) % edges.length]!]
    const here = edges[i]!
    const turn = cross(before.along, here.along)
    const isGap = turn * (by + byBefore) >= 0
    if (Math.abs(turn) < 1e-9 && dot(before.along, here.along) > 0)
      return [
        { at: before.b, source: i },
        { at: here.a, source: i },
      ]
    if (!isGap)
      return [
        { at: before.b, source: i },
        { at: corner, source: i },
        { at: here.a, source: i },
      ]
    const t = cross(subtract(here.a, before.a), here.along) / turn
    const meeting = add(before.a, scale(before.along, t))
    const reach = Math.hypot(meeting.x - corner.x, meeting.y - corner.y)
    if (reach <= LONGEST_MITRE * Math.max(Math.abs(by), Math.abs(byBefore))) return [{ at: meeting, source: i }]
    return [
      { at: before.b, source: i },
      { at: here.a, source: i },
    ]
  })
}

/** For each edge of the result the edge of the path that it lies on. */
function sourcesOf<S extends Space>(ring: Ring<S>, path: readonly Step<S>[]): readonly number[] {
  const steps = path.map(({ at, source }, i) => ({ edge: { a: at, b: path[(i + 1) % path.length]!.at }, source }))
  return ringEdges(ring).map(({ a, b }) => {
    const middle = between(a, b, 0.5)
    const [along, length] = [subtract(b, a), Math.hypot(b.x - a.x, b.y - a.y)]
    let [best, least] = [0, Infinity]
    for (const { edge, source } of steps) {
      const other = subtract(edge.b, edge.a)
      const size = Math.hypot(other.x, other.y)
      if (size === 0) continue
      // an edge that runs another way is worse than one that lies a little farther off
      const off = distanceToEdge(edge, middle) + (1 - dot(along, other) / (length * size)) * 0.1
      if (off < least) [best, least] = [source, off]
    }
    return best
  })
}
