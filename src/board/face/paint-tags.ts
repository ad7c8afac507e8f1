import type { CellId } from '../../core/ids'
import type { FaceScene } from '../board-types'
import type { TagOnTheWay } from '../gestures/swap-leaves'
import { drawMarker, drawTag } from '../paint/marks'
import { strokeLine, traceRing } from '../paint/paths'
import { viewTransform, type View } from '../view'
import type { FaceLayout } from './face-layout'

/** Number tags and numbered remarks. Of a tag that is on its way a pale one stays behind. */
export function paintTags(
  ctx: CanvasRenderingContext2D,
  scene: FaceScene,
  layout: FaceLayout,
  onItsWay: CellId | null,
): void {
  const { selected, colours } = scene
  for (const tag of layout.tags) {
    ctx.globalAlpha = onItsWay === tag.cell ? 0.35 : 1
    drawTag(ctx, tag, colours, selected?.kind === 'cell' && selected.cell === tag.cell)
    ctx.globalAlpha = 1
  }
  for (const { number, at, from } of layout.markers) {
    if (Math.hypot(at.x - from.x, at.y - from.y) > 4) {
      ctx.lineWidth = 1.5
      ctx.strokeStyle = colours.note
      strokeLine(ctx, from, at)
    }
    drawMarker(ctx, at, number, colours, selected?.kind === 'finding' && selected.number === number)
  }
}

/** A tag under the pointer, and the cell it would go to. */
export function paintTagOnTheWay(
  ctx: CanvasRenderingContext2D,
  scene: FaceScene,
  layout: FaceLayout,
  view: View,
  onTheWay: TagOnTheWay,
): void {
  const { colours } = scene
  const target = scene.cells.find(({ id }) => id === onTheWay.onto)
  if (target) {
    ctx.beginPath()
    traceRing(ctx, viewTransform<'panel'>(view), target.ring)
    ctx.globalAlpha = 0.22
    ctx.fillStyle = colours.act
    ctx.fill()
    ctx.globalAlpha = 1
    ctx.lineWidth = 6
    ctx.strokeStyle = 'rgb(255 255 255 / 0.8)'
    ctx.stroke()
    ctx.lineWidth = 3
    ctx.setLineDash([8, 5])
    ctx.strokeStyle = colours.dark ? '#0a6a72' : colours.act
    ctx.stroke()
    ctx.setLineDash([])
  }
  const tag = layout.tags.find(({ cell }) => cell === onTheWay.from)
  if (tag) drawTag(ctx, { ...tag, x: onTheWay.at.x, y: onTheWay.at.y - 6 }, colours, true)
}
