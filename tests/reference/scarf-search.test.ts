/**
 * [X6] On a leaf of any outline the search finds no less than a brute-force search over cuts, and never claims more
 * than boolean operations confirm; where the wanted width is not reached it says so, with the most found and a bound.
 * [X7] The largest strip along the grain is inside, and no rectangle of a brute-force search exceeds it or its bound.
 *
 * Source: brute force written here, which tests points and rows against the leaf's outline and shares no code with the
 * search but the test whether a point lies within a ring.
 */
import { describe, expect, it } from 'vitest'
import { boxRing } from '../../src/core/geometry/box'
import { regionLess } from '../../src/core/geometry/clip'
import { point } from '../../src/core/geometry/point'
import { regionArea, regionCovers, transformRegion, type Region, type Ring } from '../../src/core/geometry/polygon'
import { rotation } from '../../src/core/geometry/transform'
import type { FlitchId } from '../../src/core/ids'
import { scarfForSize } from '../../src/core/scarf/extension'
import { searchScarf } from '../../src/core/scarf/search'
import { largestStrip } from '../../src/core/scarf/strip'
import { box, chanceFrom, leafWithHoles, wildLeaf } from '../fixtures/geometry/shapes'

const leaf = { flitch: 'walnut' as FlitchId, leaf: 7 }

/** A leaf that narrows towards its far end and has a bite out of one side. */
const bitten: Region<'leaf'> = [
  [[point(0, 0), point(210, 15), point(204, 500), point(176, 540), point(198, 590), point(190, 1180), point(12, 1200)]],
]

interface Cut {
  readonly hand: 1 | -1
  readonly slope: number
  readonly gain: number
  readonly x0: number
}

/** The widest stretch of columns that lies in the piece at every row sampled; no more than 1 column too wide. */
function bruteWidth(region: Region<'leaf'>, cut: Cut, loss: number, top: number, length: number): number {
  const across = loss * Math.hypot(1, cut.slope)
  const step = cut.slope * cut.gain + 2 * across
  const covers = (x: number, y: number) => {
    const beside = cut.hand * (x - cut.x0) - cut.slope * (y - 600) - across
    if (beside >= 0) return regionCovers(region, point(x, y))
    return regionCovers(region, point(x - cut.hand * step, y - cut.gain))
  }
  const column = 4
  let [best, run] = [0, 0]
  for (let x = -200; x <= 420; x += column) {
    let whole = true
    for (let i = 0; whole && i <= 40; i++) whole = covers(x, top + (length * (i + 0.001)) / 40.002)
    run = whole ? run + column : 0
    best = Math.max(best, run)
  }
  // n columns of points in a row prove a stretch of n − 1 columns
  return best - column
}

function bruteForce(region: Region<'leaf'>, length: number, loss: number): number {
  let best = 0
  for (const hand of [1, -1] as const)
    for (const slope of [0.1, 0.13, 0.16, 0.2, 0.26])
      for (const x0 of [40, 70, 100, 130, 160])
        for (const gain of [80, 110, 150, 200])
          for (const top of [0, 10, 20])
            best = Math.max(best, bruteWidth(region, { hand, slope, gain, x0 }, loss, top, length))
  return best
}

describe('a scarf on an irregular leaf', () => {
  it('[X6] the search is no worse than brute force, and what it finds is really there', { timeout: 60_000 }, () => {
    const [length, loss] = [1260, 1.5]
    const brute = bruteForce(bitten, length, loss)
    expect(brute).toBeGreaterThan(120)
    const found = searchScarf(leaf, bitten, { width: 140, length }, loss)
    expect(found).not.toBeNull()
    expect(found!.width).toBeGreaterThan(brute - 0.5)
    expect(regionArea(regionLess([[boxRing(found!.box)]], [found!.piece.outline]))).toBeLessThan(0.01)
    expect(found!.width).toBeLessThanOrEqual(found!.widthBound)
    // the rectangle that brute force would see through the cut found is the one claimed
    const { cut } = found!
    const seen: Cut = {
      hand: cut.runs === 'right' ? 1 : -1,
      slope: cut.slope,
      gain: cut.gain,
      x0: cut.through.x + (cut.runs === 'right' ? 1 : -1) * cut.slope * (600 - cut.through.y),
    }
    expect(bruteWidth(bitten, seen, loss, found!.box.min.y, length)).toBeGreaterThan(found!.width - 9)
  })

  it('[X6] on a true rectangle it comes within half a millimetre of the formula', () => {
    const sound = { width: 200, length: 1200 }
    const found = searchScarf(leaf, [[box(0, 0, 200, 1200)]], { width: 170, length: 1350 }, 1.5)
    const exact = scarfForSize(sound, { width: 500, length: 1350 }, 1.5)
    expect(exact.ok).toBe(false)
    const most = scarfForSize(sound, { width: 180, length: 1350 }, 1.5)
    if (most.ok || most.reason.kind !== 'too long') throw new Error('1350 x 180 should be too long')
    expect(found!.width).toBeGreaterThan(most.reason.mostWidth - 0.5)
    expect(found!.width).toBeLessThan(most.reason.mostWidth + 0.02)
    expect(found!.enough).toBe(true)
  })

  it('[X6] says that there is none, with the most found', () => {
    const found = searchScarf(leaf, bitten, { width: 205, length: 1400 }, 1.5)
    expect(found!.enough).toBe(false)
    expect(found!.width).toBeLessThan(205)
    expect(found!.width).toBeGreaterThan(100)
    expect(searchScarf(leaf, bitten, { width: 20, length: 3000 }, 1.5)).toBeNull()
    expect(searchScarf(leaf, [], { width: 20, length: 300 }, 1.5)).toBeNull()
  })

  it('[X6] on wild leaves with holes what is found lies in the piece made', { timeout: 60_000 }, () => {
    for (let n = 0; n < 8; n++) {
      const region = [leafWithHoles(chanceFrom(n), { width: 220, length: 1200, points: 60, holes: n % 3 })]
      const found = searchScarf(leaf, region, { width: 100, length: 1280 }, 1.5)
      expect(found).not.toBeNull()
      expect(regionArea(regionLess([[boxRing(found!.box)]], [found!.piece.outline]))).toBeLessThan(0.01)
      expect(found!.box.max.y - found!.box.min.y).toBeCloseTo(1280, 6)
    }
  })
})

/** The largest rectangle of whole steps whose border and inside points all lie in the region. */
function bruteStrip(region: Region<'leaf'>, width: number, length: number, step: number): number {
  const columns = Math.floor(width / step)
  const rows = Math.floor(length / step)
  const heights = new Array<number>(columns).fill(0)
  let best = 0
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++)
      heights[i] = regionCovers(region, point((i + 0.5) * step, (j + 0.5) * step)) ? heights[i]! + 1 : 0
    for (let i = 0; i < columns; i++) {
      let least = Infinity
      for (let k = i; k < columns && heights[k]! > 0; k++) {
        least = Math.min(least, heights[k]!)
        // so many points in a row prove one step less each way
        best = Math.max(best, (k - i) * (least - 1) * step * step)
      }
    }
  }
  return best
}

describe('the largest strip along the grain', () => {
  it('[X7] is the rectangle itself of a rectangle, also turned', () => {
    const ring: Ring<'leaf'> = box(10, 20, 150, 920)
    const straight = largestStrip([[ring]], 0)!
    expect(straight).toMatchObject({ width: 140, length: 900, area: 126_000 })
    const turned = largestStrip(transformRegion(rotation<'leaf', 'leaf'>(0.2), [[ring]]), 0.2)!
    expect(turned.area).toBeCloseTo(126_000, 3)
  })

  it('[X7] of an L is the larger of its two arms', () => {
    // by hand: upright arm 60 x 1000 = 60 000; foot 300 x 250 = 75 000
    const ring = [point(0, 0), point(60, 0), point(60, 750), point(300, 750), point(300, 1000), point(0, 1000)]
    expect(largestStrip([[ring as Ring<'leaf'>]], 0)!.area).toBeCloseTo(75_000, 6)
  })

  it('[X7] of a right triangle has half its area', () => {
    // known: the largest rectangle in a right triangle stands on its midpoints
    const ring: Ring<'leaf'> = [point(0, 0), point(200, 1000), point(0, 1000)]
    const strip = largestStrip([[ring]], 0)!
    expect(strip.area).toBeGreaterThan(50_000 * (1 - 1e-3))
    expect(strip.area).toBeLessThanOrEqual(50_000 + 1e-6)
    expect(strip.bound).toBeGreaterThanOrEqual(50_000)
  })

  it('[X7] beats brute force on wild leaves, and its bound is close', { timeout: 60_000 }, () => {
    for (let n = 0; n < 6; n++) {
      const shape = { width: 200, length: 900, points: 80, holes: n % 4 }
      const region: Region<'leaf'> = [
        n === 0 ? [wildLeaf(chanceFrom(n), 200, 900, 120)] : leafWithHoles(chanceFrom(n), shape),
      ]
      const strip = largestStrip(region, 0)!
      expect(regionArea(regionLess([[boxRing(strip.box)]], region))).toBeLessThan(0.5)
      expect(strip.area).toBeGreaterThanOrEqual(bruteStrip(region, 220, 920, 4))
      expect(strip.bound).toBeGreaterThanOrEqual(strip.area)
      expect(strip.bound).toBeLessThan(strip.area * 1.01)
    }
  })
})
