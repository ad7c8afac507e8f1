import type { Point } from '../../core/geometry/point'
import { addPainter, mountStage } from '../board-stage'
import type { Board, FlitchHandlers, FlitchScene } from '../board-types'
import { createCamera, wheelFactor } from '../camera'
import { pan } from '../gestures/pan'
import { followPointers } from '../gestures/pointers'
import { beginFrame, wantsFrame } from '../paint/picture-levels'
import type { View } from '../view'
import { flitchHeight, flitchRows, flitchScale, type FlitchRow } from './flitch-layout'
import { paintRow } from './paint-flitch'

/** The board on which all leaves of a flitch lie one under another. The wheel goes along them; with Ctrl it zooms. */
export function mountFlitchBoard(container: HTMLDivElement, handlers: FlitchHandlers = {}): Board<FlitchScene> {
  let scene: FlitchScene | null = null
  const stage = mountStage(container, 1, () => camera.refit())
  const leaves = addPainter(stage.layers[0]!, (ctx) => {
    if (!scene) return
    beginFrame()
    const { width, height } = stage.size()
    for (const row of rows())
      if (row.bottom > -40 && row.top < height + 40)
        paintRow(ctx, row, scene, { width, selected: row.leaf.number === scene.selected })
    if (wantsFrame()) requestAnimationFrame(() => leaves.update())
  })

  /** The leaves never leave the board: the last stays in sight, and so does the first. */
  function hold(view: View): View {
    if (!scene) return view
    const { width, height } = stage.size()
    const over = flitchHeight(flitchRows(scene, { ...view, x: 0, y: 0 })) - height
    const wide = (view.scale / flitchScale(scene, stage.size()) - 1) * width
    return {
      ...view,
      y: Math.min(0, Math.max(-Math.max(0, over), view.y)),
      x: Math.min(0, Math.max(-Math.max(0, wide), view.x)),
    }
  }

  const camera = createCamera({
    size: stage.size,
    fitted: () => ({ scale: scene ? flitchScale(scene, stage.size()) : 1, x: 0, y: 0, quarter: false }),
    hold,
    changed: leaves.update,
  })

  const rows = (): readonly FlitchRow[] => (scene ? flitchRows(scene, camera.view()) : [])

  const leafAt = (at: Point<'screen'>): number | null =>
    rows().find(({ top, bottom }) => at.y >= top && at.y <= bottom + 6)?.leaf.number ?? null

  const unfollow = followPointers(container, {
    gestures: [pan(() => true, camera.panBy)],
    onClick: (at) => {
      const leaf = leafAt(at)
      handlers.onSelect?.(leaf === null ? null : { kind: 'leaf', leaf })
    },
    onDoubleClick: () => undefined,
    onHover: (at) => void (container.style.cursor = at && leafAt(at) !== null ? 'pointer' : ''),
    onPinch: (from, to, factor) => {
      camera.panBy(to.x - from.x, to.y - from.y)
      camera.zoomAt(to, factor)
    },
    onWheel: (at, event) => {
      event.preventDefault()
      if (event.ctrlKey) camera.zoomAt(at, wheelFactor(event))
      else camera.panBy(-event.deltaX, -event.deltaY)
    },
  })
  container.style.touchAction = 'none'

  function bringIntoSight(number: number | null): void {
    const row = rows().find(({ leaf }) => leaf.number === number)
    if (!row) return
    const { height } = stage.size()
    if (row.top < 0) camera.panBy(0, 8 - row.top)
    else if (row.bottom > height) camera.panBy(0, height - 8 - row.bottom)
  }

  return {
    update(next) {
      const before = scene
      scene = next
      stage.setLabel(next.label)
      const size = ({ leaves: all }: FlitchScene) => JSON.stringify(all.map(({ width, length }) => [width, length]))
      if (!before || size(before) !== size(next)) camera.refit()
      else leaves.update()
      if (before?.selected !== next.selected) bringIntoSight(next.selected)
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
