import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  intersect,
  intersectAll,
  regionLess,
  regionLessOnGrid,
  symmetricDifference,
  unite,
  withoutSlivers,
  woundRegion,
} from './clip'
import { toGridRing } from './clip-grid'
import { point } from './point'
import { regionArea, signedArea, type Region, type Ring } from './polygon'

const box = (left: number, top: number, right: number, bottom: number): Ring<'panel'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]
const reversed = (ring: Ring<'panel'>) => [...ring].reverse()

const square: Region<'panel'> = [[box(0, 0, 10, 10)]]
const beside: Region<'panel'> = [[box(10, 0, 20, 10)]]
const across: Region<'panel'> = [[box(5, 5, 15, 15)]]
const apart: Region<'panel'> = [[box(40, 0, 50, 10)]]
const within: Region<'panel'> = [[box(4, 4, 6, 6)]]
const holed: Region<'panel'> = [[box(0, 0, 10, 10), reversed(box(2, 2, 8, 8))]]

describe('regions combined', () => {
  it.each([
    { what: 'united, overlapping', made: unite(square, across), area: 175, polygons: 1, holes: 0 },
    { what: 'united, side by side', made: unite(square, beside), area: 200, polygons: 1, holes: 0 },
    { what: 'united, apart', made: unite(square, apart), area: 200, polygons: 2, holes: 0 },
    { what: 'united with nothing', made: unite<'panel'>(square, []), area: 100, polygons: 1, holes: 0 },
    { what: 'an island in a hole', made: unite(holed, within), area: 68, polygons: 2, holes: 1 },
    { what: 'united within itself', made: unite([...square, ...across]), area: 175, polygons: 1, holes: 0 },
    { what: 'in both', made: intersect(square, across), area: 25, polygons: 1, holes: 0 },
    { what: 'in both, only touching', made: intersect(square, beside), area: 0, polygons: 0, holes: 0 },
    { what: 'in both, apart', made: intersect(square, apart), area: 0, polygons: 0, holes: 0 },
    { what: 'in all three', made: intersect(square, across, within), area: 1, polygons: 1, holes: 0 },
    { what: 'in both, one with a hole', made: intersect(holed, across), area: 16, polygons: 1, holes: 0 },
    { what: 'less one within', made: regionLess(square, within), area: 96, polygons: 1, holes: 1 },
    { what: 'less one across', made: regionLess(square, across), area: 75, polygons: 1, holes: 0 },
    { what: 'less one apart', made: regionLess(square, apart), area: 100, polygons: 1, holes: 0 },
    { what: 'less itself', made: regionLess(square, square), area: 0, polygons: 0, holes: 0 },
    { what: 'less one within, on the grid', made: regionLessOnGrid(square, within), area: 96, polygons: 1, holes: 1 },
    { what: 'less two, on the grid', made: regionLessOnGrid(square, within, across), area: 72, polygons: 1, holes: 0 },
    { what: 'less one apart, on the grid', made: regionLessOnGrid(square, apart), area: 100, polygons: 1, holes: 0 },
    { what: 'nothing less something', made: regionLess<'panel'>([], square), area: 0, polygons: 0, holes: 0 },
    { what: 'in one but not both', made: symmetricDifference(square, across), area: 150, polygons: 2, holes: 0 },
    { what: 'many', made: intersectAll([square, across, holed]), area: 16, polygons: 1, holes: 0 },
    {
      what: 'many, one with an island',
      made: intersectAll([square, [...holed, ...within]]),
      area: 68,
      polygons: 2,
      holes: 1,
    },
    { what: 'one of many', made: intersectAll([square]), area: 100, polygons: 1, holes: 0 },
    { what: 'none', made: intersectAll<'panel'>([]), area: 0, polygons: 0, holes: 0 },
  ])('[G1] $what: $area mm² in $polygons with $holes holes', ({ made, area, polygons, holes }) => {
    expect(regionArea(made)).toBeCloseTo(area, 9)
    expect(made.length).toBe(polygons)
    expect(made.reduce((sum, [, ...inner]) => sum + inner.length, 0)).toBe(holes)
  })

  it('[G5] turns outer rings positive and holes negative, whatever way they came', () => {
    const wrongWay: Region<'panel'> = [[reversed(box(0, 0, 10, 10)), box(2, 2, 8, 8)]]
    for (const made of [
      unite(wrongWay, apart),
      unite(wrongWay, across),
      regionLess(wrongWay, apart),
      intersectAll([wrongWay]),
    ]) {
      for (const [outer, ...holes] of made) {
        expect(signedArea(outer)).toBeGreaterThan(0)
        for (const hole of holes) expect(signedArea(hole)).toBeLessThan(0)
      }
    }
  })

  it('[G6] snaps to 1 µm and drops repeated points and rings without area', () => {
    const rough: Region<'panel'> = [
      [[point(0.0004, 0), point(10, 0.0002), point(10, 0.0003), point(10, 10), point(0, 10), point(0, 0)]],
      [[point(70, 0), point(80, 0.0001), point(90, 0)]],
    ]
    expect(unite(rough, apart)).toEqual([[box(0, 0, 10, 10)], [box(40, 0, 50, 10)]])
  })

  it('drops slivers and keeps what is wider', () => {
    const sliver: Region<'panel'> = [[box(0, 20, 100, 20.001)]]
    expect(withoutSlivers([...square, ...sliver])).toEqual(square)
    expect(withoutSlivers(sliver, 0.0005)).toEqual(sliver)
  })

  it('[G7] is not led astray by a path that turns back on itself along a level line', () => {
    const there = toGridRing<'panel'>([point(0, 0), point(10, 0), point(10, 5)])
    const path = [
      ...there,
      { x: 9000, y: 5000 },
      { x: 1000, y: 5000 },
      { x: 4000, y: 5000 },
      { x: 4000, y: 12000 },
      { x: 0, y: 12000 },
    ]
    const repeated = [...path.slice(0, 4), path[3]!, ...path.slice(4)]
    expect(regionArea(woundRegion<'panel'>([path]))).toBeCloseTo(10 * 5 + 4 * 7, 9)
    expect(regionArea(woundRegion<'panel'>([repeated]))).toBeCloseTo(10 * 5 + 4 * 7, 9)
  })

  it('[G1] keeps to the laws of sets', () => {
    const side = fc.integer({ min: 1, max: 60 })
    const at = fc.integer({ min: -30, max: 30 })
    const any = fc
      .array(fc.tuple(at, at, side, side), { minLength: 1, maxLength: 4 })
      .map((boxes) =>
        unite(...boxes.map(([x, y, w, h]): Region<'panel'> => [[box(x / 3, y / 3, (x + w) / 3, (y + h) / 3)]])),
      )
    fc.assert(
      fc.property(any, any, (a, b) => {
        const [areaA, areaB] = [regionArea(a), regionArea(b)]
        const both = regionArea(intersect(a, b))
        expect(regionArea(unite(a, b))).toBeCloseTo(areaA + areaB - both, 6)
        expect(regionArea(regionLess(a, b))).toBeCloseTo(areaA - both, 6)
        expect(regionArea(symmetricDifference(regionLessOnGrid(a, b), regionLess(a, b)))).toBeLessThan(0.01)
        expect(regionArea(symmetricDifference(a, b))).toBeCloseTo(areaA + areaB - 2 * both, 6)
        expect(regionArea(intersectAll([a, b]))).toBeCloseTo(both, 6)
      }),
      { seed: 11, numRuns: 150 },
    )
  })
})
