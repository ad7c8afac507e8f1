import { boxAround, type Box } from '../../core/geometry/box'
import { transformPoint, type Transform } from '../../core/geometry/transform'
import type { Ring } from '../../core/geometry/polygon'
import { pixelRatio } from '../board-stage'
import type { BoardColours, LeafPicture, LeafWood } from '../board-types'
import { grainLines, RING_SPACING, type GrainLine } from './grain-lines'
import { traceRing } from './paths'
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
  const { picture } = drawing.wood
  if (picture) drawPicture(ctx, picture, drawing)
  else drawGrain(ctx, drawing)
}

/** Px a mm of a map without stretch. */
export const scaleOf = ({ a, b }: Transform<'leaf', 'screen'>): number => Math.hypot(a, b)

function drawPicture(ctx: CanvasRenderingContext2D, picture: LeafPicture, drawing: WoodDrawing): void {
  const { toScreen, seen, turnedOver } = drawing
  const bitmap = (turnedOver ? picture.other : undefined) ?? picture.bitmap
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

const known = new WeakMap<Ring<'leaf'>, Map<string, readonly GrainLine[]>>()

function knownGrain(wood: LeafWood): readonly GrainLine[] {
  const kind = `${wood.cut} ${wood.place}`
  const ofOutline = known.get(wood.outline) ?? new Map<string, readonly GrainLine[]>()
  known.set(wood.outline, ofOutline)
  const found = ofOutline.get(kind) ?? grainLines(wood)
  ofOutline.set(kind, found)
  return found
}

function drawGrain(ctx: CanvasRenderingContext2D, { wood, toScreen, seen, colours }: WoodDrawing): void {
  ctx.fillStyle = colours.wood
  ctx.beginPath()
  traceRing(ctx, toScreen, wood.outline)
  ctx.fill()
  const scale = scaleOf(toScreen)
  ctx.strokeStyle = colours.grain
  ctx.lineCap = 'butt'
  ctx.lineJoin = 'round'
  const inSight = knownGrain(wood).filter(
    ({ minX, maxX, minY, maxY }) => maxX > seen.min.x && minX < seen.max.x && maxY > seen.min.y && minY < seen.max.y,
  )
  // lines closer than they are apart on the screen would only make mud
  const weak = scale * RING_SPACING > 1.6
  for (const strong of weak ? [false, true] : [true]) {
    ctx.globalAlpha = strong ? 0.85 : 0.5
    ctx.lineWidth = Math.min(3, Math.max(strong ? 1 : 0.7, scale * (strong ? 1.7 : 0.9)))
    ctx.beginPath()
    for (const line of inSight) if (line.strong === strong) traceLine(ctx, toScreen, line, seen)
    ctx.stroke()
  }
  ctx.globalAlpha = 1
}

function traceLine(
  ctx: CanvasRenderingContext2D,
  { a, b, c, d, e, f }: Transform<'leaf', 'screen'>,
  { points }: GrainLine,
  { min, max }: Box<'leaf'>,
): void {
  let drawing = false
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!
    const next = points[i + 1] ?? p
    const before = points[i - 1] ?? p
    const isNear =
      Math.max(before.y, p.y, next.y) >= min.y &&
      Math.min(before.y, p.y, next.y) <= max.y &&
      Math.max(before.x, p.x, next.x) >= min.x &&
      Math.min(before.x, p.x, next.x) <= max.x
    if (!isNear) {
      drawing = false
      continue
    }
    const x = a * p.x + c * p.y + e
    const y = b * p.x + d * p.y + f
    if (drawing) ctx.lineTo(x, y)
    else ctx.moveTo(x, y)
    drawing = true
  }
}

/** The box on the leaf of what a ring on the screen side can show. */
export const seenThrough = (ring: readonly { x: number; y: number }[], back: Transform<'panel', 'leaf'>): Box<'leaf'> =>
  boxAround(ring.map((p) => transformPoint(back, p)))
