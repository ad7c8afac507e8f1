/**
 * [D11] A drawing is moved, turned, scaled evenly or mirrored; a mirrored text keeps its letters as they are read
 *   and covers the place of its mirror image; an arc stays clockwise over the same points.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import { compose, reflection, rotation, transformPoint, translation, type Transform } from '../geometry/transform'
import { arc, line, text } from './build'
import type { Arc, Line, Text } from './drawing'
import { itemBox, pointOnArc } from './item-box'
import { placed } from './placed'
import { CAP_HEIGHT } from './text-width'

type Move = Transform<'sheet', 'sheet'>
const p = (x: number, y: number) => point<'sheet'>(x, y)
const leftRight: Move = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 }
const upDown: Move = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 }

describe('placed', () => {
  it('[D11] turned by a quarter, lines and texts turn together', () => {
    const [stroke, words] = placed(
      [line('cut', [p(0, 0), p(10, 0)]), text(p(10, 0), 'a')],
      rotation<'sheet', 'sheet'>(Math.PI / 2),
    )
    expect((stroke as Line).points[1]!.y).toBeCloseTo(10, 12)
    expect((words as Text).angle).toBeCloseTo(Math.PI / 2, 12)
  })

  it('[D11] an arc passes the same points, clockwise, however it is moved', () => {
    const angle = fc.double({ min: -4, max: 4, noNaN: true })
    fc.assert(
      fc.property(
        angle,
        angle,
        fc.double({ min: 0.1, max: 6, noNaN: true }),
        fc.boolean(),
        (turn, from, sweep, mirror) => {
          const turned = compose(translation<'sheet', 'sheet'>(7, -3), rotation<'sheet', 'sheet'>(turn))
          const move = mirror ? compose(reflection(p(1, 2), p(4, -1)), turned) : turned
          const before = arc('cut', p(20, 5), 8, from, from + sweep)
          const [after] = placed([before], move) as Arc[]
          expect(after!.to - after!.from).toBeCloseTo(sweep, 9)
          for (const share of [0, 0.3, 1]) {
            const wanted = transformPoint(move, pointOnArc(before, from + share * sweep))
            const found = pointOnArc(after!, after!.from + (mirror ? 1 - share : share) * sweep)
            expect(found.x).toBeCloseTo(wanted.x, 9)
            expect(found.y).toBeCloseTo(wanted.y, 9)
          }
        },
      ),
    )
  })

  it.each([
    { mirrored: 'left to right', move: leftRight, words: text(p(10, 20), 'Leaf 7'), anchor: 'end', angle: 0 },
    { mirrored: 'top to bottom', move: upDown, words: text(p(10, 20), 'Leaf 7'), anchor: 'start', angle: 0 },
    {
      mirrored: 'upright, left to right',
      move: leftRight,
      words: text(p(10, 20), 'Leaf 7', { angle: -Math.PI / 2 }),
      anchor: 'start',
      angle: -Math.PI / 2,
    },
    {
      mirrored: 'upright, top to bottom',
      move: upDown,
      words: text(p(10, 20), 'Leaf 7', { angle: -Math.PI / 2 }),
      anchor: 'end',
      angle: -Math.PI / 2,
    },
  ])(
    '[D11] a text mirrored $mirrored is read as before, in the place of its image',
    ({ move, words, anchor, angle }) => {
      const [found] = placed([words], move) as Text[]
      expect(found!.anchor).toBe(anchor)
      expect(found!.angle).toBeCloseTo(angle, 9)
      // the capitals alone: what hangs below the baseline is on the other side of the image
      const capitals = (item: Text) => {
        const { min, max } = itemBox(item)
        const hang = item.size * 0.21
        return Math.abs(Math.sin(item.angle)) > 0.5
          ? { min, max: p(max.x - hang, max.y) }
          : { min, max: p(max.x, max.y - hang) }
      }
      const [before, after] = [capitals(words), capitals(found!)]
      const image = [before.min, before.max].map((corner) => transformPoint(move, corner))
      expect(after.min.x).toBeCloseTo(Math.min(image[0]!.x, image[1]!.x), 9)
      expect(after.max.x).toBeCloseTo(Math.max(image[0]!.x, image[1]!.x), 9)
      expect(after.min.y).toBeCloseTo(Math.min(image[0]!.y, image[1]!.y), 9)
      expect(after.max.y).toBeCloseTo(Math.max(image[0]!.y, image[1]!.y), 9)
      expect(CAP_HEIGHT).toBeGreaterThan(0)
    },
  )

  it('[D11] scaled, the text is scaled and the pen is not; stretched is refused', () => {
    const half: Move = { a: 0.5, b: 0, c: 0, d: 0.5, e: 0, f: 0 }
    expect(
      placed([text(p(2, 2), 'a', { size: 8 }), line('cut', [p(0, 0), p(4, 0)], { pen: 0.3 })], half),
    ).toMatchObject([
      { size: 4, at: p(1, 1) },
      { pen: 0.3, points: [p(0, 0), p(2, 0)] },
    ])
    expect(() => placed([], { ...half, d: 1 })).toThrow(/stretched/)
  })
})
