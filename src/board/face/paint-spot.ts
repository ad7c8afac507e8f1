import { transformPoint } from '../../core/geometry/transform'
import type { FaceScene } from '../board-types'
import { drawPlate, plateWidth } from '../paint/marks'
import { strokeLine } from '../paint/paths'
import { viewTransform, type View } from '../view'

/** Smaller than this the ring of a patch is not seen, px. */
const LEAST_RING = 9
const ARM = 7

/** The spot that is asked about: a ring as wide as the patch with four arms, and whose wood it is. */
export function paintSpot(ctx: CanvasRenderingContext2D, { spot, colours }: FaceScene, view: View): void {
  if (!spot) return
  const { x, y } = transformPoint(viewTransform<'panel'>(view), spot.at)
  const radius = Math.max(LEAST_RING, spot.radius * view.scale)
  for (const [width, colour] of [
    [5, 'rgb(255 255 255 / 0.85)'],
    [2, '#5a3ea8'],
  ] as const) {
    ctx.lineWidth = width
    ctx.strokeStyle = colour
    ctx.beginPath()
    ctx.arc(x, y, radius, 0, 2 * Math.PI)
    ctx.stroke()
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const)
      strokeLine(
        ctx,
        { x: x + dx * radius, y: y + dy * radius },
        { x: x + dx * (radius + ARM), y: y + dy * (radius + ARM) },
      )
  }
  const width = plateWidth(spot.words, colours, true)
  const room = ctx.canvas.clientWidth
  const at = Math.min(Math.max(x, width / 2 + 4), Math.max(width / 2 + 4, room - width / 2 - 4))
  const above = y - radius - ARM - 17
  const plate = { x: at, y: above < 14 ? y + radius + ARM + 17 : above, width, height: 24 }
  drawPlate(ctx, spot.words, plate, colours, true)
}
