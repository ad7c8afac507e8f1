/** [D12] The number of a dimension never touches its line, heads or extension lines, and is never upside down. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { distance, point, type Point } from '../geometry/point'
import { ringCovers } from '../geometry/polygon'
import { arrow, crossMark } from './build'
import { dimensionLine, readingAngle } from './dimension'
import type { Fill, Line, Text } from './drawing'
import { textCorners } from './item-box'

const p = (x: number, y: number) => point<'sheet'>(x, y)

describe('dimension line', () => {
  it('[D12] a number with room stands in the gap of its line', () => {
    const items = dimensionLine({ from: p(0, 0), to: p(100, 0), words: '100 mm', offset: 8 })
    const words = items.find((item): item is Text => item.kind === 'text')!
    expect(words).toMatchObject({ text: '100 mm', anchor: 'middle', at: { x: 50 } })
    // the right of one who walks along +x, y down, is below
    expect(words.at.y).toBeGreaterThan(8)
    expect(words.at.y).toBeLessThan(10)
  })

  it('[D12] a number without room stands past the end', () => {
    const words = dimensionLine({ from: p(0, 0), to: p(4, 0), words: '4 mm', offset: 8 }).find(
      (item) => item.kind === 'text',
    )
    expect((words as Text).at.x).toBeGreaterThan(8)
  })

  it('[D12] nothing runs through the number, wherever it is', () => {
    const coordinate = fc.double({ min: -300, max: 300, noNaN: true })
    const offsets = fc.double({ min: 2, max: 30, noNaN: true })
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        offsets,
        fc.boolean(),
        fc.constantFrom('7', '312.5', '17 3/8 in, before trimming'),
        (x, y, by, left, words) => {
          const items = dimensionLine({ from: p(0, 0), to: p(x, y), words, offset: left ? -by : by })
          const room = textCorners(items.find((item): item is Text => item.kind === 'text')!)
          for (const item of items) {
            if (item.kind === 'text') continue
            for (const q of spotsOn(item)) expect(ringCovers(room, q)).toBe(false)
          }
        },
      ),
    )
  })

  it.each([
    [0, 0],
    [Math.PI, 0],
    [Math.PI / 2, -Math.PI / 2],
    [-Math.PI / 2, -Math.PI / 2],
    [0.7 * Math.PI, -0.3 * Math.PI],
    [5 * Math.PI, 0],
  ])('[D12] a line at %d is read at %d', (angle, read) => expect(readingAngle(angle)).toBeCloseTo(read, 9))
})

/** Points along all its sides. */
function spotsOn({ points }: Line | Fill): Point<'sheet'>[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i]!
    const steps = Math.max(2, Math.ceil(distance(a, b)))
    return Array.from({ length: steps + 1 }, (_, k) =>
      p(a.x + ((b.x - a.x) * k) / steps, a.y + ((b.y - a.y) * k) / steps),
    )
  })
}

describe('marks', () => {
  it('an arrow ends in its tip, the shaft at the back of the head', () => {
    const [shaft, head] = arrow('mark', p(0, 0), p(20, 0), { head: 5 })
    expect((shaft as Line).points[1]).toEqual(p(15, 0))
    expect((head as Fill).points[0]).toEqual(p(20, 0))
    expect(arrow('mark', p(0, 0), p(3, 0), { head: 5 })).toHaveLength(1)
  })

  it('a cross has two arms through its middle', () => {
    const [level, upright] = crossMark('mark', p(5, 5), 6)
    expect(level!.points).toEqual([p(2, 5), p(8, 5)])
    expect(upright!.points[0]!.y).toBeCloseTo(2, 12)
  })
})
