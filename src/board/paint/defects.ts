import { transformPoint, type Transform } from '../../core/geometry/transform'
import type { Defect, DefectShape } from '../../core/leaves/leaf'
import type { BoardColours } from '../board-types'
import { traceRing } from './paths'

/** The path of a defect; a split is a line, the others are closed. */
export function traceDefect(
  ctx: CanvasRenderingContext2D,
  toScreen: Transform<'leaf', 'screen'>,
  shape: DefectShape,
): void {
  if (shape.shape === 'spot') {
    const { x, y } = transformPoint(toScreen, shape.centre)
    const radius = Math.max(2, shape.radius * Math.hypot(toScreen.a, toScreen.b))
    ctx.moveTo(x + radius, y)
    ctx.arc(x, y, radius, 0, 2 * Math.PI)
  } else if (shape.shape === 'area') {
    traceRing(ctx, toScreen, shape.ring)
  } else {
    const [from, to] = [transformPoint(toScreen, shape.from), transformPoint(toScreen, shape.to)]
    ctx.moveTo(from.x, from.y)
    ctx.lineTo(to.x, to.y)
  }
}

/** A defect outlined with dashes on a pale edge, so that it shows on dark wood and on light. */
export function drawDefect(
  ctx: CanvasRenderingContext2D,
  toScreen: Transform<'leaf', 'screen'>,
  defect: Defect | DefectShape,
  colours: BoardColours,
  selected = false,
): void {
  ctx.save()
  ctx.lineJoin = 'round'
  ctx.lineCap = 'round'
  ctx.beginPath()
  traceDefect(ctx, toScreen, defect)
  if (defect.shape !== 'line') {
    ctx.globalAlpha = selected ? 0.34 : 0.16
    ctx.fillStyle = selected ? colours.act : '#ffffff'
    ctx.fill()
    ctx.globalAlpha = 1
  }
  ctx.lineWidth = selected ? 5 : 3.5
  ctx.strokeStyle = 'rgb(255 255 255 / 0.75)'
  ctx.stroke()
  ctx.lineWidth = selected ? 3 : 1.75
  ctx.setLineDash(defect.shape === 'line' ? [] : [5, 4])
  ctx.strokeStyle = selected ? (colours.dark ? '#0a6a72' : colours.act) : '#3d2a86'
  ctx.stroke()
  ctx.restore()
}
