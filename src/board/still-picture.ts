import { pixelRatio } from './board-stage'
import type { Size, View } from './view'

/** Draws something at a view. */
export type PaintAt = (ctx: CanvasRenderingContext2D, view: View) => void

/**
 * While the view is on the move, a picture taken at its start is drawn instead, shifted and enlarged; it reaches a good
 * way beyond the board on every side. What stands still is painted anew and sharp.
 */
export interface StillPicture {
  readonly paint: (ctx: CanvasRenderingContext2D, view: View, size: Size, moving: boolean) => void
  /** What was painted has changed. */
  readonly forget: () => void
}

/** How far the picture reaches beyond the board, as a share of its size. */
const BEYOND = 0.3

export function createStillPicture(paintAt: PaintAt): StillPicture {
  let taken: { canvas: HTMLCanvasElement; view: View; ratio: number } | null = null

  function take(view: View, { width, height }: Size): NonNullable<typeof taken> | null {
    const ratio = pixelRatio()
    const canvas = document.createElement('canvas')
    canvas.width = Math.ceil(width * (1 + 2 * BEYOND) * ratio)
    canvas.height = Math.ceil(height * (1 + 2 * BEYOND) * ratio)
    const ctx = canvas.getContext('2d')
    if (!ctx) return null
    const shifted = { ...view, x: view.x + width * BEYOND, y: view.y + height * BEYOND }
    ctx.scale(ratio, ratio)
    paintAt(ctx, shifted)
    return { canvas, view: shifted, ratio }
  }

  return {
    paint(ctx, view, size, moving) {
      if (!moving) {
        taken = null
        paintAt(ctx, view)
        return
      }
      taken ??= take(view, size)
      if (!taken) return paintAt(ctx, view)
      const by = view.scale / taken.view.scale
      ctx.drawImage(
        taken.canvas,
        view.x - taken.view.x * by,
        view.y - taken.view.y * by,
        (taken.canvas.width / taken.ratio) * by,
        (taken.canvas.height / taken.ratio) * by,
      )
    },
    forget: () => void (taken = null),
  }
}
