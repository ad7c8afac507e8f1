/** Boolean operations on two leaves, and the intersection of 24, beside Clipper2 in WebAssembly on the same input. */
import { bench, describe } from 'vitest'
import { intersect, intersectAll, regionLess, unite } from '../../src/core/geometry/clip'
import { toGridPolygons } from '../../src/core/geometry/clip-grid'
import type { Region } from '../../src/core/geometry/polygon'
import { clipperArea } from '../fixtures/geometry/oracles'
import { chanceFrom, leafWithHoles } from '../fixtures/geometry/shapes'

const leaf = (seed: number, points: number): Region<'leaf'> => [
  leafWithHoles(chanceFrom(seed), { width: 220, length: 2400, points, holes: 5 }),
]
const options = { time: 300, warmupTime: 50 }

for (const points of [100, 300]) {
  const [a, b] = [leaf(1, points), leaf(2, points)]
  describe(`two leaves of ${points} points`, () => {
    bench('unite', () => void unite(a, b), options)
    bench('intersect', () => void intersect(a, b), options)
    bench('regionLess', () => void regionLess(a, b), options)
    bench('WebAssembly', () => void clipperArea('intersection', toGridPolygons(a), toGridPolygons(b)), options)
  })
}

describe('24 leaves of 300 points', () => {
  const leaves = Array.from({ length: 24 }, (_, i) => leaf(i, 300))
  bench('intersectAll', () => void intersectAll(leaves), options)
  bench('one after the other', () => void leaves.reduce((held, next) => intersect(held, next)), options)
})
