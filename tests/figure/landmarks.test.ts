/**
 * [R12] The tip of a crown is found on the line where the rings of the log are met farthest from the bark, points to the end
 *   to which the log says, and no crown is found where stripes run straight through.
 * [R13] Landmarks move with the wood: where more of the leaf is looked at, or it lies in a shadow, they stay where they are.
 * [R14] Stripes are placed on the dark lines that run over the end of a window, the darkest first, to half a millimetre; steep sides
 *   are no ends. Knots are those marked on the leaf, and no crown is seen in the grain that bends round one.
 */
import { describe, expect, it } from 'vitest'
import { greyOf, type GreyPicture } from '../../src/core/figure/align/grey'
import { crownTip } from '../../src/core/figure/landmarks/crown-tip'
import { findLandmarks } from '../../src/core/figure/landmarks/find-landmarks'
import { stripesOver } from '../../src/core/figure/landmarks/stripes'
import { leafPixels } from '../../src/core/figure/log/leaf-pixels'
import { faceDepth, type Log } from '../../src/core/figure/log/log'
import { acrossAt } from '../../src/core/figure/log/slicing'
import { findSpot, sectionAt } from '../../src/core/figure/log/trunk'
import { boxRing } from '../../src/core/geometry/box'
import { point, type Point } from '../../src/core/geometry/point'
import { logOf } from './known-shifts'

const pictureOf = (log: Log, leaf: number, from: number, length: number): GreyPicture => {
  const box = { min: point<'leaf'>(60, from), max: point<'leaf'>(Math.min(260, log.width - 4), from + length) }
  return greyOf(leafPixels(log, leaf, { pxPerMm: 0.5, box }), 0.5, box.min)
}

/** The ring that the log's definition puts at a place of a leaf, knots and fraying of the fibre left out. */
function ringAt(log: Log, leaf: number, { x, y }: Point<'leaf'>): number {
  const spot = { ring: 0, depth: 0 }
  const at = acrossAt(log.slicing, faceDepth(log, leaf, 'numbered'), x - log.left)
  findSpot(log.trunk, log.noise, sectionAt(log.trunk, log.noise, y), at.x, at.y, spot)
  return spot.ring
}

/** Where, across a leaf, the knife comes nearest to the pith: the line on which all crowns have their tips. */
function crownLine(log: Log, leaf: number, y: number): Point<'leaf'> {
  const places = Array.from({ length: 400 }, (_, i) => point<'leaf'>(60 + i / 2, y))
  return places.reduce((best, p) => (ringAt(log, leaf, p) < ringAt(log, leaf, best) ? p : best))
}

describe('crown tips', () => {
  it.each([
    { species: 'walnut', seed: 4177, leaf: 3, from: 340 },
    { species: 'walnut', seed: 9001, leaf: 12, from: 340 },
    { species: 'maple', seed: 9018, leaf: 7, from: 1600 },
  ] as const)('[R12] $species $seed, leaf $leaf', ({ species, seed, leaf, from }) => {
    const log = logOf(species, seed)
    const tip = crownTip(pictureOf(log, leaf, from, 420))!
    const line = crownLine(log, leaf, tip.at.y)
    expect(Math.abs(tip.at.x - line.x)).toBeLessThan(6)
    const along = (by: number) => ringAt(log, leaf, point(line.x, tip.at.y + by))
    // outside a tip lie younger rings: where they grow towards the far end, the tip points there
    expect(tip.end).toBe(along(20) > along(-20) ? 'far' : 'near')
  })

  it.each(['oak', 'sapele'] as const)('[R12] none on quartered %s', (species) => {
    expect(crownTip(pictureOf(logOf(species, 9001), 5, 500, 420))).toBeNull()
  })

  it('[R13] stay where they are', () => {
    const log = logOf('walnut', 4177)
    const window = boxRing({ min: point<'leaf'>(90, 400), max: point<'leaf'>(240, 720) })
    const [one, other] = [pictureOf(log, 3, 370, 390), pictureOf(log, 3, 346, 440)]
    const dusk = other.values.map((value, i) => value - 0.4 * ((i % other.width) / other.width))
    const [found, again] = [one, { ...other, values: dusk }].map((picture) => findLandmarks(picture, window, []))
    expect(found!.map(({ kind }) => kind)).toEqual(['crown tip', 'stripe', 'stripe', 'stripe', 'stripe'])
    expect(again!.map(({ kind }) => kind)).toEqual(found!.map(({ kind }) => kind))
    for (const [i, { at }] of found!.entries())
      expect(Math.hypot(at.x - again![i]!.at.x, at.y - again![i]!.at.y)).toBeLessThan(2.1)
  })
})

/** Light wood with dark lines that lean a little, of the depths given by where they cross y = 100. */
const lined = (lines: Readonly<Record<number, number>>): GreyPicture => ({
  width: 200,
  height: 200,
  pxPerMm: 1,
  origin: point(10, 20),
  values: Float32Array.from({ length: 40_000 }, (_, i) => {
    const [x, y] = [(i % 200) + 10.5, Math.floor(i / 200) + 20.5]
    const off = (line: number) => x - line - (y - 100) / 40
    return (
      5 -
      Object.entries(lines).reduce((sum, [line, dark]) => sum + dark * Math.exp(-((off(Number(line)) / 1.5) ** 2)), 0)
    )
  }),
  known: new Uint8Array(40_000).fill(1),
})

describe('stripes and knots', () => {
  const picture = lined({ 44: 0.2, 80.3: 0.5, 96: 0.45, 131.7: 0.3, 205: 0.9 })
  const window = boxRing({ min: point<'leaf'>(40, 100), max: point<'leaf'>(190, 180) })

  it('[R14] the darkest first, apart from each other, inside the window', () => {
    const found = stripesOver(picture, window, 'near', 3).map(({ at }) => at)
    expect(found.map(({ y }) => y)).toEqual([100, 100])
    for (const [i, x] of [80.3, 131.7].entries()) expect(Math.abs(found[i]!.x - x)).toBeLessThan(0.6)
    const [far] = stripesOver(picture, window, 'far', 1)
    expect(far!.end).toBe('far')
    expect(Math.abs(far!.at.x - 82.3)).toBeLessThan(0.6)
  })

  it('[R14] not over the steep sides of a wedge', () => {
    const wedge: readonly Point<'leaf'>[] = [point(115, 40), point(170, 180), point(60, 180)]
    expect(stripesOver(picture, wedge, 'near', 2)).toEqual([])
    expect(stripesOver(picture, wedge, 'far', 2).length).toBe(2)
  })

  it('[R14] knots near the window are told, and hide the grain about them', () => {
    const log = logOf('walnut', 4177)
    const crowned = pictureOf(log, 3, 340, 240)
    const all = boxRing({ min: point<'leaf'>(80, 350), max: point<'leaf'>(250, 570) })
    const tip = findLandmarks(crowned, all, []).find(({ kind }) => kind === 'crown tip')!
    const found = findLandmarks(crowned, all, [tip.at, point(500, 450)])
    expect(found.filter(({ kind }) => kind === 'knot')).toEqual([{ kind: 'knot', at: tip.at }])
    expect(
      found.filter(({ kind, at }) => kind === 'crown tip' && Math.hypot(at.x - tip.at.x, at.y - tip.at.y) < 40),
    ).toEqual([])
  })
})
