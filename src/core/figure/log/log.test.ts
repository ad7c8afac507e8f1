/**
 * Rules kept here:
 * [L-log-1] The same seed gives the same pixels; another seed gives others.
 * [L-log-2] A crop shows exactly what the whole leaf shows there; strips put together are the picture.
 * [L-log-3] The outlines of neighbouring leaves agree to within 2 mm.
 * [L-log-4] A knot moves from leaf to leaf by its step and no more, and is painted where it is reported.
 * [L-log-5] Each species keeps between its light and its dark colour, on the mean.
 * [L-log-6] Leaves are registered: neighbours' figure agrees best with no shift. The other face of a leaf shows
 *   what the numbered face of the next one shows, so that pairs opened like a book meet at their seam.
 * [L-log-7] Wood is opaque inside the outline and clear outside.
 */
import { describe, expect, it } from 'vitest'
import { boxAround } from '../../geometry/box'
import { point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import { DEMO_LOG } from '../demo-flitch'
import { leafDefects } from './leaf-defects'
import { leafOutline } from './leaf-outline'
import { leafPixels, type Pixels } from './leaf-pixels'
import { leafStrips } from './leaf-strips'
import { leafFrame, makeLog, type LogOptions } from './log'
import type { Slicing } from './slicing'
import { SPECIES, type SpeciesName } from './species'

const box = (x: number, y: number, width: number, height: number) => ({
  min: point<'leaf'>(x, y),
  max: point<'leaf'>(x + width, y + height),
})

const demo = makeLog(DEMO_LOG)
const quarter: Slicing = { cut: 'quarter', firstDepth: 12, innerEdge: 20 }
const halfRound: Slicing = { cut: 'half round', firstDepth: 107, latheRadius: 240 }
const clean = (changes: Partial<LogOptions>) => makeLog({ ...DEMO_LOG, knots: [], splits: [], ...changes })

function hash({ rgba }: Pixels): number {
  let h = 0x811c9dc5
  for (const byte of rgba) h = Math.imul(h ^ byte, 0x01000193)
  return h >>> 0
}

const grey = ({ rgba }: Pixels): readonly number[] =>
  Array.from(
    { length: rgba.length / 4 },
    (_, i) => 0.3 * rgba[4 * i]! + 0.59 * rgba[4 * i + 1]! + 0.11 * rgba[4 * i + 2]!,
  )

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length

/** How alike two pictures of one size are, −1 to 1. */
function likeness(p: Pixels, q: Pixels): number {
  const [a, b] = [grey(p), grey(q)]
  const [meanA, meanB] = [mean(a), mean(b)]
  let [ab, aa, bb] = [0, 0, 0]
  a.forEach((value, i) => {
    const [x, y] = [value - meanA, b[i]! - meanB]
    ab += x * y
    aa += x * x
    bb += y * y
  })
  return ab / Math.sqrt(aa * bb)
}

describe('the same request', () => {
  const request = { pxPerMm: 1, box: box(100, 400, 90, 120) }

  it('[L-log-1] gives the same pixels for one seed and others for another', () => {
    const once = hash(leafPixels(demo, 3, request))
    expect(hash(leafPixels(makeLog(DEMO_LOG), 3, request))).toBe(once)
    expect(hash(leafPixels(makeLog({ ...DEMO_LOG, seed: 4178 }), 3, request))).not.toBe(once)
    expect(hash(leafPixels(demo, 4, request))).not.toBe(once)
  })
})

describe('a crop', () => {
  // the crops begin between the nodes of every grid that the fields are worked out on
  it.each([
    { pxPerMm: 1, x: 43, y: 81 },
    { pxPerMm: 2, x: 43, y: 81 },
    { pxPerMm: 0.25, x: 44, y: 84 },
  ])('[L-log-2] shows what the whole shows there, at $pxPerMm pixels a mm', ({ pxPerMm, x, y }) => {
    const whole = leafPixels(demo, 11, { pxPerMm, box: box(20, 1600, 200, 200) })
    const crop = leafPixels(demo, 11, { pxPerMm, box: box(20 + x, 1600 + y, 80, 64) })
    let worst = 0
    for (let j = 0; j < crop.height; j++) {
      for (let i = 0; i < crop.width * 4; i++) {
        const there = whole.rgba[((j + y * pxPerMm) * whole.width + x * pxPerMm) * 4 + i]!
        worst = Math.max(worst, Math.abs(there - crop.rgba[j * crop.width * 4 + i]!))
      }
    }
    // a number may round the other way
    expect(worst).toBeLessThanOrEqual(1)
  })

  it('[L-log-2] in strips is the whole', () => {
    const request = { pxPerMm: 0.25, box: leafFrame(demo) }
    const whole = leafPixels(demo, 6, request)
    let worst = 0
    let rows = 0
    for (const { row, pixels } of leafStrips(demo, 6, request, 70)) {
      expect(row).toBe(rows)
      rows += pixels.height
      pixels.rgba.forEach(
        (byte, i) => (worst = Math.max(worst, Math.abs(byte - whole.rgba[row * whole.width * 4 + i]!))),
      )
    }
    expect(rows).toBe(whole.height)
    expect(worst).toBeLessThanOrEqual(1)
  })
})

describe('outlines', () => {
  /** Both edges at a height, by straight lines between the points. */
  function edges(ring: Ring<'leaf'>, y: number): { left: number; right: number } {
    const xs = ring.flatMap((a, i) => {
      const b = ring[(i + 1) % ring.length]!
      return a.y > y !== b.y > y ? [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)] : []
    })
    return { left: Math.min(...xs), right: Math.max(...xs) }
  }

  it.each<{ slicing: Slicing }>([{ slicing: DEMO_LOG.slicing }, { slicing: quarter }, { slicing: halfRound }])(
    '[L-log-3] of neighbouring leaves agree to 2 mm, $slicing.cut',
    ({ slicing }) => {
      const log = clean({ slicing })
      const outlines = [1, 2, 12, 13, 23, 24].map((leaf) => leafOutline(log, leaf))
      for (const k of [0, 2, 4]) {
        for (let y = 7; y < 2400; y += 61) {
          const [here, next] = [edges(outlines[k]!, y), edges(outlines[k + 1]!, y)]
          expect(Math.abs(here.left - next.left)).toBeLessThan(2)
          expect(Math.abs(here.right - next.right)).toBeLessThan(2)
        }
      }
      for (const outline of outlines) {
        const { min, max } = boxAround(outline)
        expect(min.x).toBeGreaterThanOrEqual(0)
        expect(max.x).toBeLessThanOrEqual(log.width)
      }
    },
  )

  it('[L-log-7] are where the wood ends', () => {
    const outline = leafOutline(demo, 8)
    for (let y = 40.5; y < 2400; y += 237) {
      const { left, right } = edges(outline, y)
      const alpha = (x: number) => leafPixels(demo, 8, { pxPerMm: 1, box: box(x - 0.5, y - 0.5, 1, 1) }).rgba[3]
      expect([alpha(left - 1.5), alpha(left + 1.5), alpha(right - 1.5), alpha(right + 1.5)]).toEqual([0, 255, 255, 0])
    }
  })
})

describe('defects', () => {
  const knotOf = (leaf: number) => leafDefects(demo, leaf).find(({ kind }) => kind === 'knot')

  it('[L-log-4] a knot moves by its step from leaf to leaf', () => {
    for (let leaf = 9; leaf < 14; leaf++) {
      const [here, next] = [knotOf(leaf), knotOf(leaf + 1)]
      if (here?.shape !== 'spot' || next?.shape !== 'spot') throw new Error('the knot is gone')
      expect(next.centre.x - here.centre.x).toBeCloseTo(0.5, 6)
      expect(next.centre.y - here.centre.y).toBeCloseTo(-1.6, 6)
    }
    expect(knotOf(8)).toBeUndefined()
    expect(knotOf(15)).toBeUndefined()
  })

  it('[L-log-4] a knot is painted where it is reported: darker there than beside it', () => {
    const knot = knotOf(11)
    if (knot?.shape !== 'spot') throw new Error('the knot is gone')
    const { x, y } = knot.centre
    const darkness = (cx: number) => mean(grey(leafPixels(demo, 11, { pxPerMm: 1, box: box(cx - 10, y - 10, 20, 20) })))
    expect(darkness(x)).toBeLessThan(darkness(x - 32) - 12)
    expect(darkness(x)).toBeLessThan(darkness(x + 32) - 12)
  })

  it('[L-log-4] an end split is painted along the line that is reported', () => {
    const split = leafDefects(demo, 6).find(({ kind }) => kind === 'split')
    if (split?.shape !== 'line') throw new Error('the split is gone')
    expect(split.from.y).toBe(2400)
    const y = 2390
    const across = grey(leafPixels(demo, 6, { pxPerMm: 2, box: box(split.from.x - 6, y, 12, 0.5) }))
    const darkest = split.from.x - 6 + (across.indexOf(Math.min(...across)) + 0.5) / 2
    expect(Math.abs(darkest - split.from.x)).toBeLessThan(1.5)
    expect(Math.min(...across)).toBeLessThan(40)
  })
})

describe('colour', () => {
  it.each<{ species: SpeciesName; slicing: Slicing }>([
    { species: 'walnut', slicing: DEMO_LOG.slicing },
    { species: 'maple', slicing: halfRound },
    { species: 'oak', slicing: quarter },
    { species: 'sapele', slicing: quarter },
  ])('[L-log-5] of $species lies between its light and its dark', ({ species, slicing }) => {
    const log = clean({ species, slicing })
    const { rgba } = leafPixels(log, 5, { pxPerMm: 0.5, box: box(60, 200, 80, 1200) })
    for (let channel = 0; channel < 3; channel++) {
      const average = mean(Array.from({ length: rgba.length / 4 }, (_, i) => rgba[4 * i + channel]!))
      expect(average).toBeLessThan(SPECIES[species].light[channel]! + 4)
      expect(average).toBeGreaterThan(SPECIES[species].dark[channel]! - 4)
    }
  })

  it('[L-log-5] is as dark on a thumbnail as at full size', () => {
    const at = (pxPerMm: number) => mean(grey(leafPixels(demo, 5, { pxPerMm, box: box(60, 200, 200, 1200) })))
    expect(Math.abs(at(0.25) - at(1))).toBeLessThan(1.5)
  })
})

describe('registration', () => {
  const at = (leaf: number, x: number, y: number, face: 'numbered' | 'other' = 'numbered') =>
    leafPixels(demo, leaf, { pxPerMm: 1, box: box(x, y, 120, 300), face })

  it('[L-log-6] neighbouring leaves agree, and best with no shift across', () => {
    for (const leaf of [3, 12, 20]) {
      const first = at(leaf, 60, 900)
      const shifts = [-4, -2, 0, 2, 4].map((shift) => likeness(first, at(leaf + 1, 60 + shift, 900)))
      expect(shifts[2]).toBeGreaterThan(0.5)
      expect(Math.max(...shifts)).toBe(shifts[2])
    }
  })

  it('[L-log-6] the other face of a leaf is the surface that the next leaf shows', () => {
    expect(hash(at(4, 60, 900, 'other'))).toBe(hash(at(5, 60, 900)))
  })
})
