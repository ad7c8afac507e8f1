import { regionCovers, ringEdges, type Region } from '../geometry/polygon'
import { point } from '../geometry/point'
import type { Band } from '../patterns/columns'

/**
 * The widest upright strip of a region that runs clear from `top` to `bottom`: every straight line along the grain in it
 * lies in the region over that whole length. null where there is none.
 */
export function clearBand(region: Region<'leaf'>, top: number, bottom: number): Band | null {
  const blocked = region
    .flat()
    .flatMap(ringEdges)
    .flatMap(({ a, b }) => {
      const low = Math.max(top, Math.min(a.y, b.y))
      const high = Math.min(bottom, Math.max(a.y, b.y))
      if (low >= high) return []
      const xAt = (y: number) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)
      const [x1, x2] = [xAt(low), xAt(high)]
      return [{ low: Math.min(x1, x2), high: Math.max(x1, x2) }]
    })
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
