import { invariant } from '../invariant'
import { point, type Point } from '../geometry/point'
import { compose, transformPoint, transformVector, type Transform } from '../geometry/transform'
import { readingAngle } from './dimension'
import type { Arc, Item, Picture, Text } from './drawing'
import { CAP_HEIGHT } from './text-width'

type Move = Transform<'sheet', 'sheet'>

/**
 * The items moved, turned, mirrored or evenly scaled (nothing else: an arc would not stay one). Pens and dashes
 * keep their width on paper; text is scaled with the rest. Mirrored, a text keeps its letters as they are read
 * and covers the place where its mirror image would be; a picture is mirrored, as wood is when turned over.
 */
export function placed(items: readonly Item[], move: Move): Item[] {
  const size = Math.hypot(move.a, move.b)
  const even = Math.abs(Math.hypot(move.c, move.d) - size) <= 1e-9 * size
  invariant(even && Math.abs(move.a * move.c + move.b * move.d) <= 1e-9 * size * size, 'a drawing is stretched')
  return items.map((item) => placedItem(item, move, size))
}

function placedItem(item: Item, move: Move, size: number): Item {
  switch (item.kind) {
    case 'line':
    case 'fill':
      return { ...item, points: item.points.map((p) => transformPoint(move, p)) }
    case 'arc':
      return placedArc(item, move, size)
    case 'text':
      return isMirrored(move) ? mirroredText(item, move, size) : turnedText(item, move, size)
    case 'picture':
      return placedPicture(item, move)
  }
}

function placedArc(arc: Arc, move: Move, size: number): Arc {
  const turn = Math.atan2(move.b, move.a)
  const mirrored = isMirrored(move)
  return {
    ...arc,
    centre: transformPoint(move, arc.centre),
    radius: arc.radius * size,
    // a mirror sends the direction θ to turn − θ, so the ends change places and the arc stays clockwise
    from: mirrored ? turn - arc.to : turn + arc.from,
    to: mirrored ? turn - arc.from : turn + arc.to,
  }
}

function turnedText(text: Text, move: Move, size: number): Text {
  return {
    ...text,
    at: transformPoint(move, text.at),
    size: text.size * size,
    angle: text.angle + Math.atan2(move.b, move.a),
  }
}

/** Runs along the mirrored baseline, or against it with its anchor at the other end, whichever can be read. */
function mirroredText(text: Text, move: Move, size: number): Text {
  const direction = transformVector(move, point<'sheet'>(Math.cos(text.angle), Math.sin(text.angle)))
  const mirrored = Math.atan2(direction.y, direction.x)
  const angle = readingAngle(mirrored)
  const at = transformPoint(move, text.at)
  const moved = { ...text, size: text.size * size, angle }
  if (Math.cos(angle - mirrored) < 0) return { ...moved, at, anchor: otherEnd[text.anchor] }
  // the mirror image hangs below this baseline: set it lower by the height of the capitals
  return { ...moved, at: loweredBy(at, angle, moved.size * CAP_HEIGHT) }
}

const otherEnd = { start: 'end', middle: 'middle', end: 'start' } as const

const loweredBy = (p: Point<'sheet'>, angle: number, by: number): Point<'sheet'> =>
  point(p.x - Math.sin(angle) * by, p.y + Math.cos(angle) * by)

function placedPicture(picture: Picture, move: Move): Picture {
  return {
    ...picture,
    unitToSheet: compose<'sheet', 'sheet', 'sheet'>(move, picture.unitToSheet),
    clip: picture.clip && picture.clip.map((p) => transformPoint(move, p)),
  }
}

const isMirrored = (move: Move): boolean => move.a * move.d - move.b * move.c < 0
