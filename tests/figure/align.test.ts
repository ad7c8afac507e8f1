/**
 * Shifts that are known, because the leaves come from a simulated log, found again.
 *
 * [R1] How a leaf lies against its neighbour is found to 0.5 mm beside what the figure itself wanders from
 *   leaf to leaf, across and along.
 * [R2] The slide that closes the two faces of one knife cut is found to 0.3 mm, and the score rises with it.
 * [R3] Where every slide looks the same (ribbon stripe, plain wood) this is said, and no number is promised.
 * [R4] A strip beside a seam is the leaf's own figure as it lies, whichever way the leaf is turned.
 * [R5] A crown in the middle of a window is more symmetric than the same crown at its side; bold figure is livelier than
 *   plain wood.
 */
import { describe, expect, it } from 'vitest'
import { figureDrift } from '../../src/core/figure/align/drift'
import type { GreyPicture } from '../../src/core/figure/align/grey'
import { livelinessScore, symmetryScore } from '../../src/core/figure/align/scores'
import { seamSlide } from '../../src/core/figure/align/seam-slide'
import { seamStrip, stripBox } from '../../src/core/figure/align/seam-strip'
import { point } from '../../src/core/geometry/point'
import { transformPoint, type Transform } from '../../src/core/geometry/transform'
import { leafLying, logOf, stripOf } from './known-shifts'

const size = { length: 560, pxPerMm: 0.5 }

describe('drift', () => {
  it.each(['walnut', 'maple', 'oak'] as const)('[R1] %s', (species) => {
    const log = logOf(species, 4177)
    const first = leafLying(log, 5, { dx: 0, dy: 0 }, size)
    const [own] = figureDrift(first, leafLying(log, 6, { dx: 0, dy: 0 }, size)).candidates
    for (const [dx, dy] of [
      [1.7, -12.4],
      [-2.2, 23.6],
    ] as const) {
      const found = figureDrift(first, leafLying(log, 6, { dx, dy }, size))
      expect(found.trust).toBe('clear')
      expect(Math.abs(found.candidates[0]!.across - own!.across - dx)).toBeLessThan(0.5)
      expect(Math.abs(found.candidates[0]!.along - own!.along - dy)).toBeLessThan(0.5)
    }
  })
})

describe('seam slide', () => {
  it.each(['walnut', 'maple', 'oak'] as const)('[R2] %s, the two faces of one cut', (species) => {
    const log = logOf(species, 4177)
    for (const slid of [4.3, -11]) {
      const found = seamSlide(stripOf(log, 5, 500, 700, 'other'), stripOf(log, 6, 500 - slid, 700, 'numbered'))
      const [best] = found.candidates
      expect(Math.abs(best!.along - slid)).toBeLessThan(0.3)
      expect(best!.score).toBeGreaterThan(Math.max(0.8, found.before! + 0.1))
    }
  })

  it('[R3] ribbon stripe looks the same at any slide, and nothing is found between two woods', () => {
    const sapele = logOf('sapele', 4177)
    expect(seamSlide(stripOf(sapele, 5, 500, 700, 'numbered'), stripOf(sapele, 6, 505, 700, 'numbered')).trust).toBe(
      'any',
    )
    const [one, next] = [5, 6].map((leaf) => leafLying(sapele, leaf, { dx: 0, dy: 0 }, { length: 500, pxPerMm: 0.4 }))
    expect(figureDrift(one!, next!).trust).toBe('any')
    const [oak, maple] = [logOf('oak', 1), logOf('maple', 2)]
    expect(seamSlide(stripOf(oak, 3, 500, 700, 'numbered'), stripOf(maple, 3, 900, 700, 'numbered')).trust).not.toBe(
      'clear',
    )
  })
})

/** A picture of 100 x 300 mm whose value is a place: x or y of each pixel's middle in the leaf. */
const ruled = (value: (x: number, y: number) => number): GreyPicture => ({
  width: 100,
  height: 300,
  pxPerMm: 1,
  origin: point(10, 20),
  values: Float32Array.from({ length: 30_000 }, (_, i) => value((i % 100) + 10.5, Math.floor(i / 100) + 20.5)),
  known: new Uint8Array(30_000).fill(1),
})

describe('the strip beside a seam', () => {
  const turns: readonly { readonly laid: string; readonly leafToPanel: Transform<'leaf', 'panel'> }[] = [
    { laid: 'as it lies', leafToPanel: { a: 1, b: 0, c: 0, d: 1, e: -40, f: -150 } },
    { laid: 'turned over', leafToPanel: { a: -1, b: 0, c: 0, d: 1, e: 80, f: -150 } },
    { laid: 'spun', leafToPanel: { a: -1, b: 0, c: 0, d: -1, e: 80, f: 170 } },
  ]
  it.each(turns)('[R4] $laid', ({ leafToPanel }) => {
    const seam = { a: point<'panel'>(20, -60), b: point<'panel'>(20, 60) }
    for (const side of ['clockwise', 'anticlockwise'] as const) {
      const [xs, ys] = [ruled((x) => x), ruled((_, y) => y)].map((p) => seamStrip(p, seam, side, leafToPanel))
      expect([xs!.width, xs!.height]).toEqual([16, 120])
      for (const [i, j] of [
        [0, 0],
        [15, 119],
        [7, 40],
      ] as const) {
        const at = j * 16 + i
        const laid = transformPoint(leafToPanel, point<'leaf'>(xs!.values[at]!, ys!.values[at]!))
        // seen running down, the clockwise side is on the left
        const away = side === 'clockwise' ? -1 : 1
        expect(laid.x).toBeCloseTo(20 + away * (i + 0.5), 4)
        expect(laid.y).toBeCloseTo(-60 + j + 0.5, 4)
      }
      const box = stripBox(seam, side, leafToPanel)
      expect([box.max.x - box.min.x, box.max.y - box.min.y]).toEqual([20, 124])
    }
  })
})

describe('scores of a window', () => {
  const crownAt = (middle: number, strength: number): GreyPicture => ({
    width: 120,
    height: 200,
    pxPerMm: 1,
    origin: point(0, 0),
    values: Float32Array.from({ length: 24_000 }, (_, i) => {
      const [x, y] = [(i % 120) - middle, Math.floor(i / 120)]
      return strength * Math.sin((y + (x * x) / 40) / 4)
    }),
    known: new Uint8Array(24_000).fill(1),
  })

  it('[R5] symmetry and liveliness', () => {
    expect(symmetryScore(crownAt(59.5, 0.1))).toBeCloseTo(1, 6)
    expect(symmetryScore(crownAt(20, 0.1))!).toBeLessThan(0.3)
    expect(livelinessScore(crownAt(59.5, 0.2))!).toBeCloseTo(2 * livelinessScore(crownAt(59.5, 0.1))!, 6)
    expect(livelinessScore({ ...crownAt(0, 1), known: new Uint8Array(24_000) })).toBeNull()
  })
})
