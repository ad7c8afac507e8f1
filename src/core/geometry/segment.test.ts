import { describe, expect, it } from 'vitest'
import { point } from './point'
import type { Edge } from './polygon'
import { distanceBetweenEdges, distanceToEdge, edgeCrossing, nearestOnEdge, sharedStretch } from './segment'

const edge = (ax: number, ay: number, bx: number, by: number): Edge<'panel'> => ({ a: point(ax, ay), b: point(bx, by) })

describe('edges', () => {
  it.each([
    { p: point<'panel'>(3, 4), nearest: point<'panel'>(3, 0), away: 4 },
    { p: point<'panel'>(-3, 4), nearest: point<'panel'>(0, 0), away: 5 },
    { p: point<'panel'>(13, -4), nearest: point<'panel'>(10, 0), away: 5 },
  ])('of a level edge, $nearest is nearest to $p', ({ p, nearest, away }) => {
    expect(nearestOnEdge(edge(0, 0, 10, 0), p)).toEqual(nearest)
    expect(distanceToEdge(edge(0, 0, 10, 0), p)).toBe(away)
  })

  it('an edge of no length is a point', () => {
    expect(nearestOnEdge(edge(1, 1, 1, 1), point(4, 5))).toEqual(point(1, 1))
    expect(distanceToEdge(edge(1, 1, 1, 1), point(4, 5))).toBe(5)
  })

  it.each([
    { what: 'crossing', other: edge(4, -5, 4, 5), at: point<'panel'>(4, 0), apart: 0 },
    { what: 'touching with an end', other: edge(4, 0, 4, 5), at: point<'panel'>(4, 0), apart: 0 },
    { what: 'end to end', other: edge(10, 0, 12, 7), at: point<'panel'>(10, 0), apart: 0 },
    { what: 'short of it', other: edge(4, 2, 4, 5), at: null, apart: 2 },
    { what: 'beside it', other: edge(14, -3, 14, 3), at: null, apart: 4 },
    { what: 'parallel', other: edge(0, 3, 10, 3), at: null, apart: 3 },
    { what: 'in one line', other: edge(13, 0, 20, 0), at: null, apart: 3 },
    { what: 'on top of it', other: edge(4, 0, 20, 0), at: null, apart: 0 },
  ])('$what', ({ other, at, apart }) => {
    expect(edgeCrossing(edge(0, 0, 10, 0), other)).toEqual(at)
    expect(distanceBetweenEdges(edge(0, 0, 10, 0), other)).toBe(apart)
    expect(distanceBetweenEdges(other, edge(0, 0, 10, 0))).toBe(apart)
  })
})

describe('[G11] shared stretch of two edges', () => {
  it.each([
    { what: 'the whole of both', other: edge(10, 0, 0, 0), shared: edge(0, 0, 10, 0) },
    { what: 'a part of the longer', other: edge(7, 0, 2, 0), shared: edge(2, 0, 7, 0) },
    { what: 'overlapping at one end', other: edge(15, 0, 6, 0), shared: edge(6, 0, 10, 0) },
    { what: 'a little aside', other: edge(10, 0.0005, 0, 0.0005), shared: edge(0, 0, 10, 0) },
    { what: 'too far aside', other: edge(10, 0.002, 0, 0.002), shared: null },
    { what: 'leaning away', other: edge(10, 0, 0, 0.1), shared: null },
    { what: 'leaning away at the other end', other: edge(10, 0.1, 0, 0), shared: null },
    { what: 'running the same way', other: edge(0, 0, 10, 0), shared: null },
    { what: 'end to end', other: edge(20, 0, 10, 0), shared: null },
    { what: 'apart in one line', other: edge(20, 0, 12, 0), shared: null },
    { what: 'square to it', other: edge(5, 5, 5, -5), shared: null },
    { what: 'of no length', other: edge(5, 0, 5, 0), shared: null },
  ])('$what', ({ other, shared }) => {
    expect(sharedStretch(edge(0, 0, 10, 0), other, 0.001)).toEqual(shared)
  })

  it('is the same on a slope, given in the direction of the first', () => {
    const stretch = sharedStretch(edge(0, 0, 300, 400), edge(600, 800, 150, 200), 0.001)!
    expect(stretch.a.x).toBeCloseTo(150, 9)
    expect(stretch.a.y).toBeCloseTo(200, 9)
    expect(stretch.b).toEqual(point(300, 400))
  })
})
