import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { intersect } from './clip'
import { convexHull, convexOverlap, convexOverlapArea, depthBehind, insideHalfPlane, isConvex } from './convex'
import { point } from './point'
import { regionArea, signedArea, type Ring } from './polygon'

const box = (left: number, top: number, right: number, bottom: number): Ring<'panel'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]
const coordinate = fc.integer({ min: -200, max: 200 }).map((n) => n / 4)
const points = fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 14 })
const hulls = points
  .map((list) => convexHull(list.map(([x, y]) => point<'panel'>(x, y))))
  .filter((hull) => hull.length > 2)

describe('convex rings', () => {
  it.each([
    {
      what: 'inner and edge points left out',
      of: [...box(0, 0, 4, 4), point<'panel'>(2, 2), point<'panel'>(2, 0)],
      corners: 4,
      area: 16,
    },
    {
      what: 'points in a line',
      of: [point<'panel'>(0, 0), point<'panel'>(1, 1), point<'panel'>(3, 3)],
      corners: 2,
      area: 0,
    },
    { what: 'one point, three times', of: [1, 1, 1].map((x) => point<'panel'>(x, 5)), corners: 1, area: 0 },
  ])('hull: $what', ({ of, corners, area }) => {
    const hull = convexHull(of)
    expect(hull.length).toBe(corners)
    expect(signedArea(hull)).toBe(area)
  })

  it.each([
    { what: 'a box', ring: box(0, 0, 4, 4), convex: true },
    { what: 'a box running the other way', ring: [...box(0, 0, 4, 4)].reverse(), convex: true },
    { what: 'a dent of half a µm', ring: [...box(0, 0, 4, 4), point<'panel'>(0.0005, 2)], convex: true },
    { what: 'a dent of 5 µm', ring: [...box(0, 0, 4, 4), point<'panel'>(0.005, 2)], convex: false },
    { what: 'a bow tie', ring: [point(0, 0), point(4, 4), point(4, 0), point(0, 4)] as Ring<'panel'>, convex: false },
    { what: 'a line', ring: [point(0, 0), point(4, 4)] as Ring<'panel'>, convex: true },
  ])('$what: convex $convex', ({ ring, convex }) => {
    expect(isConvex(ring)).toBe(convex)
  })

  it('depth is positive inside a ring that runs positively', () => {
    expect(depthBehind({ a: point(0, 0), b: point(4, 0) }, point(1, 3))).toBe(3)
    expect(depthBehind({ a: point(0, 0), b: point(4, 0) }, point(1, -3))).toBe(-3)
  })

  it.each([
    { what: 'cut in two', a: point<'panel'>(0, 1), b: point<'panel'>(9, 1), area: 12 },
    { what: 'all inside', a: point<'panel'>(0, 0), b: point<'panel'>(9, 0), area: 16 },
    { what: 'all outside', a: point<'panel'>(0, 4), b: point<'panel'>(9, 4), area: null },
    { what: 'through two corners', a: point<'panel'>(0, 0), b: point<'panel'>(4, 4), area: 8 },
  ])('half plane, $what: $area', ({ a, b, area }) => {
    const left = insideHalfPlane(box(0, 0, 4, 4), { a, b })
    expect(left && signedArea(left)).toBe(area)
  })

  it('[G8] the overlap of two convex rings is their intersection', () => {
    fc.assert(
      fc.property(hulls, hulls, (a, b) => {
        expect(Math.abs(convexOverlapArea(a, b) - regionArea(intersect([[a]], [[b]])))).toBeLessThan(0.5)
        const overlap = convexOverlap(a, b)
        if (overlap) expect(isConvex(overlap)).toBe(true)
      }),
      { seed: 5, numRuns: 300 },
    )
  })
})
