import { describe, expect, it } from 'vitest'
import { box } from '../../../tests/fixtures/geometry/shapes'
import { toGridPolygons } from './clip-grid'
import { areApart } from './polygons-apart'
import { point } from './point'
import type { Polygon, Ring } from './polygon'

const square: Polygon<'leaf'> = [box(0, 0, 10, 10)]
const holed: Polygon<'leaf'> = [box(0, 0, 10, 10), box(2, 2, 8, 8)]
const bent: Ring<'leaf'> = [point(0, 0), point(20, 0), point(20, 2), point(2, 2), point(2, 20), point(0, 20)]

describe('polygons that keep clear of each other', () => {
  it.each([
    { what: 'side by side', other: [box(11, 0, 20, 10)], one: square, apart: true },
    { what: 'with an edge in common', other: [box(10, 0, 20, 10)], one: square, apart: false },
    { what: 'with a corner in common', other: [box(10, 10, 20, 20)], one: square, apart: false },
    { what: 'crossing', other: [box(5, -5, 6, 15)], one: square, apart: false },
    { what: 'one within the other', other: [box(3, 3, 4, 4)], one: square, apart: false },
    { what: 'one in the hole of the other', other: [box(3, 3, 4, 4)], one: holed, apart: true },
    { what: 'one that touches the hole', other: [box(2, 3, 4, 4)], one: holed, apart: false },
    { what: 'their boxes overlapping only', other: [box(5, 5, 15, 15)], one: [bent] as const, apart: true },
  ] satisfies { what: string; one: Polygon<'leaf'>; other: Polygon<'leaf'>; apart: boolean }[])(
    '[G3] $what: $apart',
    ({ one, other, apart }) => {
      expect(areApart(toGridPolygons([one, other]))).toBe(apart)
      expect(areApart(toGridPolygons([other, one]))).toBe(apart)
    },
  )
})
