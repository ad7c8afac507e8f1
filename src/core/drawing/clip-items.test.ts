/**
 * [T8] What is cut at the edge of a box lies exactly on that edge, and points inside are left untouched.
 * [T9] Two boxes side by side share a drawing between them: lengths of strokes and areas of fills add up.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { distance, point, type Point } from '../geometry/point'
import { signedArea } from '../geometry/polygon'
import { arc, circle, closedLine, fill, line, text } from './build'
import { clippedItems, clippedRing, clippedSegment } from './clip-items'
import type { Arc, Item, Line, Picture } from './drawing'
import { itemBox } from './item-box'

const p = (x: number, y: number) => point<'sheet'>(x, y)
const box = { min: p(0, 0), max: p(100, 60) }

const strokeLength = (items: readonly Item[]): number =>
  items.reduce((sum, item) => {
    if (item.kind === 'arc') return sum + item.radius * (item.to - item.from)
    if (item.kind !== 'line') return sum
    const ring = item.closed ? [...item.points, item.points[0]!] : item.points
    return sum + ring.slice(1).reduce((length, q, i) => length + distance(ring[i]!, q), 0)
  }, 0)

describe('lines', () => {
  it.each([
    { is: 'across', a: p(-10, 30), b: p(110, 30), cut: [p(0, 30), p(100, 30)] },
    { is: 'from inside out', a: p(50, 30), b: p(50, 90), cut: [p(50, 30), p(50, 60)] },
    { is: 'slanted', a: p(-20, 10), b: p(20, 30), cut: [p(0, 20), p(20, 30)] },
    { is: 'along the edge', a: p(-5, 60), b: p(40, 60), cut: [p(0, 60), p(40, 60)] },
    { is: 'outside', a: p(-5, 61), b: p(40, 61), cut: null },
    { is: 'touching a corner', a: p(-10, 10), b: p(10, -10), cut: null },
    { is: 'ending on the edge from outside', a: p(-10, 10), b: p(0, 10), cut: null },
  ])('[T8] a segment $is', ({ a, b, cut }) => expect(clippedSegment(a, b, box)).toEqual(cut))

  it('[T8] a closed line inside stays closed; one cut through becomes open pieces, joined over its first corner', () => {
    const inside = closedLine('cut', [p(10, 10), p(20, 10), p(20, 20)])
    expect(clippedItems([inside], box)).toEqual([inside])
    const [one, ...rest] = clippedItems(
      [closedLine('cut', [p(50, 10), p(50, 50), p(-20, 50), p(-20, 10)])],
      box,
    ) as Line[]
    expect(rest).toEqual([])
    expect(one).toMatchObject({ closed: false, points: [p(0, 10), p(50, 10), p(50, 50), p(0, 50)] })
  })

  it('[T8] dashes go on in step', () => {
    const dashed = line('seam', [p(-30, 30), p(-30, 10), p(50, 10)], { dash: [3, 1] })
    expect(clippedItems([dashed], box)).toMatchObject([{ points: [p(0, 10), p(50, 10)], dashFrom: 50 }])
  })
})

describe('arcs', () => {
  it('[T8] a circle over a corner leaves its quarter', () => {
    const [quarter, ...rest] = clippedItems([circle('cut', p(100, 60), 20)], box) as Arc[]
    expect(rest).toEqual([])
    expect(quarter!.from).toBeCloseTo(Math.PI, 12)
    expect(quarter!.to).toBeCloseTo(1.5 * Math.PI, 12)
  })

  it('a whole circle inside stays whole; one round the box is dropped', () => {
    const inside = circle('cut', p(50, 30), 20)
    expect(clippedItems([inside], box)).toEqual([inside])
    expect(clippedItems([circle('cut', p(50, 30), 200)], box)).toEqual([])
  })
})

describe('fills, texts, pictures', () => {
  it('[T8] a triangle is cut to its part', () => {
    const [cut] = clippedItems([fill('wood', [p(-50, 10), p(50, 10), p(-50, 50)])], box)
    expect(cut).toMatchObject({ points: [p(0, 10), p(50, 10), p(0, 30)] })
    expect(clippedItems([fill('wood', [p(-50, 10), p(0, 10), p(-50, 50)])], box)).toEqual([])
  })

  it('a text is kept where any of its room is inside', () => {
    expect(clippedItems([text(p(98, 62), 'over the corner')], box)).toHaveLength(1)
    expect(clippedItems([text(p(98, 70), 'below')], box)).toEqual([])
  })

  it('a picture gets the clip of its part', () => {
    const picture: Picture = {
      kind: 'picture',
      layer: 'wood',
      bytes: new Uint8Array(),
      type: 'png',
      unitToSheet: { a: 80, b: 0, c: 0, d: 40, e: 60, f: 40 },
      clip: null,
    }
    expect(clippedItems([picture], box)).toMatchObject([{ clip: [p(60, 40), p(100, 40), p(100, 60), p(60, 60)] }])
  })
})

describe('shared between two boxes', () => {
  const coordinate = fc.double({ min: -80, max: 180, noNaN: true })
  const points = fc.array(
    fc.tuple(coordinate, coordinate).map(([x, y]) => p(x, y)),
    { minLength: 3, maxLength: 8 },
  )
  const world = { min: p(-1000, -1000), max: p(1000, 1000) }
  const left = { min: world.min, max: p(37, 1000) }
  const right = { min: p(37, -1000), max: world.max }

  it('[T9] strokes: the lengths add up and every piece is inside', () => {
    const round = fc.tuple(
      coordinate,
      coordinate,
      fc.double({ min: 1, max: 90, noNaN: true }),
      fc.double({ min: -7, max: 7, noNaN: true }),
      fc.double({ min: 0.1, max: 2 * Math.PI, noNaN: true }),
    )
    fc.assert(
      fc.property(points, fc.boolean(), round, (ring, closed, [x, y, r, from, sweep]) => {
        const items: Item[] = [
          closed ? closedLine('cut', ring) : line('cut', ring),
          arc('cut', p(x, y), r, from, from + sweep),
        ]
        const [one, two] = [clippedItems(items, left), clippedItems(items, right)]
        expect(strokeLength(one) + strokeLength(two)).toBeCloseTo(strokeLength(items), 6)
        for (const item of one) expect(itemBox(item).max.x).toBeLessThanOrEqual(37 + 1e-9)
        for (const item of two) expect(itemBox(item).min.x).toBeGreaterThanOrEqual(37 - 1e-9)
      }),
    )
  })

  it('[T9] fills: the areas add up', () => {
    const area = (ring: readonly Point<'sheet'>[]) => signedArea(ring)
    fc.assert(
      fc.property(points, (ring) => {
        expect(area(clippedRing(ring, left)) + area(clippedRing(ring, right))).toBeCloseTo(area(ring), 6)
      }),
    )
  })
})
