/**
 * Checks an outline that a person drew, traced or typed.
 *
 * Input: any list of points. Output: a ring running positively, without repeated points, that neither crosses nor
 * touches itself; or the reason why it cannot be had, with the place and, for a crossing, the two edges, numbered
 * from 0 by their first point in the list that was given. Tolerance: points nearer than the grid are one.
 */
import { between, distance, point, type Point, type Space } from './point'
import { refused, ok, type Result } from '../result'
import { distanceBetweenEdges, distanceToEdge, edgeCrossing } from './segment'
import { ringEdges, signedArea, type Edge, type Ring } from './polygon'
import { GRID } from './tolerance'

/** The farthest from the origin that a point may lie: beyond it the arithmetic of the grid is not exact. */
export const FARTHEST = 30_000

export type OutlineTrouble<S extends Space> = {
  readonly reason: 'not a number' | 'too far out' | 'too few points' | 'no area' | 'crossed'
  /** The point or the place where the trouble lies. */
  readonly at: Point<S>
  /** The edges that cross or touch; for a point that is at fault, that point's number twice. */
  readonly edges: readonly [number, number]
}

export function checkOutline<S extends Space>(points: readonly Point<S>[]): Result<Ring<S>, OutlineTrouble<S>> {
  const odd = points.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))
  if (odd >= 0) return troubleAt('not a number', points[odd]!, odd)
  const far = points.findIndex(({ x, y }) => Math.abs(x) > FARTHEST || Math.abs(y) > FARTHEST)
  if (far >= 0) return troubleAt('too far out', points[far]!, far)

  const kept = distinctPoints(points)
  const ring = kept.map(({ at }) => at)
  if (ring.length < 3) return troubleAt('too few points', ring[0] ?? point(0, 0), 0)
  const perimeter = ringEdges(ring).reduce((sum, { a, b }) => sum + distance(a, b), 0)
  const crossing = firstCrossing(ring)
  const area = signedArea(ring)
  if (Math.abs(area) <= GRID * perimeter && !(crossing && isRealCrossing(ring, crossing))) {
    return troubleAt('no area', ring[0]!, kept[0]!.index)
  }
  if (crossing) {
    const [i, j] = crossing
    return refused({ reason: 'crossed', at: placeOf(ring, crossing), edges: [kept[i]!.index, kept[j]!.index] })
  }
  return ok(area > 0 ? ring : [...ring].reverse())
}

function troubleAt<S extends Space>(reason: OutlineTrouble<S>['reason'], at: Point<S>, index: number) {
  return refused<OutlineTrouble<S>>({ reason, at, edges: [index, index] })
}

function distinctPoints<S extends Space>(points: readonly Point<S>[]): { at: Point<S>; index: number }[] {
  const kept: { at: Point<S>; index: number }[] = []
  points.forEach((at, index) => {
    const last = kept[kept.length - 1]
    if (!last || distance(last.at, at) >= GRID) kept.push({ at, index })
  })
  while (kept.length > 1 && distance(kept[0]!.at, kept[kept.length - 1]!.at) < GRID) kept.pop()
  return kept
}

/** The first two edges, in the order of the ring, that cross, touch, or fold back on one another. */
function firstCrossing<S extends Space>(ring: Ring<S>): [number, number] | null {
  const edges = ringEdges(ring)
  // sorted from left to right, an edge need only be held against those that begin before it ends
  const order = edges.map((_, i) => i).sort((i, j) => leftOf(edges[i]!) - leftOf(edges[j]!))
  let first: [number, number] | null = null
  order.forEach((i, place) => {
    const right = Math.max(edges[i]!.a.x, edges[i]!.b.x) + GRID
    for (let k = place + 1; k < order.length && leftOf(edges[order[k]!]!) <= right; k++) {
      const pair: [number, number] = i < order[k]! ? [i, order[k]!] : [order[k]!, i]
      const isEarlier = !first || pair[0] < first[0] || (pair[0] === first[0] && pair[1] < first[1])
      if (isEarlier && edgesClash(edges, pair)) first = pair
    }
  })
  return first
}

const leftOf = <S extends Space>({ a, b }: Edge<S>): number => Math.min(a.x, b.x)

function edgesClash<S extends Space>(edges: readonly Edge<S>[], [i, j]: readonly [number, number]): boolean {
  const [e, f] = [edges[i]!, edges[j]!]
  if (j === i + 1) return foldsBack(e, f)
  if (i === 0 && j === edges.length - 1) return foldsBack(f, e)
  const levelApart = Math.min(e.a.y, e.b.y) > Math.max(f.a.y, f.b.y) + GRID
  const levelBelow = Math.max(e.a.y, e.b.y) + GRID < Math.min(f.a.y, f.b.y)
  return !levelApart && !levelBelow && distanceBetweenEdges(e, f) < GRID
}

/** The second of two edges that follow one another lies on the first, or the first on the second. */
const foldsBack = <S extends Space>(e: Edge<S>, f: Edge<S>): boolean =>
  distanceToEdge(e, f.b) < GRID || distanceToEdge(f, e.a) < GRID

function isRealCrossing<S extends Space>(ring: Ring<S>, [i, j]: readonly [number, number]): boolean {
  const edges = ringEdges(ring)
  return edgeCrossing(edges[i]!, edges[j]!) !== null && !(j === i + 1 || (i === 0 && j === edges.length - 1))
}

function placeOf<S extends Space>(ring: Ring<S>, [i, j]: readonly [number, number]): Point<S> {
  const edges = ringEdges(ring)
  const [e, f] = [edges[i]!, edges[j]!]
  const crossing = edgeCrossing(e, f)
  if (crossing && j !== i + 1) return crossing
  const ends = [e.a, e.b].map((p) => ({ p, away: distanceToEdge(f, p) }))
  const others = [f.a, f.b].map((p) => ({ p, away: distanceToEdge(e, p) }))
  const [first, second] = [...ends, ...others].sort((p, q) => p.away - q.away)
  return first && second && second.away < GRID ? between(first.p, second.p, 0.5) : first!.p
}
