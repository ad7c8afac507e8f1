import { boxRing, type Box } from '../geometry/box'
import { add, point, scale, type Point } from '../geometry/point'
import { SMALLEST_TEXT, type Arc, type Fill, type Layer, type Line, type Text } from './drawing'

/**
 * The parts of a drawing, with what is usual filled in. Points are mm in the sheet, y down; angles are radians
 * from +x towards +y (clockwise as seen).
 */

/** Pen widths in mm on paper. */
export const PENS: Readonly<Record<Layer, number>> = {
  cut: 0.35,
  seam: 0.25,
  trim: 0.25,
  mark: 0.18,
  text: 0.18,
  wood: 0.18,
}

/** Dash and gap, mm. */
export const DASHED: readonly number[] = [3, 1.5]

export const BLACK = '#000000'

export interface Stroke {
  readonly pen?: number
  readonly dash?: readonly number[] | null
  readonly colour?: string | null
}

/** A stroke through the points. */
export const line = (layer: Layer, points: readonly Point<'sheet'>[], stroke: Stroke = {}): Line => ({
  kind: 'line',
  layer,
  points,
  closed: false,
  pen: stroke.pen ?? PENS[layer],
  dash: stroke.dash ?? null,
  colour: stroke.colour ?? null,
})

/** A stroke through the points and back to the first. */
export const closedLine = (layer: Layer, points: readonly Point<'sheet'>[], stroke: Stroke = {}): Line => ({
  ...line(layer, points, stroke),
  closed: true,
})

/** The outline of a box. */
export const frame = (layer: Layer, box: Box<'sheet'>, stroke: Stroke = {}): Line =>
  closedLine(layer, boxRing(box), stroke)

/** A filled ring, black unless told. */
export const fill = (layer: Layer, points: readonly Point<'sheet'>[], colour: string = BLACK): Fill => ({
  kind: 'fill',
  layer,
  points,
  colour,
})

/** A stroke along a circle, clockwise as seen from one angle to another; `to` is the larger. */
export const arc = (
  layer: Layer,
  centre: Point<'sheet'>,
  radius: number,
  from: number,
  to: number,
  stroke: Omit<Stroke, 'dash'> = {},
): Arc => ({
  kind: 'arc',
  layer,
  centre,
  radius,
  from,
  to,
  pen: stroke.pen ?? PENS[layer],
  colour: stroke.colour ?? null,
})

export const circle = (layer: Layer, centre: Point<'sheet'>, radius: number, stroke: Omit<Stroke, 'dash'> = {}): Arc =>
  arc(layer, centre, radius, 0, 2 * Math.PI, stroke)

export interface TextStyle {
  readonly layer?: Layer
  /** The em in mm. */
  readonly size?: number
  readonly anchor?: Text['anchor']
  readonly angle?: number
  readonly weight?: Text['weight']
  readonly colour?: string | null
}

/** One line of text, `at` on its baseline; 9 pt, regular, from its start unless told. */
export const text = (at: Point<'sheet'>, words: string, style: TextStyle = {}): Text => ({
  kind: 'text',
  layer: style.layer ?? 'text',
  at,
  text: words,
  size: style.size ?? SMALLEST_TEXT,
  anchor: style.anchor ?? 'start',
  angle: style.angle ?? 0,
  weight: style.weight ?? 'regular',
  colour: style.colour ?? null,
})

/** A filled, slim arrow head with its point at `tip`, looking along `angle`; its back is `length` behind. */
export function arrowHead(
  layer: Layer,
  tip: Point<'sheet'>,
  angle: number,
  length = 2.5,
  colour: string = BLACK,
): Fill {
  const along = point<'sheet'>(Math.cos(angle), Math.sin(angle))
  const back = add(tip, scale(along, -length))
  const half = scale(point<'sheet'>(-along.y, along.x), length * 0.18)
  return fill(layer, [tip, add(back, half), add(back, scale(half, -1))], colour)
}

/** A shaft with a head at `to`; only the head if the two are nearer than it is long. */
export function arrow(
  layer: Layer,
  from: Point<'sheet'>,
  to: Point<'sheet'>,
  { head = 4, ...stroke }: Stroke & { readonly head?: number } = {},
): (Line | Fill)[] {
  const angle = Math.atan2(to.y - from.y, to.x - from.x)
  const tip = arrowHead(layer, to, angle, head, stroke.colour ?? BLACK)
  if (Math.hypot(to.x - from.x, to.y - from.y) <= head) return [tip]
  const neck = point<'sheet'>(to.x - Math.cos(angle) * head, to.y - Math.sin(angle) * head)
  return [line(layer, [from, neck], stroke), tip]
}

/** An upright cross, `size` from tip to tip; turned by an eighth it is an ×. */
export function crossMark(
  layer: Layer,
  at: Point<'sheet'>,
  size: number,
  { angle = 0, ...stroke }: Stroke & { readonly angle?: number } = {},
): Line[] {
  return [angle, angle + Math.PI / 2].map((way) => {
    const arm = point<'sheet'>((Math.cos(way) * size) / 2, (Math.sin(way) * size) / 2)
    return line(layer, [add(at, scale(arm, -1)), add(at, arm)], stroke)
  })
}
