import type { Point } from '../../core/geometry/point'
import { ringCovers } from '../../core/geometry/polygon'
import { distanceToEdge } from '../../core/geometry/segment'
import { invert, transformPoint } from '../../core/geometry/transform'
import type { CellId } from '../../core/ids'
import type { BoardTarget, FaceBeside, FaceCell, FaceScene } from '../board-types'
import { MARKER_RADIUS } from '../paint/marks'
import { viewTransform, type View } from '../view'
import type { FaceLayout } from './face-layout'

/** A target for a finger is at least 44 px, for a pointer a little more than what is seen. */
const FINGER = 22
const POINTER = 4

/** The cell whose tag is meant. */
export function tagAt({ tags }: FaceLayout, at: Point<'screen'>, touch: boolean): CellId | null {
  const near = tags.filter(
    ({ x, y, width, height }) =>
      Math.abs(at.x - x) <= Math.max(width / 2 + POINTER, touch ? FINGER : 0) &&
      Math.abs(at.y - y) <= Math.max(height / 2 + POINTER, touch ? FINGER : 0),
  )
  const off = (tag: { x: number; y: number }) => Math.hypot(at.x - tag.x, at.y - tag.y)
  return near.sort((p, q) => off(p) - off(q))[0]?.cell ?? null
}

export function cellAt({ cells }: FaceScene, view: View, at: Point<'screen'>): FaceCell | null {
  const spot = transformPoint(invert(viewTransform<'panel'>(view)), at)
  return cells.find(({ ring }) => ringCovers(ring, spot)) ?? null
}

/** The part beside the face that is meant. */
export function besideAt({ beside }: FaceScene, view: View, at: Point<'screen'>): FaceBeside | null {
  const spot = transformPoint(invert(viewTransform<'panel'>(view)), at)
  return beside.find(({ finished }) => ringCovers(finished, spot)) ?? null
}

/** What lies under the pointer: markers first, then tags, letters and seams, then the wood; null beside it all. */
export function pickFace(
  scene: FaceScene,
  layout: FaceLayout,
  view: View,
  at: Point<'screen'>,
  touch: boolean,
): BoardTarget | null {
  const within = (p: { x: number; y: number }, radius: number) =>
    Math.hypot(at.x - p.x, at.y - p.y) <= (touch ? Math.max(FINGER, radius) : radius + 2)
  const marker = layout.markers.find((mark) => within(mark.at, MARKER_RADIUS))
  if (marker) return { kind: 'finding', number: marker.number }
  const tag = tagAt(layout, at, touch)
  if (tag !== null) return { kind: 'cell', cell: tag }
  const letter = layout.letters.find((placed) => within(placed, placed.radius))
  if (letter) return { kind: 'seam', letter: letter.letter }
  const spot = transformPoint(invert(viewTransform<'panel'>(view)), at)
  const reach = (touch ? 10 : 5) / view.scale
  const seam = scene.seams.find(({ line }) =>
    line.some((b, i) => i > 0 && distanceToEdge({ a: line[i - 1]!, b }, spot) <= reach),
  )
  if (seam) return { kind: 'seam', letter: seam.letter }
  const cell = cellAt(scene, view, at)
  return cell ? { kind: 'cell', cell: cell.id } : null
}
