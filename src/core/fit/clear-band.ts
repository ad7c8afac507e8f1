import { point } from '../geometry/point'
import { regionCovers, ringEdges, type Edge, type Region } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import type { Band } from '../patterns/columns'

/**
 * The widest upright strip of a region that runs clear from `top` to `bottom`: every straight line along the grain in it
 * lies in the region over that whole length, to within the grid at its ends. null where there is none.
 */
export function clearBand(region: Region<'leaf'>, top: number, bottom: number): Band | null {
  const [from, to] = [top + GRID, bottom - GRID]
  const blocked = region
    .flat()
    .flatMap(ringEdges)
    .flatMap((edge) => blockedBy(edge, from, to) ?? [])
    .sort((p, q) => p.low - q.low)
  let best: Band | null = null
  let reached = blocked[0]?.high ?? 0
  for (const { low, high } of blocked) {
    const widest = best ? best.high - best.low : 0
    if (low - reached > widest && regionCovers(region, point((low + reached) / 2, (top + bottom) / 2)))
      best = { low: reached, high: low }
    reached = Math.max(reached, high)
  }
  return best
}

/** The lines along the grain that an edge crosses between two heights; an edge straight across the grain blocks them all. */
function blockedBy({ a, b }: Edge<'leaf'>, from: number, to: number): Band | null {
  const low = Math.max(from, Math.min(a.y, b.y))
  const high = Math.min(to, Math.max(a.y, b.y))
  if (low > high || (low === high && a.y !== b.y)) return null
  const xAt = (y: number) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)
  const [x1, x2] = a.y === b.y ? [a.x, b.x] : [xAt(low), xAt(high)]
  return { low: Math.min(x1, x2), high: Math.max(x1, x2) }
}
