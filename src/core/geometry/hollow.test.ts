import { describe, expect, it } from 'vitest'
import { box, chanceFrom, spread, starRing, whole } from '../../../tests/fixtures/geometry/shapes'
import { symmetricDifference, woundRegion } from './clip'
import { gridTwiceArea, toGridRing, type GridRing } from './clip-grid'
import { withHollowsFilled } from './hollow'
import { touchingPath } from './inner-fit-path'
import { point } from './point'
import { regionArea } from './polygon'

const ring = (...points: readonly (readonly [number, number])[]): GridRing => points.map(([x, y]) => ({ x, y }))
const area = (shape: GridRing) => gridTwiceArea(shape) / 2

// each 100 wide and 100 long, hollow from above
const slot = ring([0, 0], [40, 0], [40, 50], [60, 50], [60, 0], [100, 0], [100, 100], [0, 100])
const notch = ring([0, 0], [20, 0], [50, 60], [80, 0], [100, 0], [100, 100], [0, 100])
const slotInNotch = ring(
  [0, 0],
  [10, 0],
  [40, 30],
  [40, 60],
  [60, 60],
  [60, 30],
  [90, 0],
  [100, 0],
  [100, 100],
  [0, 100],
)
const turned = (shape: GridRing): GridRing => shape.map(({ x, y }) => ({ x: 100 - x, y: 100 - y }))

describe('hollows that are too narrow for a piece', () => {
  it.each([
    { what: 'a slot narrower than the piece is filled to its brim', shape: slot, width: 21, left: 10_000 },
    { what: 'a slot as wide as the piece stays', shape: slot, width: 20, left: area(slot) },
    { what: 'a notch without a corner where it is narrower stays', shape: notch, width: 30, left: area(notch) },
    { what: 'a notch narrower than the piece throughout is filled', shape: notch, width: 61, left: 10_000 },
    {
      what: 'a slot is filled up to its last corner where it is narrower',
      shape: slotInNotch,
      width: 40,
      left: area(slotInNotch) + 600,
    },
    { what: 'what was filled is the floor of a larger hollow', shape: slotInNotch, width: 81, left: 10_000 },
    { what: 'a hollow that opens downwards stays', shape: turned(slot), width: 50, left: area(slot) },
    {
      what: 'a shape without hollows stays',
      shape: ring([0, 0], [100, 0], [100, 100], [0, 100]),
      width: 50,
      left: 10_000,
    },
  ])('$what', ({ shape, width, left }) => {
    expect(area(withHollowsFilled(shape, width))).toBe(left)
  })

  it('[G3] when filled are touched in the same positions by a piece with a lower edge that wide', () => {
    const wrong: number[] = []
    let filled = 0
    for (let seed = 1; seed <= 60; seed++) {
      const chance = chanceFrom(seed)
      const shape = toGridRing(starRing(chance, point(0, 0), 60, whole(chance, 6, 40)))
      const width = spread(chance, 2, 40)
      const less = withHollowsFilled(shape, Math.round(width * 1000))
      const piece = toGridRing(box(-width / 2, -8, width / 2, 8))
      const touched = (of: GridRing) => woundRegion<'leaf'>([touchingPath(of, piece)])
      if (area(less) > area(shape)) filled++
      if (regionArea(symmetricDifference(touched(shape), touched(less))) > 0.01) wrong.push(seed)
    }
    expect(wrong).toEqual([])
    expect(filled).toBeGreaterThan(20)
  })
})
