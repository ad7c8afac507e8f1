import { boxCentre, boxHeight, boxWidth, type Box, type Edges } from '../core/geometry/box'
import { point, type Point, type Space } from '../core/geometry/point'
import { transformPoint, type Transform } from '../core/geometry/transform'

/**
 * How a space in mm is seen on a board. `quarter` turns the drawing by a quarter anticlockwise, so that what is at the
 * head comes to lie at the left: a turn, never a mirror.
 */
export interface View {
  /** CSS pixels a mm. */
  readonly scale: number
  /** Where the origin of the space lies on the board, px. */
  readonly x: number
  readonly y: number
  readonly quarter: boolean
}

export interface Size {
  readonly width: number
  readonly height: number
}

/** From mm to the board's pixels. */
export function viewTransform<S extends Space>({ scale, x, y, quarter }: View): Transform<S, 'screen'> {
  return quarter ? { a: 0, b: -scale, c: scale, d: 0, e: x, f: y } : { a: scale, b: 0, c: 0, d: scale, e: x, f: y }
}

/** An upright box, upright again on the screen. */
export function boxOnScreen<S extends Space>(view: View, { min, max }: Box<S>): Box<'screen'> {
  const t = viewTransform<S>(view)
  const [p, q] = [transformPoint(t, min), transformPoint(t, max)]
  return { min: point(Math.min(p.x, q.x), Math.min(p.y, q.y)), max: point(Math.max(p.x, q.x), Math.max(p.y, q.y)) }
}

/** Shows a box as large as it goes within a board, less the margins (px) that are kept for what stands round it. */
export function fitView<S extends Space>(box: Box<S>, room: Size, margins: Edges, quarter: boolean): View {
  const [wide, high] = quarter ? [boxHeight(box), boxWidth(box)] : [boxWidth(box), boxHeight(box)]
  const free = {
    width: Math.max(40, room.width - margins.left - margins.right),
    height: Math.max(40, room.height - margins.top - margins.bottom),
  }
  const scale = Math.min(free.width / Math.max(wide, 1), free.height / Math.max(high, 1))
  const middle = point<'screen'>(margins.left + free.width / 2, margins.top + free.height / 2)
  const centre = transformPoint(viewTransform<S>({ scale, x: 0, y: 0, quarter }), boxCentre(box))
  return { scale, x: middle.x - centre.x, y: middle.y - centre.y, quarter }
}

/** Nearer or farther, the spot under `at` staying where it is; the scale stays within its limits (px a mm). */
export function zoomedAbout(
  view: View,
  at: Point<'screen'>,
  factor: number,
  limits: { readonly min: number; readonly max: number },
): View {
  const scale = Math.min(limits.max, Math.max(limits.min, view.scale * factor))
  const by = scale / view.scale
  return { ...view, scale, x: at.x + (view.x - at.x) * by, y: at.y + (view.y - at.y) * by }
}

export const pannedBy = (view: View, dx: number, dy: number): View => ({ ...view, x: view.x + dx, y: view.y + dy })
