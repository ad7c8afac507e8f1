/**
 * Where a piece can lie on 1, 24 or 64 leaves of 100, 300 and 600 points with ten knots each, as the leaves of one flitch
 * have them: cold, and when only the piece changes. Two other ways are measured in turn with it, and printed as ratios:
 * Clipper2 in WebAssembly, everything in one union, and convex pieces of the border united by polygon-clipping.
 *
 * Like with like: cold, Clipper2 gets all leaves at once, as one union takes them; convex pieces would take minutes so
 * and get our intersection of the leaves. When only the piece changes every way keeps the leaves' intersection, and
 * each makes its lines or pieces anew. What Clipper2 finds stays in its memory and is not read back.
 *
 * Goals: ahead of each; 24 leaves of 300 points in 60 ms cold, 16 ms when only the piece changes.
 */
import { bench, describe } from 'vitest'
import { boxAround } from '../../src/core/geometry/box'
import { inCommon } from '../../src/core/fit/play'
import { regionLess, unite } from '../../src/core/geometry/clip'
import { toGridPolygons, toGridRing, withoutSpikes, type GridRing } from '../../src/core/geometry/clip-grid'
import { convexHull } from '../../src/core/geometry/convex'
import { innerFit } from '../../src/core/geometry/inner-fit'
import { touchingPath } from '../../src/core/geometry/inner-fit-path'
import { add, point, scale } from '../../src/core/geometry/point'
import { regionArea, ringEdges, type Polygon, type Region, type Ring } from '../../src/core/geometry/polygon'
import { clipperWoundArea } from '../fixtures/geometry/oracles'
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
function byWasm(leaves: Leaves): number {
  const rings = leaves.flatMap((leaf) => toGridPolygons(leaf).filter(isLargeEnough).flat())
  const { min, max } = boxAround<'leaf'>(rings.flat())
  const around: GridRing = toGridRing(box(min.x - 1000, min.y - 1000, max.x + 1000, max.y + 1000), 1).reverse()
  const paths = rings.map((ring) => withoutSpikes(touchingPath([...ring].reverse(), turned).reverse()))
  return clipperWoundArea([...paths, ...leaves.slice(1).map(() => around)]) / 1e6
}

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

/** One row of the table: the least times in ms of the three ways, cold and when only the piece changes. */
function measured(count: number, points: number) {
  const leaves = flitchOf(count, points)
  const common = inCommon(leaves)
  const area = regionArea(innerFit(common, piece))
  const others = [byWasm(leaves), byWasm([common]), regionArea(byConvexPieces(common))]
  if (area < 1 || others.some((other) => Math.abs(other - area) > 1))
    throw new Error(`${area} is not ${String(others)}`)
  const cold = leastTimes([() => innerFit(inCommon(leaves), piece), () => byWasm(leaves)], {
    rounds: count === 1 ? 100 : 8,
  })
  const changed = leastTimes([() => innerFit(common, piece), () => byWasm([common])], { rounds: 100 })
  const [pieces] = leastTimes([() => byConvexPieces(common)], { rounds: 1 })
  const [intersection] = leastTimes([() => inCommon(leaves)], { rounds: count === 1 ? 20 : 3 })
  return { count, points, cold: [...cold, intersection! + pieces!], changed: [...changed, pieces!] }
}

const rows = [100, 300, 600].flatMap((points) => [1, 24, 64].map((count) => measured(count, points)))

const columns = ([ours, wasm, pieces]: readonly number[]) =>
  [`${ours!.toFixed(2)} ms`, `${(wasm! / ours!).toFixed(1)}x`, `${(pieces! / ours!).toFixed(0)}x`]
    .map((text) => text.padStart(11))
    .join('')
const head = ['play', 'one union', 'pieces'].map((text) => text.padStart(11)).join('')
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
  const ahead = rows.every(({ cold, changed }) =>
    [cold, changed].every(([ours, ...rest]) => rest.every((t) => t > ours!)),
  )
  const met = (isMet: boolean) => (isMet ? 'met' : 'NOT MET')
  return [
    `goal, ahead of each in every row: ${met(ahead)}`,
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
