/**
 * Places along a ring, and what of it lies between two of them.
 *
 * Input: a ring running positively; rays from points inside the band that is looked at. Output: places as an edge and a
 * share of it; stretches run with the ring. Tolerance: floating-point steps; points nearer than half the grid become
 * one. Failure: null where a ray meets nothing.
 */
import { add, cross, distance, scale, subtract, type Point, type Space } from './point'
import type { Ring } from './polygon'
import { GRID } from './tolerance'

/** On the edge from point `edge` to the next, at a share of its length. */
export interface RingPlace<S extends Space> {
  readonly at: Point<S>
  readonly edge: number
  readonly share: number
}

/** A corner of the ring itself. */
export const cornerPlace = <S extends Space>(ring: Ring<S>, corner: number): RingPlace<S> => ({
  at: ring[corner]!,
  edge: corner,
  share: 0,
})

/** Where a ray meets a ring, at the distance nearest to `wanted` (in lengths of `along`), no nearer than `least`. */
export function rayMeets<S extends Space>(
  ring: Ring<S>,
  from: Point<S>,
  along: Point<S>,
  { wanted, least }: { readonly wanted: number; readonly least: number },
): RingPlace<S> | null {
  let [best, off]: [RingPlace<S> | null, number] = [null, Infinity]
  ring.forEach((a, edge) => {
    const side = subtract(ring[(edge + 1) % ring.length]!, a)
    const area = cross(along, side)
    if (Math.abs(area) < 1e-12) return
    const gap = subtract(a, from)
    const [reach, share] = [cross(gap, side) / area, cross(gap, along) / area]
    if (share < -1e-9 || share > 1 + 1e-9 || reach < least || Math.abs(reach - wanted) >= off) return
    off = Math.abs(reach - wanted)
    best = { at: add(from, scale(along, reach)), edge, share: Math.min(1, Math.max(0, share)) }
  })
  return best
}

/** Points from one place on to another, both counted in; `edges[i]` is the edge of the ring that point i begins on. */
export function stretchBetween<S extends Space>(ring: Ring<S>, from: RingPlace<S>, to: RingPlace<S>) {
  const points = [from.at]
  const edges = [from.edge]
  const isAhead = from.edge === to.edge && to.share > from.share
  const steps = isAhead ? 0 : (to.edge - from.edge + ring.length) % ring.length || ring.length
  for (let step = 1; step <= steps; step++) {
    points.push(ring[(from.edge + step) % ring.length]!)
    edges.push((from.edge + step) % ring.length)
  }
  points.push(to.at)
  return withoutRepeats(points, edges)
}

function withoutRepeats<S extends Space>(points: readonly Point<S>[], edges: readonly number[]) {
  const kept: { points: Point<S>[]; edges: number[] } = { points: [points[0]!], edges: [] }
  points.slice(1).forEach((p, i) => {
    // the edge that had no length goes
    if (distance(p, kept.points.at(-1)!) <= GRID / 2) return
    kept.points.push(p)
    kept.edges.push(edges[i]!)
  })
  // the ends exactly where they were asked for
  kept.points[kept.points.length - 1] = points.at(-1)!
  return kept
}
