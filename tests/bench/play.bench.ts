/**
 * Where a piece can lie on 1, 24 or 64 leaves of 100, 300 and 600 points with ten knots each, as the leaves of one flitch
 * have them: cold, and when only the piece changes. Two other ways are measured in turn with it, and printed as ratios:
 * Clipper2 in WebAssembly, everything in one union, and convex pieces of the border united by polygon-clipping.
 *
 * What is counted. Every way begins with the leaves in mm and ends with rings in mm that a caller can go on with. For
 * Clipper2 that is: the same rings on the same grid, the lines along which they touch the piece, handed over; the union;
 * its points read back; all of its objects freed. Not counted: loading it, and which hole belongs to which ring, which ours
 * tells and a flat union does not. It is measured twice. "One union" goes through its plain calls, one for each point
 * read. "In bulk" hands over whole paths as arrays of floating-point numbers, both ways, the least that it can cost.
 * Cold, Clipper2 gets all leaves at once, as one union takes them; convex pieces would take minutes so and get our
 * intersection of the leaves. When only the piece changes every way keeps the leaves' intersection, and each makes its
 * lines or pieces anew. Before anything is timed all ways have run warm on the smallest case and on their own.
 *
 * Goals: ahead of each; 24 leaves of 300 points in 60 ms cold, 16 ms when only the piece changes.
 */
import { bench, describe } from 'vitest'
import { boxAround } from '../../src/core/geometry/box'
import { inCommon } from '../../src/core/fit/play'
import { regionLess, unite } from '../../src/core/geometry/clip'
import {
  fromGridRing,
  toGridPolygons,
  toGridRing,
  withoutSpikes,
  type GridRing,
} from '../../src/core/geometry/clip-grid'
import { convexHull } from '../../src/core/geometry/convex'
import { innerFit } from '../../src/core/geometry/inner-fit'
import { touchingPath } from '../../src/core/geometry/inner-fit-path'
import { add, point, scale } from '../../src/core/geometry/point'
import {
  regionArea,
  ringEdges,
  signedArea,
  type Polygon,
  type Region,
  type Ring,
} from '../../src/core/geometry/polygon'
import { clipperWound, clipperWoundInBulk } from '../fixtures/geometry/oracles'
import { box, chanceFrom, leafWithHoles, spread, wildLeaf } from '../fixtures/geometry/shapes'
import { fitGrowth, leastTimes } from './measure'

type Leaves = readonly Region<'leaf'>[]

/** Leaves of one flitch: every outline its own, the same knots wandering a little from leaf to leaf. */
function flitchOf(count: number, points: number): Leaves {
  const size = { width: 220, length: 2400 }
  const [, ...knots] = leafWithHoles(chanceFrom(7), { ...size, points: 4, holes: 10 })
  return Array.from({ length: count }, (_, i) => {
    const chance = chanceFrom(100 + i)
    const wandered = knots.map((knot) => {
      const by = point<'leaf'>(spread(chance, -2, 2), spread(chance, -6, 6))
      return knot.map((p) => add(p, by))
    })
    return [[wildLeaf(chance, size.width, size.length, points), ...wandered] as unknown as Polygon<'leaf'>]
  })
}

const piece = box(-40, -120, 40, 120)
const turned = toGridRing(piece.map((p) => scale(p, -1)))

/** The touching lines of all leaves in one union; a box that is taken off once less than there are leaves makes it theirs in common. */
function byWasm(leaves: Leaves, wound: (paths: readonly GridRing[]) => GridRing[]): Ring<'leaf'>[] {
  const rings = leaves.flatMap((leaf) => toGridPolygons(leaf).filter(isLargeEnough).flat())
  const paths = rings.map((ring) => withoutSpikes(touchingPath([...ring].reverse(), turned).reverse()))
  if (leaves.length > 1) {
    const { min, max } = boxAround<'leaf'>(rings.flat())
    const around: GridRing = toGridRing(box(min.x - 1000, min.y - 1000, max.x + 1000, max.y + 1000), 1).reverse()
    for (let i = 1; i < leaves.length; i++) paths.push(around)
  }
  return wound(paths).map((ring) => fromGridRing(ring))
}

const plainly = (leaves: Leaves) => byWasm(leaves, clipperWound)
const inBulk = (leaves: Leaves) => byWasm(leaves, clipperWoundInBulk)

// the crumbs of an intersection would be counted wrongly: a piece larger than they are goes right round them
function isLargeEnough([outer]: readonly GridRing[]): boolean {
  const { min, max } = boxAround<'leaf'>(outer!)
  return max.x - min.x > 80_000 && max.y - min.y > 240_000
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

/** One row of the table: the least times in ms of ours and the other ways, cold and when only the piece changes. */
function measured(count: number, points: number) {
  const leaves = flitchOf(count, points)
  const common = inCommon(leaves)
  const pieces = checkAlike(leaves, common)
  const rounds = { 1: { rounds: 300, warmUp: 100 }, 24: { rounds: 6 } }[count] ?? { rounds: 3, warmUp: 1 }
  const cold = leastTimes(
    [() => innerFit(inCommon(leaves), piece), () => plainly(leaves), () => inBulk(leaves)],
    rounds,
  )
  const changed = leastTimes([() => innerFit(common, piece), () => plainly([common]), () => inBulk([common])], {
    rounds: 200,
    warmUp: 50,
  })
  const [intersection] = leastTimes([() => inCommon(leaves)], { rounds: count === 1 ? 20 : 3 })
  return { count, points, cold: [...cold, intersection! + pieces], changed: [...changed, pieces] }
}

/** Every way must find the same room. What the convex pieces took in ms: so long that once is enough. */
function checkAlike(leaves: Leaves, common: Region<'leaf'>): number {
  const area = regionArea(innerFit(common, piece))
  const ringsArea = (rings: readonly Ring<'leaf'>[]) => rings.reduce((sum, ring) => sum + signedArea(ring), 0)
  const unions = [plainly(leaves), plainly([common]), inBulk(leaves), inBulk([common])].map(ringsArea)
  const start = performance.now()
  const pieced = byConvexPieces(common)
  const took = performance.now() - start
  const others = [...unions, regionArea(pieced)]
  if (area < 1 || others.some((other) => Math.abs(other - area) > 1))
    throw new Error(`${area} is not ${String(others)}`)
  return took
}

// what is measured first is not to pay for all: every way runs warm on single leaves of each size
for (const leaf of [600, 300, 100].map((points) => flitchOf(1, points)))
  leastTimes([() => innerFit(inCommon(leaf), piece), () => plainly(leaf), () => inBulk(leaf)], {
    rounds: 1,
    warmUp: 1500,
  })

const rows = [100, 300, 600].flatMap((points) => [1, 24, 64].map((count) => measured(count, points)))

const WAYS = ['one union', 'in bulk', 'pieces']
const columns = ([ours, ...others]: readonly number[]) =>
  [`${ours!.toFixed(2)} ms`, ...others.map((t) => `${(t / ours!).toFixed(t / ours! < 10 ? 2 : 0)}x`)]
    .map((text) => text.padStart(11))
    .join('')
const head = ['play', ...WAYS].map((text) => text.padStart(11)).join('')
console.log(
  [
    `leaves  points  | cold ${head}  | only the piece changes ${head}`,
    ...rows.map(
      ({ count, points, cold, changed }) =>
        `${String(count).padStart(6)}  ${String(points).padStart(6)}  |      ${columns(cold)}  |                        ${columns(changed)}`,
    ),
    ...(['cold', 'changed'] as const).map((kind) => {
      const { points, leaves } = fitGrowth(rows.map((row) => ({ ...row, ms: row[kind][0]! })))
      return `${kind}: grows with points to the power ${points.toFixed(2)}, with leaves to the power ${leaves.toFixed(2)}`
    }),
    ...goals(),
  ].join('\n'),
)

function goals(): string[] {
  const row = rows.find(({ count, points }) => count === 24 && points === 300)!
  const met = (isMet: boolean) => (isMet ? 'met' : 'NOT MET')
  const least = WAYS.map((way, i) => {
    const ratio = Math.min(...rows.flatMap(({ cold, changed }) => [cold, changed].map((t) => t[i + 1]! / t[0]!)))
    return `goal, ahead of ${way} in every row: ${ratio.toFixed(2)}x at least, ${met(ratio > 1)}`
  })
  return [
    ...least,
    `goal, 24 leaves of 300 points within 60 ms cold: ${row.cold[0]!.toFixed(1)} ms, ${met(row.cold[0]! <= 60)}`,
    `goal, within 16 ms when only the piece changes: ${row.changed[0]!.toFixed(1)} ms, ${met(row.changed[0]! <= 16)}`,
  ]
}

describe('24 leaves of 300 points', () => {
  const leaves = flitchOf(24, 300)
  const common = inCommon(leaves)
  const options = { time: 400, warmupTime: 50, iterations: 3, warmupIterations: 1 }
  bench('cold', () => void innerFit(inCommon(leaves), piece), options)
  bench('only the piece changes', () => void innerFit(common, piece), options)
})
