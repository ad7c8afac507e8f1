import { boxAround, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { transformPoint, type Transform } from '../geometry/transform'
import type { Arc, Item, Picture, Text } from './drawing'
import { CAP_HEIGHT, DESCENT, textWidth } from './text-width'

/** The smallest upright box round the items, pens left out; null if there are none. */
export function itemsBox(items: readonly Item[]): Box<'sheet'> | null {
  const points = items.flatMap((item) => [...itemPoints(item)])
  return points.length > 0 ? boxAround(points) : null
}

/** The smallest upright box round an item, its pen left out. */
export const itemBox = (item: Item): Box<'sheet'> => boxAround(itemPoints(item))

/** Points whose box is the item's. */
function itemPoints(item: Item): readonly Point<'sheet'>[] {
  switch (item.kind) {
    case 'line':
    case 'fill':
      return item.points
    case 'arc':
      return arcPoints(item)
    case 'text':
      return textCorners(item)
    case 'picture':
      return pictureCorners(item)
  }
}

/** The point of a circle in the direction `angle`. */
export const pointOnArc = ({ centre, radius }: Arc, angle: number): Point<'sheet'> =>
  point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle))

/** Its two ends and the quarter points that it passes. */
function arcPoints(arc: Arc): Point<'sheet'>[] {
  const points = [pointOnArc(arc, arc.from), pointOnArc(arc, arc.to)]
  const quarter = Math.PI / 2
  const last = Math.min(Math.floor(arc.to / quarter), Math.ceil(arc.from / quarter) + 3)
  for (let k = Math.ceil(arc.from / quarter); k <= last; k++) points.push(pointOnArc(arc, k * quarter))
  return points
}

/** The four corners of the room a text takes, from its top left one clockwise as it is read. */
export function textCorners({ at, text, size, weight, anchor, angle }: Text): Point<'sheet'>[] {
  const width = textWidth(text, size, weight)
  const left = { start: 0, middle: -width / 2, end: -width }[anchor]
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const corner = (x: number, y: number) => point<'sheet'>(at.x + x * cos - y * sin, at.y + x * sin + y * cos)
  const [top, bottom] = [-size * CAP_HEIGHT, size * DESCENT]
  return [corner(left, top), corner(left + width, top), corner(left + width, bottom), corner(left, bottom)]
}

/** The four corners of a picture, from its top left one. */
export function pictureCorners({ unitToSheet }: Picture): Point<'sheet'>[] {
  const corners = [point<'sheet'>(0, 0), point<'sheet'>(1, 0), point<'sheet'>(1, 1), point<'sheet'>(0, 1)]
  return corners.map((p) => transformPoint<'sheet', 'sheet'>(unitToSheet as Transform<'sheet', 'sheet'>, p))
}
