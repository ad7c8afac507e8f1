import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import type { Region, Ring } from '../geometry/polygon'
import { clearBand } from './clear-band'

const box = (x1: number, y1: number, x2: number, y2: number): Ring<'leaf'> => [
  point(x1, y1),
  point(x2, y1),
  point(x2, y2),
  point(x1, y2),
]
const leaf = box(0, 0, 200, 1000)
const holed = (...holes: Ring<'leaf'>[]): Region<'leaf'> => [[leaf, ...holes.map((ring) => [...ring].reverse())]]
const slanted: Region<'leaf'> = [[[point(0, 0), point(200, 0), point(180, 1000), point(30, 1000)]]]

describe('clearBand', () => {
  it.each([
    { wood: 'a rectangle', region: [[leaf]] as Region<'leaf'>, from: 100, to: 900, low: 0, high: 200 },
    { wood: 'a rectangle, from end to end', region: [[leaf]] as Region<'leaf'>, from: 0, to: 1000, low: 0, high: 200 },
    { wood: 'a taper', region: slanted, from: 0, to: 500, low: 15, high: 190 },
    { wood: 'a hole within the length', region: holed(box(50, 300, 60, 310)), from: 0, to: 1000, low: 60, high: 200 },
    { wood: 'a hole beyond the length', region: holed(box(50, 300, 60, 310)), from: 400, to: 900, low: 0, high: 200 },
    {
      wood: 'a hole that ends where the length begins',
      region: holed(box(9, 300, 190, 310)),
      from: 310,
      to: 900,
      low: 0,
      high: 200,
    },
    { wood: 'a wide hole', region: holed(box(30, 300, 190, 310)), from: 0, to: 1000, low: 0, high: 30 },
  ])('[F5] $wood: from $low to $high', ({ region, from, to, low, high }) => {
    const band = clearBand(region, from, to)!
    expect([band.low, band.high]).toEqual([expect.closeTo(low, 2), expect.closeTo(high, 2)])
  })

  it.each([
    { wood: 'a length that sticks out at the numbered end', region: [[leaf]] as Region<'leaf'>, from: -5, to: 700 },
    { wood: 'a length that sticks out at the far end', region: [[leaf]] as Region<'leaf'>, from: 400, to: 1005 },
    {
      wood: 'a hole from edge to edge',
      region: [[box(0, 0, 200, 400)], [box(0, 410, 200, 1000)]] as Region<'leaf'>,
      from: 0,
      to: 800,
    },
    { wood: 'no wood', region: [] as Region<'leaf'>, from: 0, to: 800 },
  ])('[F5] $wood: none', ({ region, from, to }) => {
    expect(clearBand(region, from, to)).toBeNull()
  })
})
