import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { regionBox } from './box'
import { regionLess } from './clip'
import { erodedByBox, innerFit, innerFitExact } from './inner-fit'
import { point } from './point'
import { regionArea, regionCovers, transformRegion, transformRing, type Region, type Ring } from './polygon'
import { compose, reflection, rotation, translation, type Transform } from './transform'

const box = (left: number, top: number, right: number, bottom: number): Ring<'leaf'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]
const bent: Ring<'leaf'> = [point(0, 0), point(30, 0), point(30, 10), point(10, 10), point(10, 30), point(0, 30)]
const leaf: Region<'leaf'> = [[box(0, 0, 100, 200)]]
const knotted: Region<'leaf'> = [[box(0, 0, 100, 200), box(48, 98, 50, 100)]]
const split: Region<'leaf'> = [[box(0, 0, 100, 90)], [box(0, 110, 100, 200)]]
const joined: Region<'leaf'> = [[box(0, 0, 50, 200)], [box(50, 0, 100, 200)]]
const waisted: Region<'leaf'> = [
  [
    point(0, 0),
    point(100, 0),
    point(100, 80),
    point(60, 80),
    point(60, 120),
    point(100, 120),
    point(100, 200),
    point(0, 200),
    point(0, 120),
    point(40, 120),
    point(40, 80),
    point(0, 80),
  ].map(({ x, y }) => point<'leaf'>(x, y)) as Ring<'leaf'>,
].map((ring) => [ring] as const)

const fits = [
  { what: 'a box on a leaf', region: leaf, piece: box(0, 0, 60, 150), area: 40 * 50, islands: 1 },
  { what: 'a box off its origin', region: leaf, piece: box(500, -70, 560, 80), area: 40 * 50, islands: 1 },
  { what: 'a piece too wide', region: leaf, piece: box(0, 0, 101, 10), area: 0, islands: 0 },
  { what: 'a piece too wide and too long', region: leaf, piece: box(0, 0, 300, 300), area: 0, islands: 0 },
  { what: 'a piece round a knot', region: knotted, piece: box(0, 0, 20, 20), area: 80 * 180 - 22 * 22, islands: 1 },
  // left, right, above and below the knot
  {
    what: 'a knot that parts the play',
    region: knotted,
    piece: box(0, 0, 20, 190),
    area: 28 * 10 + 30 * 10,
    islands: 2,
  },
  { what: 'two halves apart', region: split, piece: box(0, 0, 60, 50), area: 2 * 40 * 40, islands: 2 },
  { what: 'a piece longer than either half', region: split, piece: box(0, 0, 60, 100), area: 0, islands: 0 },
  { what: 'two halves that touch', region: joined, piece: box(0, 0, 60, 50), area: 40 * 150, islands: 1 },
  {
    what: 'a waist that a piece passes',
    region: waisted,
    piece: box(0, 0, 10, 10),
    area: 2 * 90 * 70 + 10 * 50,
    islands: 1,
  },
  { what: 'a waist that it does not', region: waisted, piece: box(0, 0, 30, 30), area: 2 * 70 * 50, islands: 2 },
  { what: 'a bent piece', region: leaf, piece: bent, area: 70 * 170, islands: 1 },
  // the knot may not meet the upright arm, 10 x 30, nor the lying one, 30 x 10, which have the corner in common
  {
    what: 'a bent piece round a knot',
    region: knotted,
    piece: bent,
    area: 70 * 170 - (12 * 32 + 32 * 12 - 12 * 12),
    islands: 1,
  },
  { what: 'a line', region: leaf, piece: [point(0, 0), point(30, 40)] as Ring<'leaf'>, area: 70 * 160, islands: 1 },
  { what: 'a flat box', region: leaf, piece: box(0, 0, 30, 0), area: 70 * 200, islands: 1 },
  { what: 'a point', region: knotted, piece: [point(1, 1)] as Ring<'leaf'>, area: 100 * 200 - 4, islands: 1 },
]

describe('inner fit', () => {
  it.each(fits)('[G3] $what: $area mm² of play', ({ region, piece, area, islands }) => {
    const fit = innerFit(region, piece)
    expect(regionArea(fit)).toBeCloseTo(area, 6)
    expect(fit.length).toBe(islands)
  })

  it.each(fits)('[G3] $what, moved, turned and mirrored', ({ region, piece, area, islands }) => {
    const moved: Transform<'leaf', 'leaf'> = compose(
      translation<'leaf'>(-333.3, 71.7),
      compose(rotation<'leaf'>(0.4), reflection<'leaf'>(point(0, 0), point(3, 1))),
    )
    const fit = innerFit(transformRegion(moved, region), transformRing({ ...moved, e: 0, f: 0 }, piece))
    // snapping moves every border by up to 1 µm
    expect(Math.abs(regionArea(fit) - area)).toBeLessThan(1.5)
    expect(fit.length).toBe(islands)
  })

  it('[G3] does not depend on the way the rings run', () => {
    const backwards = knotted.map(([outer, hole]) => [[...outer].reverse(), [...hole!].reverse()] as const)
    expect(regionArea(innerFit(backwards, [...bent].reverse()))).toBe(regionArea(innerFit(knotted, bent)))
  })

  it('[G3] is where the piece lies: the position moves the piece as given', () => {
    const fit = innerFit(leaf, box(10, 10, 70, 160))
    expect(regionBox(fit)).toEqual({ min: { x: -10, y: -10 }, max: { x: 30, y: 40 } })
  })

  it('[G3] gives less room to a larger piece, and the room of two leaves to both', () => {
    const size = fc.integer({ min: 1, max: 90 })
    fc.assert(
      fc.property(size, size, fc.integer({ min: 1, max: 9 }), (w, h, more) => {
        const small = innerFit(knotted, box(0, 0, w, h))
        const large = innerFit(knotted, box(0, 0, w + more, h + more))
        expect(regionArea(large)).toBeLessThan(regionArea(small))
        expect(regionArea(regionLess(large, small))).toBeLessThan(1e-6)
      }),
      { seed: 3, numRuns: 60 },
    )
  })
})

describe('exact fits', () => {
  it.each([
    { what: 'a piece with play', piece: box(0, 0, 90, 190), exact: false, width: 10, height: 10 },
    { what: 'a piece as wide as the leaf', piece: box(0, 0, 100, 150), exact: true, width: 0.01, height: 50.01 },
    { what: 'a piece like the leaf', piece: box(0, 0, 100, 200), exact: true, width: 0.01, height: 0.01 },
    { what: 'a line as long as the leaf', piece: box(0, 0, 0, 200), exact: true, width: 100.01, height: 0.01 },
  ])('[G4] $what', ({ piece, exact, width, height }) => {
    const fit = innerFitExact(leaf, piece)
    const { min, max } = regionBox(fit.region)
    expect(fit.exact).toBe(exact)
    expect(max.x - min.x).toBeCloseTo(width, 6)
    expect(max.y - min.y).toBeCloseTo(height, 6)
  })

  it('[G4] finds a bent piece in its own outline, with a sharp corner too', () => {
    const sharp: Ring<'leaf'> = [point(0, 0), point(300, 5), point(0, 10), point(40, 5)]
    for (const ring of [bent, sharp]) {
      const { region, exact } = innerFitExact([[ring]], ring)
      expect(exact).toBe(true)
      expect(regionCovers(region, point(0, 0))).toBe(true)
    }
  })

  it('[G4] invents none where 0.02 mm are lacking, or a knot of 0.1 mm is in the way', () => {
    expect(innerFitExact(leaf, box(0, 0, 100.02, 150))).toEqual({ region: [], exact: false })
    expect(innerFitExact(leaf, box(0, 0, 300, 300))).toEqual({ region: [], exact: false })
    const knot: Region<'leaf'> = [[box(0, 0, 100, 200), box(50, 50, 50.1, 50.1)]]
    expect(innerFitExact(knot, box(0, 0, 100, 200))).toEqual({ region: [], exact: false })
  })
})

describe('margins', () => {
  it.each([
    { dx: 10, dy: 20, area: 80 * 160 },
    { dx: 10, dy: 0, area: 80 * 200 },
    { dx: 0, dy: 20, area: 100 * 160 },
    { dx: 0, dy: 0, area: 100 * 200 },
    { dx: 60, dy: 0, area: 0 },
  ])('a leaf of 100 x 200 drawn in by $dx and $dy keeps $area mm²', ({ dx, dy, area }) => {
    expect(regionArea(erodedByBox(leaf, dx, dy))).toBeCloseTo(area, 6)
  })
})
