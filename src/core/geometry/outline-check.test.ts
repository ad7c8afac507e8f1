import { describe, expect, it } from 'vitest'
import { checkOutline } from './outline-check'
import { point } from './point'
import { signedArea } from './polygon'

const points = (...pairs: [number, number][]) => pairs.map(([x, y]) => point<'leaf'>(x, y))
const square = points([0, 0], [10, 0], [10, 10], [0, 10])

describe('[G13] an outline that will do', () => {
  it.each([
    { what: 'as it is', given: square },
    { what: 'closed by its first point', given: [...square, square[0]!] },
    { what: 'with points repeated', given: [square[0]!, square[0]!, ...square.slice(1), square[3]!] },
    { what: 'with points less than 1 µm apart', given: [...square, point<'leaf'>(0.0004, 0.0004)] },
  ])('$what', ({ given }) => {
    expect(checkOutline(given)).toEqual({ ok: true, value: square })
  })

  it('is turned to run positively', () => {
    const result = checkOutline([...square].reverse())
    expect(result.ok && signedArea(result.value)).toBe(100)
  })

  it('keeps points on a straight edge', () => {
    const withMiddle = points([0, 0], [5, 0], [10, 0], [10, 10], [0, 10])
    expect(checkOutline(withMiddle)).toEqual({ ok: true, value: withMiddle })
  })
})

describe('[G13] an outline that will not do', () => {
  it.each([
    { what: 'no points', given: points(), reason: 'too few points', at: [0, 0], edges: [0, 0] },
    { what: 'two points', given: points([3, 4], [5, 6], [3, 4]), reason: 'too few points', at: [3, 4], edges: [0, 0] },
    {
      what: 'a point without a number',
      given: points([0, 0], [1, NaN], [2, 2]),
      reason: 'not a number',
      at: [1, NaN],
      edges: [1, 1],
    },
    {
      what: 'a point at infinity',
      given: points([0, 0], [1, 0], [Infinity, 2]),
      reason: 'not a number',
      at: [Infinity, 2],
      edges: [2, 2],
    },
    {
      what: 'a point 40 m away',
      given: points([0, 0], [40000, 0], [0, 5]),
      reason: 'too far out',
      at: [40000, 0],
      edges: [1, 1],
    },
    { what: 'all in one line', given: points([0, 0], [5, 5], [9, 9]), reason: 'no area', at: [0, 0], edges: [0, 0] },
    {
      what: 'narrower than 1 µm',
      given: points([0, 0], [500, 0.0005], [900, 0]),
      reason: 'no area',
      at: [0, 0],
      edges: [0, 0],
    },
    {
      what: 'a bow tie',
      given: points([0, 0], [10, 10], [10, 0], [0, 10]),
      reason: 'crossed',
      at: [5, 5],
      edges: [0, 2],
    },
    {
      what: 'a loop',
      given: points([0, 0], [20, 0], [20, 20], [10, -5], [0, 20]),
      reason: 'crossed',
      at: [12, 0],
      edges: [0, 2],
    },
    {
      what: 'a corner that touches an edge',
      given: points([0, 0], [20, 0], [20, 20], [10, 0], [0, 20]),
      reason: 'crossed',
      at: [10, 0],
      edges: [0, 2],
    },
    {
      what: 'a corner met twice',
      given: points([0, 0], [10, 10], [20, 0], [20, 20], [10, 10], [0, 20]),
      reason: 'crossed',
      at: [10, 10],
      edges: [0, 3],
    },
    {
      what: 'a spike',
      given: points([0, 0], [10, 0], [10, 10], [10, 30], [10, 10], [0, 10]),
      reason: 'crossed',
      at: [10, 10],
      edges: [1, 3],
    },
    {
      what: 'a crossing after a repeated point',
      given: points([0, 0], [0, 0], [10, 10], [10, 0], [0, 10]),
      reason: 'crossed',
      at: [5, 5],
      edges: [0, 3],
    },
  ])('$what: $reason', ({ given, reason, at, edges }) => {
    const result = checkOutline(given)
    expect(result.ok).toBe(false)
    if (result.ok) return
    expect(result.reason.reason).toBe(reason)
    expect(result.reason.at.x).toBeCloseTo(at[0]!, 9)
    if (Number.isFinite(at[1]!)) expect(result.reason.at.y).toBeCloseTo(at[1]!, 9)
    if (reason === 'crossed' || edges[0]) expect(result.reason.edges).toEqual(edges)
  })

  it('[G13] takes an outline of 4000 points within a moment, and finds its one crossing', () => {
    const long = Array.from({ length: 4000 }, (_, i) => {
      const angle = (i / 4000) * 2 * Math.PI
      return point<'leaf'>(2000 * Math.cos(angle), 500 * Math.sin(angle))
    })
    expect(checkOutline(long).ok).toBe(true)
    const crossed = [...long.slice(0, 1000), long[1001]!, long[1000]!, ...long.slice(1002)]
    const result = checkOutline(crossed)
    expect(!result.ok && result.reason).toMatchObject({ reason: 'crossed', edges: [999, 1000] })
  })
})
