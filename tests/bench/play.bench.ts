/**
 * Where a piece can lie on 1, 24 or 64 leaves of 100, 300 and 600 points with ten holes each: cold, and when only the
 * piece has changed (the leaves' intersection is kept); beside Clipper2 in WebAssembly doing the same in one union,
 * and beside convex pieces of the border united by the boolean operations.
 *
 * Goal: 24 leaves of 300 points in 60 ms cold, 16 ms when only the piece changes.
 */
import { bench, describe } from 'vitest'
import { intersectAll, regionLess, unite } from '../../src/core/geometry/clip'
import { toGridPolygons, toGridRing } from '../../src/core/geometry/clip-grid'
import { convexHull } from '../../src/core/geometry/convex'
import { innerFit } from '../../src/core/geometry/inner-fit'
import { touchingPath } from '../../src/core/geometry/inner-fit-path'
import { add, scale } from '../../src/core/geometry/point'
import { ringEdges, type Region, type Ring } from '../../src/core/geometry/polygon'
import { clipperWoundArea } from '../fixtures/geometry/oracles'
import { box, chanceFrom, leafWithHoles } from '../fixtures/geometry/shapes'

const leavesOf = (count: number, points: number): Region<'leaf'>[] =>
  Array.from({ length: count }, (_, i) => [
    leafWithHoles(chanceFrom(100 + i), { width: 220, length: 2400, points, holes: 10 }),
  ])

const piece = box(-40, -120, 40, 120)
const turned = toGridRing(piece.map((p) => scale(p, -1)))

/** The same union in WebAssembly: one path for each ring of the region. */
function byWasm(region: Region<'leaf'>): number {
  const rings = toGridPolygons(region).flat()
  return clipperWoundArea(rings.map((ring) => touchingPath([...ring].reverse(), turned).reverse()))
}

/** What each edge of the region sweeps with the piece, united and taken from the region. */
function byConvexPieces(region: Region<'leaf'>): Region<'leaf'> {
  const back = piece.map((p) => scale(p, -1)) as Ring<'leaf'>
  const swept = region
    .flat()
    .flatMap(ringEdges)
    .map(({ a, b }): Region<'leaf'> => [[convexHull([...back.map((p) => add(p, a)), ...back.map((p) => add(p, b))])]])
  const groups: Region<'leaf'>[] = []
  for (let i = 0; i < swept.length; i += 8) groups.push(unite(...swept.slice(i, i + 8)))
  return regionLess(region, unite(...groups))
}

const options = { time: 400, warmupTime: 50, iterations: 3, warmupIterations: 1 }

for (const points of [100, 300, 600]) {
  for (const count of [1, 24, 64]) {
    const leaves = leavesOf(count, points)
    const common = intersectAll(leaves)
    describe(`${count} leaves of ${points} points`, () => {
      bench('cold', () => void innerFit(intersectAll(leaves), piece), options)
      bench('only the piece changes', () => void innerFit(common, piece), options)
      bench('only the piece changes, WebAssembly in one union', () => void byWasm(common), options)
      if (count === 1) bench('convex pieces of the border', () => void byConvexPieces(common), options)
    })
  }
}
