import { boxAround, type Box } from '../../core/geometry/box'
import { transformPoint, type Transform } from '../../core/geometry/transform'
import { pixelRatio } from '../board-stage'
import type { BoardColours, LeafPicture, LeafWood } from '../board-types'
import { drawGrain, grainPicture } from './draw-grain'
import { pictureLevel } from './picture-levels'

/** How the wood of a leaf is to be drawn. */
export interface WoodDrawing {
  readonly wood: LeafWood
  readonly turnedOver: boolean
  readonly toScreen: Transform<'leaf', 'screen'>
  /** The part of the leaf that can be seen; the rest is passed over. */
  readonly seen: Box<'leaf'>
  readonly colours: BoardColours
}

/** The wood of a leaf: its picture, or grain drawn on bare wood. The caller clips. */
export function drawWood(ctx: CanvasRenderingContext2D, drawing: WoodDrawing): void {
  const picture =
    drawing.wood.picture ?? grainPicture(drawing.wood, scaleOf(drawing.toScreen) * pixelRatio(), drawing.colours)
  if (picture) drawPicture(ctx, picture, drawing)
  else drawGrain(ctx, drawing)
}

/** Px a mm of a map without stretch. */
export const scaleOf = ({ a, b }: Transform<'leaf', 'screen'>): number => Math.hypot(a, b)

function drawPicture(ctx: CanvasRenderingContext2D, leaf: LeafPicture, drawing: WoodDrawing): void {
  const { toScreen, seen, turnedOver } = drawing
  const picture = (turnedOver ? leaf.other : undefined) ?? leaf
  const { bitmap } = picture
  if (bitmap.width === 0 || bitmap.height === 0) return
  const level = pictureLevel(bitmap, (scaleOf(toScreen) * pixelRatio()) / picture.pxPerMm)
  const [perMmX, perMmY] = [
    (level.bitmap.width / bitmap.width) * picture.pxPerMm,
    (level.bitmap.height / bitmap.height) * picture.pxPerMm,
  ]
  const { origin } = picture
  const left = Math.max(0, Math.floor((seen.min.x - origin.x) * perMmX) - 1)
  const top = Math.max(0, Math.floor((seen.min.y - origin.y) * perMmY) - 1)
  const right = Math.min(level.bitmap.width, Math.ceil((seen.max.x - origin.x) * perMmX) + 1)
  const bottom = Math.min(level.bitmap.height, Math.ceil((seen.max.y - origin.y) * perMmY) + 1)
  if (right <= left || bottom <= top) return
  ctx.save()
  const { a, b, c, d, e, f } = toScreen
  ctx.transform(a, b, c, d, e, f)
  ctx.drawImage(
    level.bitmap,
    left,
    top,
    right - left,
    bottom - top,
    origin.x + left / perMmX,
    origin.y + top / perMmY,
    (right - left) / perMmX,
    (bottom - top) / perMmY,
  )
  ctx.restore()
}

/** The box on the leaf of what a ring on the screen side can show. */
export const seenThrough = (ring: readonly { x: number; y: number }[], back: Transform<'panel', 'leaf'>): Box<'leaf'> =>
  boxAround(ring.map((p) => transformPoint(back, p)))
