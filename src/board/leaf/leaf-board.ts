import { boxAround, regionBox } from '../../core/geometry/box'
import { regionCovers, ringCovers } from '../../core/geometry/polygon'
import type { Point } from '../../core/geometry/point'
import { invert, transformPoint, type Transform } from '../../core/geometry/transform'
import { addPainter, mountStage } from '../board-stage'
import type { Board, BoardTarget, LeafHandlers, LeafScene } from '../board-types'
import { createCamera, wheelFactor } from '../camera'
import { dragWindow } from '../gestures/drag-window'
import { pan } from '../gestures/pan'
import { followPointers } from '../gestures/pointers'
import { beginFrame, wantsFrame } from '../paint/picture-levels'
import { createStillPicture } from '../still-picture'
import { boxOnScreen, fitView, viewTransform } from '../view'
import { defectAt } from './defect-at'
import { paintLeaf, paintNumber, paintWindow } from './paint-leaf'

const MARGINS = { top: 30, bottom: 30, left: 62, right: 16 }
const FINGER = 22

/** The board on which one leaf lies with a part's window on it. It tells what is asked for and changes nothing itself. */
export function mountLeafBoard(container: HTMLDivElement, handlers: LeafHandlers = {}): Board<LeafScene> {
  let scene: LeafScene | null = null
  const stage = mountStage(container, 2, () => camera.refit())
  const [woodLayer, windowLayer] = stage.layers as [Layer, Layer]
  const still = createStillPicture((ctx, view) => scene && paintLeaf(ctx, scene, view))
  const wood = addPainter(woodLayer, (ctx) => {
    if (!scene) return
    beginFrame()
    still.paint(ctx, camera.view(), stage.size(), camera.moving())
    if (wantsFrame()) requestAnimationFrame(() => wood.update())
    const { min, max } = boxOnScreen(camera.view(), boxAround(scene.wood.outline))
    paintNumber(ctx, scene.number, min.x - 12, (min.y + max.y) / 2, scene.colours)
  })
  const window = addPainter(windowLayer, (ctx) => scene && paintWindow(ctx, scene, camera.view(), stage.size()))

  const camera = createCamera({
    size: stage.size,
    fitted: () =>
      scene
        ? fitView(boxAround(scene.wood.outline), stage.size(), MARGINS, true)
        : { scale: 1, x: 0, y: 0, quarter: true },
    changed: () => {
      wood.update()
      window.update()
    },
  })

  const toLeaf = (): Transform<'screen', 'leaf'> => invert(viewTransform<'leaf'>(camera.view()))

  /** The window, or near it where it is drawn smaller than a finger. */
  function onWindow(at: Point<'screen'>): boolean {
    if (!scene?.window || scene.window.rough.length === 0) return false
    if (regionCovers(scene.window.rough, transformPoint(toLeaf(), at))) return true
    const { min, max } = boxOnScreen(camera.view(), regionBox(scene.window.rough))
    const reach = (length: number) => Math.max(4, FINGER - length / 2)
    const [dx, dy] = [reach(max.x - min.x), reach(max.y - min.y)]
    return at.x > min.x - dx && at.x < max.x + dx && at.y > min.y - dy && at.y < max.y + dy
  }

  function pick(at: Point<'screen'>): BoardTarget | null {
    if (!scene) return null
    const spot = transformPoint(toLeaf(), at)
    const defect = defectAt(scene.wood.defects, spot, 8 / camera.view().scale)
    if (defect) return { kind: 'defect', defect: defect.id }
    if (scene.window && regionCovers(scene.window.rough, spot)) return { kind: 'leaf', leaf: scene.number }
    const taken = scene.taken.find(({ ring }) => ringCovers(ring, spot))
    if (taken) return { kind: 'part', part: taken.part }
    return ringCovers(scene.wood.outline, spot) ? { kind: 'leaf', leaf: scene.number } : null
  }

  const unfollow = followPointers(container, {
    gestures: [
      pan((_, middle) => middle, camera.panBy),
      dragWindow(
        'window',
        (at) =>
          handlers.onWindowDrag && scene?.window && onWindow(at) ? { cell: scene.window.cell, toLeaf: toLeaf() } : null,
        (drag) => handlers.onWindowDrag?.(drag),
      ),
      pan(() => true, camera.panBy),
    ],
    onClick: (at) => handlers.onSelect?.(pick(at)),
    onDoubleClick: () => camera.fit(),
    onHover: (at) => void (container.style.cursor = at && handlers.onWindowDrag && onWindow(at) ? 'move' : ''),
    onPinch: (from, to, factor) => {
      camera.panBy(to.x - from.x, to.y - from.y)
      camera.zoomAt(to, factor)
    },
    onWheel: (at, event) => {
      event.preventDefault()
      camera.zoomAt(at, wheelFactor(event))
    },
  })
  container.style.touchAction = 'none'

  return {
    update(next) {
      const before = scene
      scene = next
      stage.setLabel(next.label)
      if (!before || before.wood.outline !== next.wood.outline) {
        still.forget()
        camera.fit()
        return
      }
      if (woodKey(before) !== woodKey(next) || before.wood.picture !== next.wood.picture) {
        still.forget()
        wood.update()
      }
      window.update()
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

type Layer = Parameters<typeof addPainter>[0]

/** All that the leaf itself is drawn from: while the window is dragged it stays the same. */
const woodKey = ({ number, wood, usable, taken, cuts, selected, colours }: LeafScene): string =>
  JSON.stringify([number, wood.defects, wood.place, usable, taken, cuts, selected, colours])
