import { point, type Point } from '../../core/geometry/point'
import type { Transform } from '../../core/geometry/transform'
import { line, text } from '../../core/drawing/build'
import { SMALLEST_TEXT, type Item } from '../../core/drawing/drawing'
import { placed } from '../../core/drawing/placed'
import { CAP_HEIGHT, textWidth } from '../../core/drawing/text-width'
import { CHECK_BAR } from './correction'

const FOUR_INCHES = 101.6
const TICK = 1.2

/** From the line of the 100 mm bar down to that of the 4 in bar. */
export const BAR_PITCH = 4

/** Two bars to be measured, one under the other, from `at` to the right: 100 mm with what it lies along, and 4 in. */
export const barsAcross = (at: Point<'sheet'>, along: string): Item[] => [
  ...bar(at, CHECK_BAR, `100 mm, ${along}`),
  ...bar(point(at.x, at.y + BAR_PITCH), FOUR_INCHES, '4 in'),
]

/** The same from `at` upwards, the 100 mm bar first from the left; they are read from the right. */
export function barsUp(at: Point<'sheet'>, along: string): Item[] {
  const quarterTurn: Transform<'sheet', 'sheet'> = { a: 0, b: -1, c: 1, d: 0, e: at.x, f: at.y }
  return placed(barsAcross(point(0, 0), along), quarterTurn)
}

/** A line between two ticks, broken for its name: it is measured from tick to tick, middle to middle. */
function bar(at: Point<'sheet'>, length: number, name: string): Item[] {
  const gap = textWidth(name, SMALLEST_TEXT) + 3
  const x = (along: number) => point<'sheet'>(at.x + along, at.y)
  const tick = (along: number) => line('mark', [point(at.x + along, at.y - TICK), point(at.x + along, at.y + TICK)])
  return [
    tick(0),
    line('mark', [x(0), x((length - gap) / 2)]),
    line('mark', [x((length + gap) / 2), x(length)]),
    tick(length),
    text(point(at.x + length / 2, at.y + (SMALLEST_TEXT * CAP_HEIGHT) / 2), name, { anchor: 'middle', layer: 'mark' }),
  ]
}
