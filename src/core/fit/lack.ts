import { regionLess } from '../geometry/clip'
import { depthBehind } from '../geometry/convex'
import { point, type Point } from '../geometry/point'
import { regionArea, regionCovers, ringEdges, type Edge, type Region, type Ring } from '../geometry/polygon'

/** An end or an edge of a leaf, as the leaf lies numbered side up. */
export type LeafSide = 'numbered end' | 'far end' | 'left edge' | 'right edge'

/** What of a rough piece does not lie in sound wood. */
export interface Lack {
  /** By how much the piece would have to be drawn in at one edge to be free of it. */
  readonly by: number
  readonly side: LeafSide
  /** A place in what is missing. */
  readonly at: Point<'leaf'>
}

// what the grid leaves along an edge that just fits
const NEGLIGIBLE = 0.5

/**
 * The lacks of a convex rough piece where it lies on its leaf: for each part of it outside the usable area, the edge at
 * which least would have to be given up. Empty when it fits.
 */
export function lacksOf(rough: Ring<'leaf'>, usable: Region<'leaf'>): readonly Lack[] {
  const outside = regionLess<'leaf'>([[rough]], usable)
  if (regionArea(outside) < NEGLIGIBLE) return []
  const edges = ringEdges(rough)
  const worst = new Map<LeafSide, Lack>()
  for (const [ring] of outside) {
    const lack = cheapest(edges, ring)
    if (lack.by > 0.02 && lack.by > (worst.get(lack.side)?.by ?? 0)) worst.set(lack.side, lack)
  }
  return [...worst.values()]
}

function cheapest(edges: readonly Edge<'leaf'>[], missing: Ring<'leaf'>): Lack {
  const reach = (edge: Edge<'leaf'>) => Math.max(...missing.map((p) => depthBehind(edge, p)))
  const depths = edges.map(reach)
  const by = Math.min(...depths)
  return { by, side: sideOf(edges[depths.indexOf(by)]!), at: middleOf(missing) }
}

/** Outwards of a positive edge is to its left, going from a to b. */
function sideOf({ a, b }: Edge<'leaf'>): LeafSide {
  const outward = point<'leaf'>(b.y - a.y, a.x - b.x)
  if (Math.abs(outward.y) >= Math.abs(outward.x)) return outward.y < 0 ? 'numbered end' : 'far end'
  return outward.x < 0 ? 'left edge' : 'right edge'
}

const middleOf = (ring: Ring<'leaf'>): Point<'leaf'> =>
  point(ring.reduce((sum, p) => sum + p.x, 0) / ring.length, ring.reduce((sum, p) => sum + p.y, 0) / ring.length)

/** Whether a piece overlaps an area of the leaf. */
export const touchesArea = (rough: Ring<'leaf'>, area: Region<'leaf'>): boolean =>
  regionCovers([[rough]], area[0]?.[0][0] ?? point(NaN, NaN)) ||
  area.some(([ring]) => overlapArea(rough, ring) > NEGLIGIBLE)

const overlapArea = (rough: Ring<'leaf'>, ring: Ring<'leaf'>): number =>
  regionArea([[rough]]) - regionArea(regionLess<'leaf'>([[rough]], [[ring]]))
