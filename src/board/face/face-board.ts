import { boxAround, type Box, type Edges } from '../../core/geometry/box'
import { compose, invert, transformPoint } from '../../core/geometry/transform'
import { point, type Point } from '../../core/geometry/point'
import { addPainter, mountStage } from '../board-stage'
import type { Board, FaceHandlers, FaceScene } from '../board-types'
import { createCamera, wheelFactor } from '../camera'
import { dragWindow, type Held } from '../gestures/drag-window'
import { pan } from '../gestures/pan'
import { followPointers } from '../gestures/pointers'
import { swapLeaves, type TagOnTheWay } from '../gestures/swap-leaves'
import { beginFrame, wantsFrame } from '../paint/picture-levels'
import { createStillPicture } from '../still-picture'
import { fitView, viewTransform, type Size, type View } from '../view'
import { faceMargins, layOutFace, NO_LAYOUT, TAG_HEIGHT, TAG_HEIGHT_TOUCH, type FaceLayout } from './face-layout'
import { besideAt, cellAt, pickFace, tagAt } from './face-pick'
import { paintBeside, paintBesideNames } from './paint-beside'
import { paintCells } from './paint-cells'
import { paintDimensions } from './paint-dimensions'
import { paintFinishedEdge, paintFinishedWood } from './paint-finished'
import { paintLines } from './paint-lines'
import { paintSpot } from './paint-spot'
import { paintTagOnTheWay, paintTags } from './paint-tags'

/**
 * The board on which a face is drawn true to scale. It shows the scene it is given and tells what is asked for; it
 * changes nothing itself. Until the first scene it is empty.
 */
export function mountFaceBoard(container: HTMLDivElement, handlers: FaceHandlers = {}): Board<FaceScene> {
  let scene: FaceScene | null = null
  let layout: FaceLayout = NO_LAYOUT
  let onTheWay: TagOnTheWay | null = null
  let linesKey = ''

  const stage = mountStage(container, 3, () => camera.refit())
  const [woodLayer, markLayer, dragLayer] = stage.layers as [Layer, Layer, Layer]
  const still = createStillPicture((ctx, view) => {
    if (!scene) return
    if (!scene.finishedLook) paintBeside(ctx, scene, view)
    ;(scene.finishedLook ? paintFinishedWood : paintCells)(ctx, scene, view)
  })
  const wood = addPainter(woodLayer, (ctx) => {
    beginFrame()
    still.paint(ctx, camera.view(), stage.size(), camera.moving())
    if (wantsFrame()) requestAnimationFrame(() => wood.update())
  })
  const marks = addPainter(markLayer, (ctx) => {
    if (!scene) return
    if (scene.finishedLook) {
      paintFinishedEdge(ctx, scene, camera.view())
      paintSpot(ctx, scene, camera.view())
      return
    }
    paintBesideNames(ctx, scene, camera.view())
    paintLines(ctx, scene, layout, camera.view())
    paintDimensions(ctx, scene, layout, camera.view())
    paintTags(ctx, scene, layout, onTheWay?.from ?? null)
    paintSpot(ctx, scene, camera.view())
  })
  const drag = addPainter(
    dragLayer,
    (ctx) => scene && onTheWay && paintTagOnTheWay(ctx, scene, layout, camera.view(), onTheWay),
  )

  const camera = createCamera({
    size: stage.size,
    fitted: () => (scene ? fittedView(scene, stage.size()) : { scale: 1, x: 0, y: 0, quarter: false }),
    changed: () => {
      wood.update()
      drawMarks()
    },
  })

  function drawMarks(): void {
    if (!scene) return
    const coarse = matchMedia('(pointer: coarse)').matches
    layout = scene.finishedLook ? NO_LAYOUT : layOutFace(scene, camera.view(), coarse ? TAG_HEIGHT_TOUCH : TAG_HEIGHT)
    marks.update()
  }

  const showOnTheWay = (tag: TagOnTheWay | null) => {
    const beginsOrEnds = (onTheWay === null) !== (tag === null)
    onTheWay = tag
    if (beginsOrEnds) marks.update()
    drag.update()
  }

  const woodAt = (at: Point<'screen'>): Held | null => {
    const cell = scene ? cellAt(scene, camera.view(), at) : null
    if (!cell || cell.leaf === null) return null
    return { cell: cell.id, toLeaf: invert(compose(viewTransform<'panel'>(camera.view()), cell.leafToPanel)) }
  }

  const unfollow = followPointers(container, {
    gestures: [
      pan((_, middle) => middle, camera.panBy),
      swapLeaves({
        tagAt: (at, touch) => (handlers.onSwap ? tagAt(layout, at, touch) : null),
        cellAt: (at) => (scene ? (cellAt(scene, camera.view(), at)?.id ?? null) : null),
        show: showOnTheWay,
        swap: (one, other) => handlers.onSwap?.(one, other),
      }),
      dragWindow(
        'wood',
        (at) => (handlers.onWindowDrag ? woodAt(at) : null),
        (by) => handlers.onWindowDrag?.(by),
      ),
      pan(() => true, camera.panBy),
    ],
    onClick: (at, { touch }) => {
      if (!scene || handlers.onSpot?.(transformPoint(invert(viewTransform<'panel'>(camera.view())), at))) return
      const target = scene.finishedLook ? null : pickFace(scene, layout, camera.view(), at, touch)
      const other = target ? null : besideAt(scene, camera.view(), at)
      if (other) handlers.onBeside?.(other.part)
      else if (!scene.finishedLook) handlers.onSelect?.(target)
    },
    onDoubleClick: () => camera.fit(),
    onHover: (at) => setCursor(container, at && cursorAt(at)),
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

  function cursorAt(at: Point<'screen'>): string {
    if (!scene) return ''
    const target = pickFace(scene, layout, camera.view(), at, false)
    if (tagAt(layout, at, false) !== null) return 'grab'
    if (target?.kind === 'seam' || target?.kind === 'finding') return 'pointer'
    return target && handlers.onWindowDrag ? 'move' : ''
  }

  return {
    update(next) {
      const outer = outerKey(next)
      const refit = !scene || outer !== outerKey(scene)
      scene = next
      stage.setLabel(next.label)
      still.forget()
      const key = marksKey(next)
      if (refit) camera.fit()
      else {
        wood.update()
        if (key !== linesKey) drawMarks()
      }
      linesKey = key
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

/** What the view was fitted to. */
const outerKey = ({ sheet, lying, seams, finishedLook, beside }: FaceScene): string =>
  JSON.stringify([sheet, lying, seams.length > 14, finishedLook, beside.map((other) => other.sheet)])

/** Without letters and sizes round it a finished face may fill the board. */
const fittedView = (scene: FaceScene, size: Size): View =>
  scene.finishedLook
    ? fitView(withBeside(scene.finished, scene.beside, 1), size, FINISHED_MARGINS, scene.lying)
    : fitWithBeside(scene, size, faceMargins(scene, size))

/** The whole of what hangs beside a face, unless that makes the face much smaller: then no more than where it begins. */
function fitWithBeside(scene: FaceScene, size: Size, margins: Edges): View {
  const fit = (share: number) => fitView(withBeside(scene.sheet, scene.beside, share), size, margins, scene.lying)
  const [alone, all] = [fit(0), fit(1)]
  return all.scale > alone.scale * MUCH_SMALLER ? all : fit(BEGINNING)
}

const MUCH_SMALLER = 0.62
const BEGINNING = 0.2

/** A box round a face and a share of what hangs beside it. */
function withBeside({ min, max }: Box<'panel'>, beside: FaceScene['beside'], share: number): Box<'panel'> {
  const held = (low: number, high: number, at: number) => (at < low ? low : at > high ? high : at)
  const corners = beside.flatMap(({ finished }) =>
    finished.map(({ x, y }) => {
      const [nearX, nearY] = [held(min.x, max.x, x), held(min.y, max.y, y)]
      return point<'panel'>(nearX + (x - nearX) * share, nearY + (y - nearY) * share)
    }),
  )
  return boxAround([min, max, ...corners])
}

const FINISHED_MARGINS = { top: 60, right: 32, bottom: 32, left: 32 }

/**
 * All that lines, tags and markers are drawn from: while the window is dragged it stays the same and only wood is drawn.
 * To a thousandth: what is worked out anew at every step comes out a hair's breadth different.
 */
const marksKey = (scene: FaceScene): string =>
  JSON.stringify(
    {
      ...scene,
      cells: scene.cells.map(({ id, ring, leaf, turnedOver, leafToPanel: { a, b, c, d } }) => [
        id,
        ring,
        leaf,
        turnedOver,
        a,
        b,
        c,
        d,
      ]),
    },
    (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1000) / 1000 : value),
  )

const setCursor = (container: HTMLElement, cursor: string | null): void => {
  container.style.cursor = cursor ?? ''
}
