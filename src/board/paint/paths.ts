import type { Point, Space } from '../../core/geometry/point'
import type { Region, Ring } from '../../core/geometry/polygon'
import type { Transform } from '../../core/geometry/transform'

/** Adds a ring, carried to the screen, to the path in hand. */
export function traceRing<S extends Space>(
  ctx: CanvasRenderingContext2D,
  { a, b, c, d, e, f }: Transform<S, 'screen'>,
  ring: Ring<S>,
): void {
  ring.forEach(({ x, y }, i) => {
    if (i === 0) ctx.moveTo(a * x + c * y + e, b * x + d * y + f)
    else ctx.lineTo(a * x + c * y + e, b * x + d * y + f)
  })
  ctx.closePath()
}

export function traceRegion<S extends Space>(
  ctx: CanvasRenderingContext2D,
  toScreen: Transform<S, 'screen'>,
  region: Region<S>,
): void {
  for (const polygon of region) for (const ring of polygon) traceRing(ctx, toScreen, ring)
}

export function strokeLine(
  ctx: CanvasRenderingContext2D,
  from: Pick<Point<'screen'>, 'x' | 'y'>,
  to: Pick<Point<'screen'>, 'x' | 'y'>,
): void {
  ctx.beginPath()
  ctx.moveTo(from.x, from.y)
  ctx.lineTo(to.x, to.y)
  ctx.stroke()
}

/** Half-way between two rows of pixels, so that a line of one pixel is sharp. */
export const crisp = (value: number): number => Math.round(value) + 0.5

/** Slanted lines within the clip in hand; the box says how far they must reach. */
export function hatch(
  ctx: CanvasRenderingContext2D,
  box: { readonly min: { x: number; y: number }; readonly max: { x: number; y: number } },
  spacing: number,
  slope: 1 | -1 = 1,
): void {
  const height = box.max.y - box.min.y
  ctx.beginPath()
  const first = Math.floor((box.min.x - height) / spacing) * spacing
  for (let x = first; x < box.max.x + height; x += spacing) {
    ctx.moveTo(x, slope > 0 ? box.max.y : box.min.y)
    ctx.lineTo(x + height, slope > 0 ? box.min.y : box.max.y)
  }
  ctx.stroke()
}
