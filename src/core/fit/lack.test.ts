import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import type { Region, Ring } from '../geometry/polygon'
import { lacksOf } from './lack'

const box = (x1: number, y1: number, x2: number, y2: number): Ring<'leaf'> => [
  point(x1, y1),
  point(x2, y1),
  point(x2, y2),
  point(x1, y2),
]
const leaf: Region<'leaf'> = [[box(0, 0, 200, 700)]]
const leaning: Region<'leaf'> = [[[point(0, 0), point(200, 0), point(200, 700), point(8, 700)]]]
const holed: Region<'leaf'> = [[box(0, 0, 200, 700), [...box(1, 300, 12, 310)].reverse()]]
const wedge: Ring<'leaf'> = [point(100, -20), point(190, 600), point(10, 600)]

const told = (rough: Ring<'leaf'>, usable: Region<'leaf'>) =>
  lacksOf(rough, usable)
    .map(({ side, by }) => `${side} ${by.toFixed(1)}`)
    .sort()

describe('lacksOf', () => {
  it.each([
    { lies: 'within the wood', rough: box(5, 5, 195, 695), lacks: [] },
    { lies: 'exactly on its border', rough: box(0, 0, 200, 700), lacks: [] },
    { lies: '12 mm beyond the numbered end', rough: box(5, -12, 195, 650), lacks: ['numbered end 12.0'] },
    {
      lies: '300 mm beyond the far end, more than it is wide',
      rough: box(40, 100, 160, 1000),
      lacks: ['far end 300.0'],
    },
    { lies: 'beyond both ends', rough: box(5, -400, 195, 1100), lacks: ['far end 400.0', 'numbered end 400.0'] },
    { lies: 'beyond a corner', rough: box(-5, -10, 150, 500), lacks: ['left edge 5.0', 'numbered end 10.0'] },
    {
      lies: 'beyond all four edges',
      rough: box(-5, -10, 206, 707),
      lacks: ['far end 7.0', 'left edge 5.0', 'numbered end 10.0', 'right edge 6.0'],
    },
  ])('[F9] $lies', ({ rough, lacks }) => {
    expect(told(rough, leaf)).toEqual(lacks)
  })

  it('[F9] measures a slanted edge where it cuts deepest', () => {
    expect(told(box(2, 0, 190, 700), leaning)).toEqual(['left edge 6.0'])
  })

  it('[F9] takes a hole for the edge nearest to it', () => {
    expect(told(box(0, 0, 200, 700), holed)).toEqual(['left edge 12.0'])
  })

  it('[F9] measures the tip of a wedge along the grain', () => {
    expect(told(wedge, leaf)).toEqual(['numbered end 20.0'])
  })

  it('[F9] says something of a piece that lies beside its leaf', () => {
    expect(told(box(300, 0, 400, 600), leaf)).toHaveLength(1)
  })

  it('[F9] says nothing of a lack that nobody could cut', () => {
    expect(told(box(-0.01, 0, 190, 600), leaf)).toEqual([])
  })
})
