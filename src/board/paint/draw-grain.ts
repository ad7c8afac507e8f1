import { boxAround, boxHeight, boxWidth, type Box } from '../../core/geometry/box'
import type { Ring } from '../../core/geometry/polygon'
import type { Transform } from '../../core/geometry/transform'
import type { BoardColours, LeafPicture, LeafWood } from '../board-types'
import { grainLines, RING_SPACING, type GrainLine } from './grain-lines'
import { traceRing } from './paths'
import { mayMakePicture } from './picture-levels'

/** What is needed to draw grain. */
export interface GrainDrawing {
  readonly wood: LeafWood
  readonly toScreen: Transform<'leaf', 'screen'>
  /** The part of the leaf that can be seen; the rest is passed over. */
  readonly seen: Box<'leaf'>
  readonly colours: BoardColours
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

/** Bare wood with its lines of grain. */
export function drawGrain(ctx: CanvasRenderingContext2D, { wood, toScreen, seen, colours }: GrainDrawing): void {
  ctx.fillStyle = colours.wood
  ctx.beginPath()
  traceRing(ctx, toScreen, wood.outline)
  ctx.fill()
  const scale = Math.hypot(toScreen.a, toScreen.b)
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

/** Nearer than this a whole leaf is too large a picture, and so few lines are seen that they can be drawn each time. */
const FINEST = 1.3
const KEPT = 3

const pictures = new WeakMap<Ring<'leaf'>, { key: string; picture: LeafPicture }[]>()

/**
 * The drawn grain of a whole leaf as a picture for one scale (pixels a mm), kept for the next frames; null where the
 * scale is too fine for it or there is no time in this frame.
 */
export function grainPicture(wood: LeafWood, pxPerMm: number, colours: BoardColours): LeafPicture | null {
  if (pxPerMm > FINEST || wood.outline.length < 3) return null
  const scale = 2 ** (Math.ceil(Math.log2(pxPerMm) * 8) / 8)
  const key = [scale, wood.cut, wood.place, colours.wood, colours.grain].join(' ')
  const kept = pictures.get(wood.outline) ?? []
  const found = kept.find((entry) => entry.key === key)
  if (found) return found.picture
  if (!mayMakePicture()) return null
  const picture = painted(wood, scale, colours)
  if (picture) pictures.set(wood.outline, [{ key, picture }, ...kept].slice(0, KEPT))
  return picture
}

function painted(wood: LeafWood, scale: number, colours: BoardColours): LeafPicture | null {
  const seen = boxAround(wood.outline)
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.ceil(boxWidth(seen) * scale))
  canvas.height = Math.max(1, Math.ceil(boxHeight(seen) * scale))
  const ctx = canvas.getContext('2d')
  if (!ctx) return null
  const toScreen = { a: scale, b: 0, c: 0, d: scale, e: -seen.min.x * scale, f: -seen.min.y * scale }
  ctx.beginPath()
  traceRing(ctx, toScreen, wood.outline)
  ctx.clip()
  drawGrain(ctx, { wood, toScreen, seen, colours })
  return { bitmap: canvas, pxPerMm: scale, origin: seen.min }
}
