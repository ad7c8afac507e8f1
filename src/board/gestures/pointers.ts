import { distance, point, type Point } from '../../core/geometry/point'
import type { Gesture, Press, Session } from './gesture'

/** What the pointers over a board mean. */
export interface PointerPlan {
  /** Asked in order; the first that answers has the drag. */
  readonly gestures: readonly Gesture[]
  /** A press that did not become a drag. */
  readonly onClick: (at: Point<'screen'>, press: Press) => void
  readonly onDoubleClick: (at: Point<'screen'>) => void
  readonly onHover: (at: Point<'screen'> | null) => void
  /** Two fingers: where their middle was and is, and how their distance grew, since the last call. */
  readonly onPinch: (from: Point<'screen'>, to: Point<'screen'>, factor: number) => void
  readonly onWheel: (at: Point<'screen'>, event: WheelEvent) => void
}

/** A pointer that has moved less than this has not moved, px. */
const STILL = 4
const STILL_TOUCH = 8

interface Down {
  readonly id: number
  readonly from: Point<'screen'>
  readonly press: Press
  session: Session | null
  /** Ended by Escape or by a second finger; the rest of the press means nothing. */
  over: boolean
}

/**
 * Follows the pointers over an element: clicks, drags (moves come at most once a frame), two fingers, the wheel, and
 * Escape, which cancels. Gives the way to stop.
 */
export function followPointers(element: HTMLElement, plan: PointerPlan): () => void {
  const fingers = new Map<number, Point<'screen'>>()
  let down: Down | null = null
  let waiting: Point<'screen'> | null = null
  let frame = 0

  const spot = (event: MouseEvent): Point<'screen'> => {
    const { left, top } = element.getBoundingClientRect()
    return point(event.clientX - left, event.clientY - top)
  }

  const flush = () => {
    cancelAnimationFrame(frame)
    frame = 0
    if (waiting) down?.session?.move(waiting)
    waiting = null
  }

  const cancel = () => {
    waiting = null
    if (!down || down.over) return
    down.over = true
    down.session?.cancel()
  }

  function pressed(event: PointerEvent): void {
    const at = spot(event)
    fingers.set(event.pointerId, at)
    if (fingers.size > 1) return cancel()
    if (event.button > 1) return
    element.setPointerCapture(event.pointerId)
    const press = { touch: event.pointerType !== 'mouse', button: event.button }
    down = { id: event.pointerId, from: at, press, session: null, over: false }
  }

  function moved(event: PointerEvent): void {
    const at = spot(event)
    const before = fingers.get(event.pointerId)
    if (fingers.size > 1 && before) return pinched(event.pointerId, before, at)
    if (!down || down.over || event.pointerId !== down.id) {
      if (!down) plan.onHover(at)
      return
    }
    fingers.set(event.pointerId, at)
    if (!down.session && distance(at, down.from) < (down.press.touch ? STILL_TOUCH : STILL)) return
    down.session ??= begin(down)
    waiting = at
    frame ||= requestAnimationFrame(flush)
  }

  function begin({ from, press }: Down): Session {
    for (const gesture of plan.gestures) {
      const session = gesture(from, press)
      if (session) return session
    }
    return { move: () => undefined, complete: () => undefined, cancel: () => undefined }
  }

  function pinched(id: number, before: Point<'screen'>, at: Point<'screen'>): void {
    const other = [...fingers].find(([otherId]) => otherId !== id)?.[1]
    fingers.set(id, at)
    if (!other) return
    const middle = (p: Point<'screen'>) => point<'screen'>((p.x + other.x) / 2, (p.y + other.y) / 2)
    plan.onPinch(middle(before), middle(at), Math.max(1, distance(at, other)) / Math.max(1, distance(before, other)))
  }

  function released(event: PointerEvent): void {
    fingers.delete(event.pointerId)
    if (!down || event.pointerId !== down.id) return
    const { session, over, press } = down
    flush()
    down = null
    if (over) return
    if (session) session.complete(spot(event))
    else plan.onClick(spot(event), press)
  }

  function lost(event: PointerEvent): void {
    fingers.delete(event.pointerId)
    if (event.pointerId !== down?.id) return
    cancel()
    down = null
  }

  const listeners = new AbortController()
  const { signal } = listeners
  element.addEventListener('pointerdown', pressed, { signal })
  element.addEventListener('pointermove', moved, { signal })
  element.addEventListener('pointerup', released, { signal })
  element.addEventListener('pointercancel', lost, { signal })
  element.addEventListener('pointerleave', () => down ?? plan.onHover(null), { signal })
  element.addEventListener('dblclick', (event) => plan.onDoubleClick(spot(event)), { signal })
  element.addEventListener('wheel', (event) => plan.onWheel(spot(event), event), { signal, passive: false })
  window.addEventListener('keydown', (event) => event.key === 'Escape' && cancel(), { signal })
  return () => {
    cancel()
    cancelAnimationFrame(frame)
    listeners.abort()
  }
}
