import { point, type Point } from '../core/geometry/point'
import { pannedBy, zoomedAbout, type Size, type View } from './view'

/** Where a board looks. It keeps everything in sight until someone moves it. */
export interface Camera {
  readonly view: () => View
  /** While this is so, sharpness can wait. */
  readonly moving: () => boolean
  readonly fit: () => void
  readonly zoomBy: (factor: number) => void
  readonly zoomAt: (at: Point<'screen'>, factor: number) => void
  readonly panBy: (dx: number, dy: number) => void
  /** The room or what is shown has another size: fitted anew unless someone has moved the view. */
  readonly refit: () => void
  readonly destroy: () => void
}

export interface CameraPlan {
  readonly size: () => Size
  /** The view that shows everything. */
  readonly fitted: () => View
  /** Keeps a view within bounds. */
  readonly hold?: (view: View) => View
  readonly changed: () => void
}

/** How far one may go beyond the view that shows everything: farther, nearer (px a mm). */
const FARTHEST = 0.4
const NEAREST = 12
const SETTLED_AFTER = 140

export function createCamera({ size, fitted, hold = (view) => view, changed }: CameraPlan): Camera {
  let view = fitted()
  let touched = false
  let settling: ReturnType<typeof setTimeout> | undefined

  function move(next: View): void {
    view = hold(next)
    touched = true
    clearTimeout(settling)
    settling = setTimeout(() => {
      settling = undefined
      changed()
    }, SETTLED_AFTER)
    changed()
  }

  const fit = () => {
    clearTimeout(settling)
    settling = undefined
    view = fitted()
    touched = false
    changed()
  }

  const zoomAt = (at: Point<'screen'>, factor: number) => {
    const whole = fitted().scale
    move(zoomedAbout(view, at, factor, { min: whole * FARTHEST, max: Math.max(NEAREST, whole) }))
  }

  return {
    view: () => view,
    moving: () => settling !== undefined,
    fit,
    zoomBy: (factor) => zoomAt(point(size().width / 2, size().height / 2), factor),
    zoomAt,
    panBy: (dx, dy) => move(pannedBy(view, dx, dy)),
    refit: () => (touched ? changed() : fit()),
    destroy: () => clearTimeout(settling),
  }
}

/** How much nearer one notch of the wheel, or a pinch on a touchpad, brings the drawing. */
export function wheelFactor({ deltaY, deltaMode, ctrlKey }: WheelEvent): number {
  const lines = deltaMode === 1 ? 16 : deltaMode === 2 ? 400 : 1
  const amount = Math.max(-240, Math.min(240, deltaY * lines))
  return Math.exp(-amount * (ctrlKey ? 0.01 : 0.0018))
}
