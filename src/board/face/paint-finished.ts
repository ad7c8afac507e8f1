import type { FaceScene } from '../board-types'
import { traceRing } from '../paint/paths'
import { viewTransform, type View } from '../view'
import { paintCell } from './paint-cells'

/** How far a leaf that shines all it can goes towards light or dark. */
const LIGHTEST = 0.34
const DARKEST = 0.38

/** The wood of a face trimmed to the finished panel, each leaf shining in its own way. */
export function paintFinishedWood(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, scene.outlines.finished.ring)
  ctx.clip()
  for (const cell of scene.cells) {
    paintCell(ctx, cell, toScreen, scene.colours)
    if (cell.leaf === null || cell.shine === 0) continue
    ctx.beginPath()
    traceRing(ctx, toScreen, cell.ring)
    // lacquered wood lightens towards the colour of the lamp, and darkens without losing its own
    ctx.globalCompositeOperation = cell.shine > 0 ? 'soft-light' : 'multiply'
    ctx.globalAlpha = Math.abs(cell.shine) * (cell.shine > 0 ? 2 * LIGHTEST : DARKEST)
    ctx.fillStyle = cell.shine > 0 ? '#fff3dc' : '#3a2818'
    ctx.fill()
    ctx.globalCompositeOperation = 'source-over'
    ctx.globalAlpha = 1
  }
  ctx.restore()
}

/** The edge of the finished panel. */
export function paintFinishedEdge(ctx: CanvasRenderingContext2D, { outlines, colours }: FaceScene, view: View): void {
  ctx.beginPath()
  traceRing(ctx, viewTransform<'panel'>(view), outlines.finished.ring)
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.dark ? 'rgb(0 0 0 / 0.7)' : 'rgb(40 28 16 / 0.5)'
  ctx.stroke()
}
