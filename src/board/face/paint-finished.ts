import type { Transform } from '../../core/geometry/transform'
import type { FaceBeside, FaceCell, FaceScene } from '../board-types'
import { traceRing } from '../paint/paths'
import { viewTransform, type View } from '../view'
import { paintCell } from './paint-cells'

/** How far a leaf that shines all it can goes towards light or dark. */
const LIGHTEST = 0.34
const DARKEST = 0.38

/** The wood of a face trimmed to the finished panel, and of what hangs beside it, each leaf shining in its own way. */
export function paintFinishedWood(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  for (const { finished, cells } of shownFinished(scene)) {
    ctx.save()
    ctx.beginPath()
    traceRing(ctx, toScreen, finished)
    ctx.clip()
    for (const cell of cells) {
      paintCell(ctx, cell, toScreen, scene.colours)
      if (cell.leaf !== null && cell.shine !== 0) paintShine(ctx, cell, toScreen)
    }
    ctx.restore()
  }
}

/** The face and those beside it. */
const shownFinished = ({ outlines, cells, beside }: FaceScene): readonly Pick<FaceBeside, 'finished' | 'cells'>[] => [
  { finished: outlines.finished.ring, cells },
  ...beside,
]

function paintShine(
  ctx: CanvasRenderingContext2D,
  { ring, shine }: FaceCell,
  toScreen: Transform<'panel', 'screen'>,
): void {
  ctx.beginPath()
  traceRing(ctx, toScreen, ring)
  // lacquered wood lightens towards the colour of the lamp, and darkens without losing its own
  ctx.globalCompositeOperation = shine > 0 ? 'soft-light' : 'multiply'
  ctx.globalAlpha = Math.abs(shine) * (shine > 0 ? 2 * LIGHTEST : DARKEST)
  ctx.fillStyle = shine > 0 ? '#fff3dc' : '#3a2818'
  ctx.fill()
  ctx.globalCompositeOperation = 'source-over'
  ctx.globalAlpha = 1
}

/** The edges of the finished panels. */
export function paintFinishedEdge(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  ctx.beginPath()
  for (const { finished } of shownFinished(scene)) traceRing(ctx, viewTransform<'panel'>(view), finished)
  ctx.lineWidth = 1
  ctx.strokeStyle = scene.colours.dark ? 'rgb(0 0 0 / 0.7)' : 'rgb(40 28 16 / 0.5)'
  ctx.stroke()
}
