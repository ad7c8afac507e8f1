import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arcPoints, circleOn, circleOutside } from './arc'
import { convexHull, depthBehind, insideHalfPlane } from './convex'
import { grown, movedOut, movedOutWithSources, type Growable } from './offset'
import { distance, point, scale, add } from './point'
import { regionArea, regionCovers, ringCovers, ringEdges, signedArea, type Edge, type Ring } from './polygon'
import { distanceToEdge } from './segment'
import { CHORD_ERROR } from './tolerance'

const box = (left: number, top: number, right: number, bottom: number): Ring<'window'> => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
]

describe('edges moved', () => {
  it('[G9] moves each edge by its own distance: top, right, bottom, left', () => {
    expect(movedOut(box(0, 0, 100, 50), [1, 2, 3, 4])).toEqual(box(-4, -1, 102, 53))
  })

  it.each([
    { what: 'moved in', by: [-1, -2, -3, -4], left: box(4, 1, 98, 47) },
    { what: 'moved in until a line is left', by: [-25, 0, -25, 0], left: null },
    { what: 'moved in beyond itself', by: [-30, -30, -30, -30], left: null },
    { what: 'one edge moved in past the other', by: [0, -120, 0, 0], left: null },
    { what: 'one moved in past where the other was, the other out', by: [0, -120, 0, 40], left: box(-40, 0, -20, 50) },
  ])('[G9] $what', ({ by, left }) => {
    expect(movedOut(box(0, 0, 100, 50), by)).toEqual(left)
  })

  it('[G9] a wedge overruns its apex by j / sin(half its angle), mitred without limit', () => {
    const half = Math.PI / 24
    const wedge: Ring<'window'> = [point(0, 0), point(400 * Math.sin(half), 400), point(-400 * Math.sin(half), 400)]
    const narrow = Math.atan(Math.sin(half))
    const moved = movedOut(wedge, [3, 0, 3])!
    expect(Math.min(...moved.map(({ y }) => y))).toBeCloseTo(-3 / Math.sin(narrow), 9)
  })

  it('[G9] drops edges that the others leave behind, and says where the rest come from', () => {
    const cut: Ring<'window'> = [point(0, 0), point(90, 0), point(100, 10), point(100, 50), point(0, 50)]
    const { ring, sources } = movedOutWithSources(cut, [0, 20, 0, 0, 0])!
    expect(ring).toEqual(box(0, 0, 100, 50))
    expect(sources).toEqual([0, 2, 3, 4])
  })

  it('[G9] of edges in one line the innermost counts', () => {
    const parted: Ring<'window'> = [point(0, 0), point(50, 0), point(100, 0), point(100, 50), point(0, 50)]
    expect(signedArea(movedOut(parted, [5, 2, 0, 0, 0])!)).toBeCloseTo(100 * 52, 9)
    expect(signedArea(movedOut(parted, [2, 5, 0, 0, 0])!)).toBeCloseTo(100 * 52, 9)
  })

  it('[G9] gives what cutting by one half-plane after another gives', () => {
    const coordinate = fc.integer({ min: -100, max: 100 })
    const hulls = fc
      .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 12 })
      .map((list) => convexHull(list.map(([x, y]) => point<'window'>(x, y))))
      .filter((hull) => hull.length > 2)
    const distances = fc.array(fc.integer({ min: -12, max: 12 }), { minLength: 12, maxLength: 12 })
    fc.assert(
      fc.property(hulls, distances, (hull, list) => {
        const by = hull.map((_, i) => list[i % 12]!)
        let left: Ring<'window'> | null = box(-1e6, -1e6, 1e6, 1e6)
        ringEdges(hull).forEach((edge, i) => {
          left = left && insideHalfPlane(left, pushedOut(edge, by[i]!))
        })
        const expected = left ? signedArea(left) : 0
        const moved = movedOut(hull, by)
        const tolerance = 1e-6 * Math.max(1, expected)
        expect(Math.abs((moved ? signedArea(moved) : 0) - expected)).toBeLessThan(tolerance)
      }),
      { seed: 21, numRuns: 1000 },
    )
  })

  it('refuses a list of distances that does not match the edges', () => {
    expect(() => movedOut(box(0, 0, 10, 10), [1, 2, 3])).toThrow('4 edges and 3 distances')
    expect(() => movedOut([...box(0, 0, 10, 10)].reverse(), [1, 1, 1, 1])).toThrow('must run positively')
  })
})

function pushedOut({ a, b }: Edge<'window'>, by: number): Edge<'window'> {
  const length = distance(a, b)
  const out = scale(point<'window'>(b.y - a.y, a.x - b.x), by / length)
  return { a: add(a, out), b: add(b, out) }
}

describe('shapes grown', () => {
  const bent: Ring<'window'> = [point(0, 0), point(30, 0), point(30, 10), point(10, 10), point(10, 30), point(0, 30)]
  const distanceFrom = (shape: Growable<'window'>, x: number, y: number): number => {
    const p = point<'window'>(x, y)
    if (shape.shape === 'spot') return Math.max(0, distance(shape.centre, p) - shape.radius)
    if (shape.shape === 'line') return distanceToEdge({ a: shape.from, b: shape.to }, p)
    return ringCovers(shape.ring, p) ? 0 : Math.min(...ringEdges(shape.ring).map((edge) => distanceToEdge(edge, p)))
  }

  it.each<{ what: string; grows: Growable<'window'>; by: number }>([
    { what: 'a spot', grows: { shape: 'spot', centre: point(5, 6), radius: 8 }, by: 3 },
    { what: 'a spot of no size', grows: { shape: 'spot', centre: point(5, 6), radius: 0 }, by: 12 },
    { what: 'a line', grows: { shape: 'line', from: point(0, 0), to: point(30, 20) }, by: 4 },
    { what: 'a line of no length', grows: { shape: 'line', from: point(5, 5), to: point(5, 5) }, by: 4 },
    { what: 'an area', grows: { shape: 'area', ring: box(0, 0, 30, 20) }, by: 5 },
    { what: 'a bent area', grows: { shape: 'area', ring: bent }, by: 3 },
    { what: 'a bent area running the other way', grows: { shape: 'area', ring: [...bent].reverse() }, by: 7 },
    { what: 'an area grown by little', grows: { shape: 'area', ring: bent }, by: 0.2 },
  ])('[G10] $what grown by $by mm holds all within that distance and nothing much beyond', ({ grows, by }) => {
    const region = grown(grows, by)
    const beyond = CHORD_ERROR + 0.004
    for (let x = -15.13; x < 50; x += 0.77) {
      for (let y = -15.21; y < 50; y += 0.83) {
        const away = distanceFrom(grows, x, y)
        if (away < by) expect(regionCovers(region, point(x, y)), `${x}, ${y}`).toBe(true)
        if (away > by + beyond) expect(regionCovers(region, point(x, y)), `${x}, ${y}`).toBe(false)
      }
    }
    // the border itself: never nearer than asked
    const border = region.flat().flatMap(ringEdges)
    for (const { a, b } of border) {
      const away = distanceFrom(grows, (a.x + b.x) / 2, (a.y + b.y) / 2)
      expect(away).toBeGreaterThan(by - 1e-9)
      expect(away).toBeLessThan(by + beyond)
    }
  })

  it('[G10] grown by nothing, an area stays and a line has none', () => {
    expect(regionArea(grown({ shape: 'area', ring: bent }, 0))).toBeCloseTo(500, 9)
    expect(grown({ shape: 'line', from: point(0, 0), to: point(9, 9) }, 0)).toEqual([])
    expect(grown({ shape: 'spot', centre: point(0, 0), radius: 0 }, 0)).toEqual([])
    expect(() => grown({ shape: 'spot', centre: point(0, 0), radius: 4 }, -1)).toThrow('cannot be grown by -1 mm')
  })
})

describe('circles and arcs', () => {
  it.each([0.02, 0.5, 3, 25, 600, 5000])('[G10] radius %d: within the chord error, on the right side', (radius) => {
    const middles = (ring: Ring<'sheet'>) => ringEdges(ring).map(({ a, b }) => Math.hypot(a.x + b.x, a.y + b.y) / 2)
    const on = circleOn(point<'sheet'>(0, 0), radius)
    for (const { x, y } of on) expect(Math.hypot(x, y)).toBeCloseTo(radius, 9)
    for (const reach of middles(on)) expect(radius - reach).toBeLessThanOrEqual(CHORD_ERROR + 1e-9)
    const outside = circleOutside(point<'sheet'>(0, 0), radius)
    for (const reach of middles(outside)) expect(reach).toBeCloseTo(radius, 9)
    for (const { x, y } of outside) expect(Math.hypot(x, y) - radius).toBeLessThanOrEqual(CHORD_ERROR + 1e-9)
    for (const ring of [on, outside]) expect(signedArea(ring)).toBeGreaterThan(0)
  })

  it('an arc has both its ends, and comes no nearer to its centre than the chord error', () => {
    const arc = arcPoints(point<'sheet'>(10, 0), 100, 0, Math.PI / 2)
    expect(arc[0]).toEqual(point(110, 0))
    expect(arc.at(-1)!.y).toBeCloseTo(100, 9)
    const edges = arc.slice(1).map((b, i) => ({ a: arc[i]!, b }))
    for (const edge of edges) expect(distanceToEdge(edge, point(10, 0))).toBeGreaterThanOrEqual(100 - CHORD_ERROR)
    for (const edge of edges) expect(depthBehind(edge, point(10, 0))).toBeGreaterThan(0)
  })
})
