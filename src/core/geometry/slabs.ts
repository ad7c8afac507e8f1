/**
 * Regions cut into level slabs between the corners of all of them.
 *
 * Input: regions with holes, running either way. Output: slabs in which no region has a corner, each with the stretches
 * that the regions have along its two ends, in order. Slabs that are not thicker than asked are left out. Tolerance:
 * floating-point steps. Failure: none.
 */
import type { Region } from './polygon'
import type { Space } from './point'

/** From one place to another, at the slab's beginning and at its end. */
export interface Stretch {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}

/** For each region what lies in the slab. */
export type Slab = readonly (readonly Stretch[])[]

/** Along which axis the slabs follow one another. */
export type Axis = 'x' | 'y'

interface Side {
  readonly low: number
  readonly high: number
  readonly atLow: number
  readonly atHigh: number
}

/** The slabs in which the first of some regions has anything. */
export function slabsOf<S extends Space>(regions: readonly Region<S>[], axis: Axis, thinnest: number): readonly Slab[] {
  const [first = [], ...others] = regions
  const own = sidesOf(first, axis, -Infinity, Infinity)
  const start = own.reduce((least, { low }) => Math.min(least, low), Infinity)
  const end = own.reduce((most, { high }) => Math.max(most, high), -Infinity)
  // beyond the first region nothing is asked for
  const near = others.map((region) => sidesOf(region, axis, start, end))
  const sides = [own, ...near].map((all) => all.sort((p, q) => p.low - q.low))
  const levels = [...new Set(sides.flatMap((all) => all.flatMap(({ low, high }) => [low, high])))].sort((p, q) => p - q)
  const next = sides.map(() => 0)
  const active: Side[][] = sides.map(() => [])
  const slabs: Slab[] = []
  for (let i = 0; i + 1 < levels.length; i++) {
    const [low, high] = [levels[i]!, levels[i + 1]!]
    sides.forEach((all, r) => {
      active[r] = active[r]!.filter((side) => side.high > low)
      for (; next[r]! < all.length && all[next[r]!]!.low <= low; next[r]!++) active[r]!.push(all[next[r]!]!)
    })
    if (active[0]!.length > 0 && high - low > thinnest) slabs.push(active.map((all) => stretchesIn(all, low, high)))
  }
  return slabs
}

/** Edges between two levels that are not level themselves, from lower to higher. */
function sidesOf<S extends Space>(region: Region<S>, axis: Axis, start: number, end: number): Side[] {
  const across = axis === 'x' ? 'y' : 'x'
  const sides: Side[] = []
  for (const ring of region.flat()) {
    let a = ring[ring.length - 1]!
    for (const b of ring) {
      const [from, to] = a[axis] < b[axis] ? [a, b] : [b, a]
      if (from[axis] !== to[axis] && to[axis] > start && from[axis] < end)
        sides.push({ low: from[axis], high: to[axis], atLow: from[across], atHigh: to[across] })
      a = b
    }
  }
  return sides
}

/** Even-odd: what lies between the first and the second of the sides that pass a slab, the third and the fourth, and so on. */
function stretchesIn(sides: readonly Side[], low: number, high: number): readonly Stretch[] {
  const places = sides
    .map((side): [number, number] => [placeAt(side, low), placeAt(side, high)])
    .sort((p, q) => p[0] + p[1] - q[0] - q[1])
  return places.flatMap((from, i) => (i % 2 === 0 && places[i + 1] ? [{ from, to: places[i + 1]! }] : []))
}

const placeAt = ({ low, high, atLow, atHigh }: Side, level: number): number =>
  atLow + ((level - low) / (high - low)) * (atHigh - atLow)
