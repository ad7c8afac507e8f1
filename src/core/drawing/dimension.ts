import { add, distance, point, scale, subtract, type Point } from '../geometry/point'
import { arrowHead, line, text, PENS } from './build'
import { SMALLEST_TEXT, type Fill, type Layer, type Line, type Text } from './drawing'
import { CAP_HEIGHT, textWidth } from './text-width'

export interface Dimension {
  readonly from: Point<'sheet'>
  readonly to: Point<'sheet'>
  /** The number as it is to be read. */
  readonly words: string
  /** How far beside the two points the line runs, mm: to the right of one who walks from `from` to `to` if positive. */
  readonly offset: number
  readonly layer?: Layer
  readonly size?: number
  readonly weight?: Text['weight']
}

/** Length of an arrow head, clearance of an extension line from its point, and how far it runs past the line. */
const HEAD = 2.5
const CLEAR = 1
const PAST = 1.5

/**
 * A dimension line beside two points: extension lines, arrow heads and the number. The number stands in a gap
 * of the line; where the gap and the heads do not go between the points, the heads come from outside and the
 * number stands past `to`. It is never upside down: read from below, or from the right on an upright line.
 */
export function dimensionLine(dimension: Dimension): (Line | Fill | Text)[] {
  const { from, to, words, offset, layer = 'text', size = SMALLEST_TEXT, weight = 'regular' } = dimension
  const length = distance(from, to)
  const along = length > 0 ? scale(subtract(to, from), 1 / length) : point<'sheet'>(1, 0)
  const beside = point<'sheet'>(-along.y, along.x)
  const [a, b] = [add(from, scale(beside, offset)), add(to, scale(beside, offset))]
  const angle = Math.atan2(along.y, along.x)
  const gap = textWidth(words, size, weight) + size * 0.8
  const within = length >= gap + 2 * HEAD + 2

  const at = (distanceAlong: number) => add(a, scale(along, distanceAlong))
  const centre = within ? length / 2 : length + 2 * HEAD + gap / 2
  const strokes = within
    ? [line(layer, [at(HEAD), at((length - gap) / 2)]), line(layer, [at((length + gap) / 2), at(length - HEAD)])]
    : [line(layer, [at(-2 * HEAD), at(-HEAD)]), line(layer, [at(length + HEAD), at(length + 2 * HEAD)])]
  const [atA, atB] = within ? [angle + Math.PI, angle] : [angle, angle + Math.PI]
  return [
    ...extensionLines(dimension, beside, layer),
    ...strokes,
    arrowHead(layer, a, atA, HEAD),
    arrowHead(layer, b, atB, HEAD),
    numberOn(at(centre), words, angle, { layer, size, weight }),
  ]
}

function extensionLines({ from, to, offset }: Dimension, beside: Point<'sheet'>, layer: Layer): Line[] {
  if (Math.abs(offset) <= CLEAR) return []
  const way = scale(beside, Math.sign(offset))
  return [from, to].map((p) =>
    line(layer, [add(p, scale(way, CLEAR)), add(p, scale(way, Math.abs(offset) + PAST))], { pen: PENS.mark }),
  )
}

/** The number with its middle at `centre`, along the line, turned so that it can be read. */
function numberOn(
  centre: Point<'sheet'>,
  words: string,
  angle: number,
  style: { readonly layer: Layer; readonly size: number; readonly weight: Text['weight'] },
): Text {
  const readable = readingAngle(angle)
  const down = point<'sheet'>(-Math.sin(readable), Math.cos(readable))
  const baseline = add(centre, scale(down, (style.size * CAP_HEIGHT) / 2))
  return text(baseline, words, { ...style, anchor: 'middle', angle: readable })
}

/** The angle or the one opposite, whichever reads from below, or from the right where the line is upright: from −90° to just under 90°. */
export function readingAngle(angle: number): number {
  const turns = angle / (2 * Math.PI)
  const between = (turns - Math.round(turns)) * 2 * Math.PI
  if (between >= Math.PI / 2 - 1e-9) return between - Math.PI
  return between < -Math.PI / 2 - 1e-9 ? between + Math.PI : between
}
