import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convexHull } from './convex'
import { movedOut } from './offset'
import { point } from './point'
import { farthestInside, nearestInside, ringCentroid } from './pole'
import { regionCovers, ringEdges, transformRegion, type Region, type Ring } from './polygon'
import { distanceToEdge } from './segment'
import { rotation } from './transform'

const box = (left: number, top: number, right: number, bottom: number): Ring<'leaf'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]
const roomAt = (region: Region<'leaf'>, x: number, y: number) =>
  Math.min(
    ...region
      .flat()
      .flatMap(ringEdges)
      .map((edge) => distanceToEdge(edge, point(x, y))),
  )

describe('[G12] the point farthest from the border', () => {
  it.each<{ what: string; region: Region<'leaf'>; clearance: number }>([
    { what: 'a square', region: [[box(0, 0, 10, 10)]], clearance: 5 },
    { what: 'a strip', region: [[box(0, 0, 1000, 10)]], clearance: 5 },
    { what: 'a triangle', region: [[[point(0, 0), point(30, 0), point(0, 40)]]], clearance: 10 },
    // r from the two sides and from the hole's corner: (49 - r)·√2 = r
    {
      what: 'a square with a hole',
      region: [[box(0, 0, 100, 100), box(49, 49, 51, 51)]],
      clearance: 49 / (1 + Math.SQRT1_2),
    },
    { what: 'the larger of two islands', region: [[box(0, 0, 10, 10)], [box(50, 0, 64, 90)]], clearance: 7 },
    { what: 'the wider of two islands', region: [[box(0, 0, 12, 12)], [box(50, 0, 54, 900)]], clearance: 6 },
    { what: 'a sliver of 10 µm', region: [[box(0, 0, 0.01, 900)]], clearance: 0.005 },
    {
      what: 'a slanting sliver',
      region: transformRegion(rotation<'leaf'>(0.7), [[box(0, 0, 800, 0.01)]]),
      clearance: 0.005,
    },
    { what: 'a triangle of 40 µm', region: [[[point(0, 0), point(0.03, 0), point(0, 0.04)]]], clearance: 0.01 },
    { what: 'a spot of 10 µm', region: [[box(7, 7, 7.01, 7.01)]], clearance: 0.005 },
  ])('$what', ({ region, clearance }) => {
    const pole = farthestInside(region)!
    expect(regionCovers(region, pole.at)).toBe(true)
    expect(pole.clearance).toBeCloseTo(roomAt(region, pole.at.x, pole.at.y), 9)
    expect(Math.abs(pole.clearance - clearance)).toBeLessThan(Math.min(0.05, clearance / 10))
    expect(farthestInside(region)).toEqual(pole)
  })

  it('where there is a choice, takes the middle', () => {
    expect(farthestInside([[box(0, 0, 1000, 10)]])!.at).toEqual(point(500, 5))
  })

  it('of nothing there is none', () => {
    expect(farthestInside([])).toBeNull()
  })

  it('cannot be bettered by more than 0.05 mm: moved in by more, nothing of a convex ring is left', () => {
    const coordinate = fc.integer({ min: -300, max: 300 })
    const hulls = fc
      .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 10 })
      .map((list) => convexHull(list.map(([x, y]) => point<'leaf'>(x, y))))
      .filter((hull) => hull.length > 2)
    fc.assert(
      fc.property(hulls, (hull) => {
        const { clearance } = farthestInside([[hull]])!
        expect(
          movedOut(
            hull,
            hull.map(() => -clearance - 0.051),
          ),
        ).toBeNull()
      }),
      { seed: 9, numRuns: 200 },
    )
  })
})

describe('the nearest point inside', () => {
  const region: Region<'leaf'> = [[box(0, 0, 10, 10), box(4, 4, 6, 6)], [box(20, 0, 30, 10)]]

  it.each([
    { what: 'inside already', p: point<'leaf'>(2, 3), nearest: point<'leaf'>(2, 3) },
    { what: 'beside an island', p: point<'leaf'>(14, 5), nearest: point<'leaf'>(10, 5) },
    { what: 'nearer to the other', p: point<'leaf'>(16, 5), nearest: point<'leaf'>(20, 5) },
    { what: 'off a corner', p: point<'leaf'>(-3, -4), nearest: point<'leaf'>(0, 0) },
    { what: 'in a hole', p: point<'leaf'>(5, 4.5), nearest: point<'leaf'>(5, 4) },
  ])('$what', ({ p, nearest }) => {
    expect(nearestInside(region, p)).toEqual(nearest)
  })

  it('of nothing there is none', () => {
    expect(nearestInside<'leaf'>([], point(0, 0))).toBeNull()
  })
})

it('the centroid of a triangle is the mean of its corners', () => {
  const { x, y } = ringCentroid<'leaf'>([point(1000, 1000), point(1030, 1000), point(1000, 1060)])
  expect(x).toBeCloseTo(1010, 9)
  expect(y).toBeCloseTo(1020, 9)
})
