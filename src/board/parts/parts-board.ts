import type { Point } from '../../core/geometry/point'
import { addPainter, mountStage } from '../board-stage'
import type { Board, PartsHandlers, PartsScene } from '../board-types'
import { createCamera, wheelFactor } from '../camera'
import { pan } from '../gestures/pan'
import { followPointers } from '../gestures/pointers'
import { beginFrame, wantsFrame } from '../paint/picture-levels'
import { paintPart } from './paint-part'
import { partsHeight, placeParts, WORDS } from './parts-layout'

/** The board on which all parts stand side by side at one scale. */
export function mountPartsBoard(container: HTMLDivElement, handlers: PartsHandlers = {}): Board<PartsScene> {
  let scene: PartsScene | null = null
  const stage = mountStage(container, 1, () => camera.refit())
  const placed = () => (scene ? placeParts(scene, stage.size(), camera.view()) : [])
  const faces = addPainter(stage.layers[0]!, (ctx) => {
    if (!scene) return
    beginFrame()
    for (const part of placed()) paintPart(ctx, part, scene, part.part.id === scene.selected)
    if (wantsFrame()) requestAnimationFrame(() => faces.update())
  })
  const camera = createCamera({
    size: stage.size,
    fitted: () => ({ scale: 1, x: 0, y: 0, quarter: false }),
    changed: faces.update,
  })

  const partAt = (at: Point<'screen'>): string | null =>
    placed().find(
      ({ x, y, width, height }) =>
        at.x >= x - 8 && at.x <= x + width + 8 && at.y >= y - 8 && at.y <= y + height + WORDS,
    )?.part.id ?? null

  const unfollow = followPointers(container, {
    gestures: [pan(() => true, camera.panBy)],
    onClick: (at) => {
      const part = partAt(at)
      handlers.onSelect?.(part === null ? null : { kind: 'part', part })
    },
    onDoubleClick: () => camera.fit(),
    onHover: (at) => void (container.style.cursor = at && partAt(at) !== null ? 'pointer' : ''),
    onPinch: (from, to, factor) => {
      camera.panBy(to.x - from.x, to.y - from.y)
      camera.zoomAt(to, factor)
    },
    onWheel: (at, event) => {
      event.preventDefault()
      // where not all rows can be seen the wheel goes along them
      const over = scene && partsHeight(scene, stage.size()) > stage.size().height + 1
      if (over && !event.ctrlKey) camera.panBy(-event.deltaX, -event.deltaY)
      else camera.zoomAt(at, wheelFactor(event))
    },
  })
  container.style.touchAction = 'none'

  return {
    update(next) {
      scene = next
      stage.setLabel(next.label)
      faces.update()
    },
    fit: () => camera.fit(),
    zoomBy: (factor) => camera.zoomBy(factor),
    destroy() {
      unfollow()
      camera.destroy()
      stage.destroy()
    },
  }
}
