/**
 * Polygons in whole steps of the grid, the form in which they are combined.
 *
 * Input: rings running either way; points may repeat. Output: rings without repeated points and without spikes
 * (places where the line turns back on itself), outer rings of positive area and holes of negative; a ring that
 * has no area on the grid is left out, with its holes if it is an outer one. Exact: up to coordinates of 30 m the
 * cross product of two differences is a whole number that a double holds. Nothing here fails.
 */
import type { Space } from './point'
import { GRID } from './tolerance'
import type { Polygon, Region, Ring } from './polygon'

/** A point or a displacement in whole steps of the grid. */
export interface GridPoint {
  x: number
  y: number
}

export type GridRing = GridPoint[]

/** Positive when q is turned clockwise as seen from p. */
export const gridCross = (p: GridPoint, q: GridPoint): number => p.x * q.y - p.y * q.x

const gridDot = (p: GridPoint, q: GridPoint): number => p.x * q.x + p.y * q.y

export const gridBetween = (from: GridPoint, to: GridPoint): GridPoint => ({ x: to.x - from.x, y: to.y - from.y })

/** Twice the signed area of a ring, in grid steps squared. */
export function gridTwiceArea(ring: GridRing): number {
  const origin = ring[0]
  if (!origin) return 0
  let twice = 0
  for (let i = 1; i + 1 < ring.length; i++) {
    twice += gridCross(gridBetween(origin, ring[i]!), gridBetween(origin, ring[i + 1]!))
  }
  return twice
}

/** The nearest point of the grid. */
export function toGrid({ x, y }: { readonly x: number; readonly y: number }, grid = GRID): GridPoint {
  const perUnit = 1 / grid
  // adding 0 turns -0 into 0, so that equal places compare equal in every way
  return { x: Math.round(x * perUnit) + 0, y: Math.round(y * perUnit) + 0 }
}

/** A ring on the grid, without repeats and spikes; the way it runs is kept. Fewer than three points: no area. */
export const toGridRing = <S extends Space>(ring: Ring<S>, grid = GRID): GridRing =>
  withoutSpikes(ring.map((p) => toGrid(p, grid)))

/** A closed line without repeated points and without places where it turns back on itself; empty if none of it is left. */
export function withoutSpikes(line: readonly GridPoint[]): GridRing {
  const kept: GridRing = []
  for (const p of line) keepPoint(kept, p)
  return closedCleanly(kept)
}

function keepPoint(kept: GridRing, p: GridPoint) {
  while (kept.length > 0) {
    const last = kept[kept.length - 1]!
    const before = kept[kept.length - 2]
    const isRepeat = last.x === p.x && last.y === p.y
    if (isRepeat) return
    if (!before || !turnsBack(before, last, p)) break
    kept.pop()
  }
  kept.push(p)
}

/** Drops repeats and spikes where the end of the list meets its beginning. */
function closedCleanly(ring: GridRing): GridRing {
  let start = 0
  let end = ring.length
  while (end - start > 2) {
    const [first, second] = [ring[start]!, ring[start + 1]!]
    const [last, beforeLast] = [ring[end - 1]!, ring[end - 2]!]
    if (first.x === last.x && first.y === last.y) end--
    else if (turnsBack(beforeLast, last, first)) end--
    else if (turnsBack(last, first, second)) start++
    else break
  }
  return end - start > 2 ? ring.slice(start, end) : []
}

function turnsBack(a: GridPoint, b: GridPoint, c: GridPoint): boolean {
  const incoming = gridBetween(a, b)
  const outgoing = gridBetween(b, c)
  return gridCross(incoming, outgoing) === 0 && gridDot(incoming, outgoing) < 0
}

/** The polygons of a region on the grid: outer ring positive, holes negative. */
export function toGridPolygons<S extends Space>(region: Region<S>, grid = GRID): GridRing[][] {
  const polygons: GridRing[][] = []
  for (const [outer, ...holes] of region) {
    const outerOnGrid = turned(toGridRing(outer, grid), 1)
    if (!outerOnGrid) continue
    const holesOnGrid = holes.map((hole) => turned(toGridRing(hole, grid), -1)).filter((hole) => hole !== null)
    polygons.push([outerOnGrid, ...holesOnGrid])
  }
  return polygons
}

function turned(ring: GridRing, way: 1 | -1): GridRing | null {
  const twice = gridTwiceArea(ring)
  if (twice === 0) return null
  return twice * way > 0 ? ring : ring.reverse()
}

/** Back to millimetres. */
export const fromGridRing = <S extends Space>(ring: readonly GridPoint[], grid = GRID): Ring<S> => {
  const perUnit = 1 / grid
  return ring.map(({ x, y }) => ({ x: x / perUnit, y: y / perUnit }))
}

export const fromGridPolygon = <S extends Space>(rings: readonly GridRing[], grid = GRID): Polygon<S> =>
  rings.map((ring) => fromGridRing<S>(ring, grid)) as unknown as Polygon<S>
