/**
 * [G1] A boolean operation never throws, and its area agrees to 1e-6 with independent engines on the same input
 * snapped to the grid.
 * [G2] The same holds along chains, where each result goes into the next operation.
 *
 * Sources: JSTS 2.12 (OverlayOp) and Clipper2 (C++ compiled to WebAssembly). LEAFTURN_CASES sets how many cases and
 * chains are run.
 */
import { describe, expect, it } from 'vitest'
import { intersect, intersectAll, regionLess, unite } from '../../src/core/geometry/clip'
import { toGridPolygons } from '../../src/core/geometry/clip-grid'
import { convexHull } from '../../src/core/geometry/convex'
import { point } from '../../src/core/geometry/point'
import { regionArea, signedArea, transformRegion, type Region } from '../../src/core/geometry/polygon'
import { compose, reflection, rotation, translation } from '../../src/core/geometry/transform'
import { clipperArea, jstsArea, type Operation } from '../fixtures/geometry/oracles'
import {
  box,
  chanceFrom,
  coarse,
  convexRing,
  leafWithHoles,
  spread,
  starRing,
  whole,
} from '../fixtures/geometry/shapes'
import type { Chance } from '../fixtures/geometry/shapes'

const CASES = Number(process.env.LEAFTURN_CASES ?? 1000)
const STEP = 1e6 // square grid steps in a square millimetre

const operations: Operation[] = ['union', 'intersection', 'difference']
const run = { union: unite<'leaf'>, intersection: intersect<'leaf'>, difference: regionLess<'leaf'> }

/** A leaf, a cell, a wedge, a defect, or cells side by side, some turned, mirrored or moved. */
function randomRegion(chance: Chance): Region<'leaf'> {
  const size = { width: spread(chance, 60, 300), length: spread(chance, 100, 900) }
  const kinds: (() => Region<'leaf'>)[] = [
    () => [leafWithHoles(chance, { ...size, points: whole(chance, 8, 120), holes: whole(chance, 0, 5) })],
    () => [[box(0, 0, spread(chance, 20, 200), spread(chance, 20, 500))]],
    () => [[convexHull([point(0, 0), point(spread(chance, 50, 300), 0), point(0, spread(chance, 50, 300))])]],
    () => [[starRing(chance, point(spread(chance, 0, 200), spread(chance, 0, 400)), 80, whole(chance, 3, 30))]],
    () => [[convexRing(chance, spread(chance, 10, 150), whole(chance, 4, 40))]],
    () => [0, 1, 2].map((i) => [box(i * 60, 0, i * 60 + 40, 300)]),
    // strips of adjoining cells share their edges
    () => [[box(40, -10, 60, 250)], [box(100, 10, 120, 300)]],
  ]
  const made = kinds[whole(chance, 0, kinds.length - 1)]!()
  const turn = rotation<'leaf'>(chance() < 0.3 ? 0 : spread(chance, 0, 2 * Math.PI))
  const move = translation<'leaf'>(spread(chance, -80, 80), spread(chance, -80, 80))
  const mirror = reflection(point<'leaf'>(0, 0), point<'leaf'>(0, 1))
  const placed = chance() < 0.5 ? compose(move, turn) : compose(compose(move, turn), mirror)
  return chance() < 0.35 ? made : transformRegion(placed, made)
}

/** Raw coordinates, or on a coarse grid where edges and corners coincide. */
function randomPair(chance: Chance): [Region<'leaf'>, Region<'leaf'>] {
  const pair: [Region<'leaf'>, Region<'leaf'>] = [randomRegion(chance), randomRegion(chance)]
  const kind = chance()
  if (kind < 0.15) return [pair[0], pair[0]]
  if (kind < 0.35) return [pair[0], transformRegion(translation<'leaf'>(whole(chance, -2, 2) * 20, 0), pair[0])]
  if (kind < 0.55) return [united(coarse(pair[0], 10)), united(coarse(pair[1], 10))]
  return pair
}

/** Rounding to a coarse grid makes rings touch themselves; uniting makes proper regions of them again. */
const united = (region: Region<'leaf'>) => unite(region)

interface Verdict {
  wrong: string[]
  byJsts: number
}

function compare(operation: Operation, a: Region<'leaf'>, b: Region<'leaf'>, label: string, verdict: Verdict) {
  const result = run[operation](a, b)
  const [ga, gb] = [toGridPolygons(a), toGridPolygons(b)]
  const scale = (regionArea(a) + regionArea(b)) * STEP
  const area = regionArea(result) * STEP
  const expected = [clipperArea(operation, ga, gb)]
  const jsts = ga.length && gb.length ? jstsArea(operation, ga, gb) : null
  if (jsts !== null) {
    expected.push(jsts)
    verdict.byJsts++
  }
  // Clipper rounds meeting points to the grid, JSTS does not: agreeing with either is agreeing
  if (!expected.some((other) => Math.abs(other - area) <= 1e-6 * scale)) {
    verdict.wrong.push(`${label} ${operation}: ${area / STEP} against ${expected.map((e) => e / STEP)}`)
  }
  for (const [outer, ...holes] of result) {
    if (signedArea(outer) <= 0 || holes.some((hole) => signedArea(hole) >= 0)) verdict.wrong.push(`${label} turned`)
  }
  return result
}

describe('boolean operations against JSTS and Clipper2', () => {
  it(`[G1] none of ${CASES} random cases throws or has a wrong area`, { timeout: 3_600_000 }, () => {
    const verdict: Verdict = { wrong: [], byJsts: 0 }
    for (let i = 0; i < CASES; i++) {
      const [a, b] = randomPair(chanceFrom(i + 1))
      compare(operations[i % 3]!, a, b, `case ${i}`, verdict)
    }
    expect(verdict.wrong).toEqual([])
    expect(verdict.byJsts).toBeGreaterThan(CASES * 0.8)
  })

  it(`[G2] none of ${CASES} chains of four operations throws or has a wrong area`, { timeout: 3_600_000 }, () => {
    const verdict: Verdict = { wrong: [], byJsts: 0 }
    for (let i = 0; i < CASES; i++) {
      const chance = chanceFrom(1_000_003 + i)
      let [held] = randomPair(chance)
      for (let step = 0; step < 4; step++) {
        const operation = (['union', 'difference', 'intersection', 'union'] as const)[step]!
        held = compare(operation, held, randomPair(chance)[0], `chain ${i}.${step}`, verdict)
      }
    }
    expect(verdict.wrong).toEqual([])
  })

  it('[G1] the intersection of many leaves agrees with intersecting them one after the other', () => {
    const wrong: string[] = []
    for (let i = 0; i < Math.max(20, CASES / 25); i++) {
      const chance = chanceFrom(7_000_003 + i)
      const leaves = Array.from({ length: whole(chance, 1, 9) }, (): Region<'leaf'> => [
        leafWithHoles(chance, { width: 200, length: 600, points: 60, holes: whole(chance, 0, 4) }),
      ])
      const oneByOne = leaves.reduce((held, leaf) => intersect(held, leaf))
      const difference = Math.abs(regionArea(intersectAll(leaves)) - regionArea(oneByOne))
      // every level of the tree rounds meeting points to a grid step; the borders are some 3 m long
      if (difference > 3000 * 0.001 * 2) wrong.push(`run ${i}: ${difference} mm²`)
    }
    expect(wrong).toEqual([])
  })
})
