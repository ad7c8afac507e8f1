/**
 * The point of a region that has the most room round it, and the nearest point of a region.
 *
 * Input: a region of any number of polygons with holes, running either way; slivers and islands allowed. Output: a
 * point inside. Tolerance: the room found is within 0.05 mm of the most there is; in slivers thinner than that the point
 * lies in the middle of the sliver, near its widest place. Failure: null for a region without area. Deterministic:
 * where many points have the same room, one nearest the middle is preferred.
 */
import { boxAround, boxCentre, boxHeight, boxWidth, regionBox, type Box } from './box'
import { distance, point, type Point, type Space } from './point'
import {
  polygonArea,
  regionCovers,
  ringEdges,
  signedArea,
  type Edge,
  type Polygon,
  type Region,
  type Ring,
} from './polygon'
import { nearestOnEdge } from './segment'

/** How near the search comes to the most room. */
const PRECISION = 0.05

/** Squares looked at before the search is content: bounds the time on long strips of equal width. */
const MOST_SQUARES = 6000

export interface Pole<S extends Space> {
  readonly at: Point<S>
  /** The distance from the nearest border. */
  readonly clearance: number
}

/** The point of a region farthest from its border. */
export function farthestInside<S extends Space>(region: Region<S>): Pole<S> | null {
  const largestFirst = [...region].sort((p, q) => polygonArea(q) - polygonArea(p))
  return largestFirst.reduce<Pole<S> | null>((best, polygon) => {
    const pole = farthestInPolygon(polygon, best?.clearance ?? 0)
    return !best || (pole && pole.clearance > best.clearance + PRECISION / 10) ? pole : best
  }, null)
}

/** The point itself where the region covers it, else the nearest point of the region's border; null if there is none. */
export function nearestInside<S extends Space>(region: Region<S>, p: Point<S>): Point<S> | null {
  if (regionCovers(region, p)) return p
  let nearest: Point<S> | null = null
  let least = Infinity
  for (const edge of region.flat().flatMap(ringEdges)) {
    const candidate = nearestOnEdge(edge, p)
    const away = distance(candidate, p)
    if (away < least) [nearest, least] = [candidate, away]
  }
  return nearest
}

/** A square that may hold a better point: its middle's room, and the most that any point of it can have. */
interface Square<S extends Space> {
  readonly at: Point<S>
  readonly half: number
  readonly most: number
}

/** The search over ever smaller squares; squares that cannot beat the best by the precision are let go. */
function farthestInPolygon<S extends Space>(polygon: Polygon<S>, atLeast: number): Pole<S> | null {
  const room = roomIn(polygon)
  let best = startingPole(polygon, room)
  if (!best) return null
  const box = regionBox([polygon])
  let squares = coveringSquares(box, room)
  for (let looked = 0; squares.length > 0 && looked < MOST_SQUARES;) {
    const next: Square<S>[] = []
    for (const square of squares) {
      const enough = Math.max(best.clearance, atLeast) + PRECISION
      if (square.most <= enough || looked >= MOST_SQUARES) continue
      for (const part of quarters(square, room)) {
        looked++
        const clearance = part.most - part.half * Math.SQRT2
        if (clearance > best.clearance + PRECISION / 10) best = { at: part.at, clearance }
        next.push(part)
      }
    }
    squares = next.sort((p, q) => q.most - p.most)
  }
  return climbed(best, room)
}

type Room<S extends Space> = (p: Point<S>) => number

/** The distance to the nearest border, negative outside. Asked thousands of times: one pass over plain numbers. */
function roomIn<S extends Space>(polygon: Polygon<S>): Room<S> {
  const edges = polygon.flatMap(ringEdges)
  const numbers = new Float64Array(edges.flatMap(({ a, b }) => [a.x, a.y, b.x - a.x, b.y - a.y]))
  return ({ x, y }) => {
    let least = Infinity
    let inside = false
    for (let i = 0; i < numbers.length; i += 4) {
      const px = x - numbers[i]!
      const py = y - numbers[i + 1]!
      const ex = numbers[i + 2]!
      const ey = numbers[i + 3]!
      const along = px * ex + py * ey
      const most = ex * ex + ey * ey
      const t = along <= 0 ? 0 : along >= most ? 1 : along / most
      const square = (px - t * ex) ** 2 + (py - t * ey) ** 2
      if (square < least) least = square
      // a ray to the right of the point meets the edge
      if (py < 0 !== py < ey && py * ex < px * ey === ey < 0) inside = !inside
    }
    return inside ? Math.sqrt(least) : -Math.sqrt(least)
  }
}

function coveringSquares<S extends Space>(box: Box<S>, room: Room<S>): Square<S>[] {
  const size = Math.min(boxWidth(box), boxHeight(box))
  // a long strip is covered by squares of its width, up to a bound
  const half = Math.max(size, Math.max(boxWidth(box), boxHeight(box)) / 64) / 2
  const squares: Square<S>[] = []
  for (let x = box.min.x + half; x - half < box.max.x; x += 2 * half) {
    for (let y = box.min.y + half; y - half < box.max.y; y += 2 * half) squares.push(squareAt(point(x, y), half, room))
  }
  return squares.sort((p, q) => q.most - p.most)
}

const squareAt = <S extends Space>(at: Point<S>, half: number, room: Room<S>): Square<S> => ({
  at,
  half,
  most: room(at) + half * Math.SQRT2,
})

function quarters<S extends Space>({ at, half }: Square<S>, room: Room<S>): Square<S>[] {
  const h = half / 2
  return [
    squareAt(point(at.x - h, at.y - h), h, room),
    squareAt(point(at.x + h, at.y - h), h, room),
    squareAt(point(at.x - h, at.y + h), h, room),
    squareAt(point(at.x + h, at.y + h), h, room),
  ]
}

/** The best of the centroid, the middle of the box and the middles of some level and plumb cuts. */
function startingPole<S extends Space>(polygon: Polygon<S>, room: Room<S>): Pole<S> | null {
  const candidates = [ringCentroid(polygon[0]), boxCentre(boxAround(polygon[0])), ...cutMiddles(polygon)]
  let best: Pole<S> | null = null
  for (const at of candidates) {
    const clearance = room(at)
    if (clearance > 0 && clearance > (best?.clearance ?? 0) * (1 + 1e-9)) best = { at, clearance }
  }
  return best
}

export function ringCentroid<S extends Space>(ring: Ring<S>): Point<S> {
  const origin = ring[0]!
  const area = signedArea(ring)
  let [x, y] = [0, 0]
  for (const { a, b } of ringEdges(ring)) {
    const weight = (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y)
    x += (a.x + b.x - 2 * origin.x) * weight
    y += (a.y + b.y - 2 * origin.y) * weight
  }
  return area === 0 ? origin : point(origin.x + x / (6 * area), origin.y + y / (6 * area))
}

/** Inner points of any polygon, however thin: the middles of the widest stretches of level and plumb cuts. */
function cutMiddles<S extends Space>(polygon: Polygon<S>): Point<S>[] {
  const edges = polygon.flatMap(ringEdges)
  const plumb = edges.map(({ a, b }) => ({ a: swapped(a), b: swapped(b) }))
  return [...levelCuts(edges), ...levelCuts(plumb).map(swapped)]
}

const swapped = <S extends Space>({ x, y }: Point<S>): Point<S> => point(y, x)

const MOST_CUTS = 24

function levelCuts<S extends Space>(edges: readonly Edge<S>[]): Point<S>[] {
  const heights = [...new Set(edges.map(({ a }) => a.y))].sort((p, q) => p - q)
  const gaps = heights.slice(1).map((y, i) => ({ y: (y + heights[i]!) / 2, gap: y - heights[i]! }))
  const widest = gaps.sort((p, q) => q.gap - p.gap).slice(0, MOST_CUTS)
  return widest.flatMap(({ y }) => cutMiddle(edges, y) ?? [])
}

function cutMiddle<S extends Space>(edges: readonly Edge<S>[], y: number): Point<S> | null {
  const across = edges
    .filter(({ a, b }) => a.y > y !== b.y > y)
    .map(({ a, b }) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
    .sort((p, q) => p - q)
  let [width, x] = [0, 0]
  for (let i = 0; i + 1 < across.length; i += 2) {
    const stretch = across[i + 1]! - across[i]!
    if (stretch > width) [width, x] = [stretch, (across[i + 1]! + across[i]!) / 2]
  }
  return width > 0 ? point(x, y) : null
}

/** Moves a point by ever smaller steps to where there is more room: in slivers the squares are too coarse for it. */
function climbed<S extends Space>(from: Pole<S>, room: Room<S>): Pole<S> {
  if (from.clearance > 2 * PRECISION) return from
  let best = from
  for (let step = PRECISION; step > from.clearance / 50; step /= 2) {
    for (const [x, y] of COMPASS) {
      const at = point<S>(best.at.x + x * step, best.at.y + y * step)
      const clearance = room(at)
      if (clearance > best.clearance * (1 + 1e-9)) best = { at, clearance }
    }
  }
  return best
}

const COMPASS: readonly (readonly [number, number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
]
