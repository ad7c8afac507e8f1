import { boxAround } from '../../core/geometry/box'
import { add, between, point, subtract, type Point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import { invert, transformPoint, transformVector } from '../../core/geometry/transform'
import type { Defect, DefectShape } from '../../core/leaves/leaf'
import { addPainter, mountStage } from '../board-stage'
import type { Board, OutlineHandlers, OutlineScene } from '../board-types'
import { createCamera, wheelFactor } from '../camera'
import { drawShape } from '../gestures/draw-shape'
import { movePoint, type Movable } from '../gestures/move-point'
import { pan } from '../gestures/pan'
import { followPointers } from '../gestures/pointers'
import { defectAt } from '../leaf/defect-at'
import { beginFrame, wantsFrame } from '../paint/picture-levels'
import { createStillPicture } from '../still-picture'
import { fitView, viewTransform } from '../view'
import { outlineKey, type OutlineKey } from './outline-keys'
import { NO_DRAFT, paintOutlineMarks, paintOutlineWood, placeWords, type OutlineDraft } from './paint-outline'
import {
  bareShape,
  cornerAt,
  edgeAt,
  ringWithInserted,
  ringWithMoved,
  ringWithout,
  shapeHandles,
  shapeMoved,
  shapeWithHandle,
} from './shape-edit'

const MARGINS = { top: 46, bottom: 46, left: 66, right: 24 }
/** How near a press must be, px. */
const REACH = 11
const REACH_TOUCH = 22

/**
 * The board on which a leaf's outline and defects are drawn. It has the keyboard when it has the focus: Tab goes from
 * point to point and leaves after the last, arrows move, Insert and Delete do what they say, Escape lets go.
 */
export function mountOutlineBoard(container: HTMLDivElement, handlers: OutlineHandlers = {}): Board<OutlineScene> {
  let scene: OutlineScene | null = null
  let draft: OutlineDraft = NO_DRAFT
  const stage = mountStage(container, 2, () => camera.refit())
  const [woodLayer, markLayer] = stage.layers as [Layer, Layer]
  const still = createStillPicture((ctx, view) => scene && paintOutlineWood(ctx, scene, view))
  const wood = addPainter(woodLayer, (ctx) => {
    beginFrame()
    still.paint(ctx, camera.view(), stage.size(), camera.moving())
    if (wantsFrame()) requestAnimationFrame(() => wood.update())
  })
  const marks = addPainter(
    markLayer,
    (ctx) => scene && paintOutlineMarks(ctx, scene, draft, camera.view(), stage.size()),
  )
  const camera = createCamera({
    size: stage.size,
    fitted: () =>
      scene ? fitView(boxAround(scene.outline), stage.size(), MARGINS, true) : { scale: 1, x: 0, y: 0, quarter: true },
    changed: () => {
      wood.update()
      marks.update()
    },
  })

  const toLeaf = (at: Point<'screen'>): Point<'leaf'> =>
    transformPoint(invert(viewTransform<'leaf'>(camera.view())), at)
  const reach = (touch: boolean): number => (touch ? REACH_TOUCH : REACH) / camera.view().scale
  const show = (change: Partial<OutlineDraft>) => {
    draft = { ...draft, ...change }
    marks.update()
  }
  const selectedDefect = (): Defect | null => {
    const selected = scene?.selected
    return selected?.kind === 'defect' ? (scene?.wood.defects.find(({ id }) => id === selected.defect) ?? null) : null
  }

  function tellOutline(ring: Ring<'leaf'>, phase: 'move' | 'end' | 'cancel'): void {
    show({ outline: phase === 'move' ? ring : null })
    handlers.onOutline?.({ ring, phase })
  }

  /** An outline point under the press, or a new one on the edge under it. */
  function outlinePoint(spot: Point<'leaf'>, touch: boolean): Movable | null {
    if (!scene || scene.tool !== 'outline' || !handlers.onOutline) return null
    const before = scene.outline
    const corner = cornerAt(before, spot, reach(touch))
    const edge = corner === null ? edgeAt(before, spot, reach(touch)) : null
    if (corner === null && !edge) return null
    const ring = edge ? ringWithInserted(before, edge.edge, edge.at) : before
    const index = corner ?? edge!.edge + 1
    return {
      at: ring[index]!,
      moved: (to, phase) => {
        show({ focus: index })
        tellOutline(ringWithMoved(ring, index, to), phase)
      },
      cancelled: () => {
        show({ focus: corner })
        tellOutline(before, 'cancel')
      },
    }
  }

  /** A handle of the chosen defect, or the defect itself. */
  function defectPoint(spot: Point<'leaf'>, touch: boolean): Movable | null {
    const defect = selectedDefect()
    if (!scene || !defect || !handlers.onDefectChange) return null
    const before = bareShape(defect)
    const handle = cornerAt(shapeHandles(before), spot, reach(touch))
    if (handle === null && defectAt([defect], spot, reach(touch) / 2) === null) return null
    const at = handle === null ? spot : shapeHandles(before)[handle]!
    const changed = (to: Point<'leaf'>): DefectShape =>
      handle === null ? shapeMoved(before, subtract(to, spot)) : shapeWithHandle(before, handle, to)
    const tell = (shape: DefectShape, phase: 'move' | 'end' | 'cancel') => {
      show({ shape: phase === 'move' ? shape : null })
      handlers.onDefectChange?.({ defect: defect.id, shape, phase })
    }
    return { at, moved: (to, phase) => tell(changed(to), phase), cancelled: () => tell(before, 'cancel') }
  }

  function addDefect(shape: DefectShape): void {
    if (scene) handlers.onDefectAdd?.({ kind: shape.shape === 'line' ? 'split' : scene.drawnKind, shape })
  }

  /** A further corner of an area; on the first one it closes. */
  function addCorner(spot: Point<'leaf'>, touch: boolean): void {
    const closes = draft.corners.length >= 3 && cornerAt(draft.corners.slice(0, 1), spot, reach(touch)) !== null
    if (closes) finishArea()
    else show({ corners: [...draft.corners, spot] })
  }

  function finishArea(): void {
    const ring = draft.corners
    show({ corners: [] })
    if (ring.length >= 3) addDefect({ shape: 'area', ring })
  }

  function clicked(at: Point<'screen'>, touch: boolean): void {
    if (!scene) return
    const spot = toLeaf(at)
    if (scene.tool === 'area') return addCorner(spot, touch)
    if (scene.tool === 'outline') {
      const corner = cornerAt(scene.outline, spot, reach(touch))
      if (corner !== null) return focusOn(corner)
      const edge = edgeAt(scene.outline, spot, reach(touch))
      if (edge && handlers.onOutline) {
        show({ focus: edge.edge + 1 })
        return tellOutline(ringWithInserted(scene.outline, edge.edge, edge.at), 'end')
      }
    }
    const defect = defectAt(scene.wood.defects, spot, reach(touch))
    show({ focus: null })
    handlers.onSelect?.(defect ? { kind: 'defect', defect: defect.id } : null)
  }

  function focusOn(index: number | null): void {
    show({ focus: index })
    const at = index === null ? undefined : scene?.outline[index]
    if (at && scene) handlers.onSay?.(`Point ${index! + 1} of ${scene.outline.length}: ${placeWords(at, scene.unit)}.`)
  }

  const unfollow = followPointers(container, {
    gestures: [
      pan((_, middle) => middle, camera.panBy),
      movePoint((spot, touch) => defectPoint(spot, touch) ?? outlinePoint(spot, touch), toLeaf),
      drawShape({
        tool: () => (scene?.tool === 'spot' ? 'spot' : scene?.tool === 'split' ? 'line' : null),
        toLeaf,
        show: (shape) => show({ shape }),
        done: addDefect,
        least: 1,
      }),
      pan(() => true, camera.panBy),
    ],
    onClick: (at, { touch }) => clicked(at, touch),
    onDoubleClick: () => (draft.corners.length >= 3 ? finishArea() : undefined),
    onHover: (at) => void (container.style.cursor = at ? cursorAt(toLeaf(at)) : ''),
    onPinch: (from, to, factor) => {
      camera.panBy(to.x - from.x, to.y - from.y)
      camera.zoomAt(to, factor)
    },
    onWheel: (at, event) => {
      event.preventDefault()
      camera.zoomAt(at, wheelFactor(event))
    },
  })

  function cursorAt(spot: Point<'leaf'>): string {
    if (!scene) return ''
    if (scene.tool === 'spot' || scene.tool === 'split' || scene.tool === 'area') return 'crosshair'
    if (scene.tool === 'outline' && cornerAt(scene.outline, spot, reach(false)) !== null) return 'move'
    if (scene.tool === 'outline' && edgeAt(scene.outline, spot, reach(false))) return 'copy'
    return defectAt(scene.wood.defects, spot, reach(false)) ? 'pointer' : ''
  }

  /** Whether the key was used. */
  function obey(key: OutlineKey, outline: Ring<'leaf'>): boolean {
    const { focus } = draft
    if (key.kind === 'finish' && draft.corners.length >= 3) return (finishArea(), true)
    if (key.kind === 'leave') {
      const had = focus !== null || draft.corners.length > 0
      return (show({ focus: null, corners: [] }), had)
    }
    if (key.kind === 'next') {
      if (scene?.tool !== 'outline') return false
      const next = focus === null ? (key.by > 0 ? 0 : outline.length - 1) : focus + key.by
      const inside = next >= 0 && next < outline.length
      return (focusOn(inside ? next : null), inside)
    }
    return focus === null || scene?.tool !== 'outline' ? obeyForDefect(key) : obeyForPoint(key, focus, outline)
  }

  const onTheLeaf = (right: number, down: number): Point<'leaf'> => {
    const view = { scale: 1, x: 0, y: 0, quarter: true }
    return transformVector(invert(viewTransform<'leaf'>(view)), point<'screen'>(right, down))
  }

  function obeyForPoint(key: OutlineKey, focus: number, outline: Ring<'leaf'>): boolean {
    if (!handlers.onOutline) return false
    if (key.kind === 'move')
      tellOutline(ringWithMoved(outline, focus, add(outline[focus]!, onTheLeaf(key.right, key.down))), 'end')
    else if (key.kind === 'remove') {
      const without = ringWithout(outline, focus)
      if (!without) return (handlers.onSay?.('An outline needs at least three points.'), true)
      show({ focus: Math.min(focus, without.length - 1) })
      tellOutline(without, 'end')
    } else if (key.kind === 'insert') {
      const middle = between(outline[focus]!, outline[(focus + 1) % outline.length]!, 0.5)
      show({ focus: focus + 1 })
      tellOutline(ringWithInserted(outline, focus, middle), 'end')
    } else return false
    return true
  }

  function obeyForDefect(key: OutlineKey): boolean {
    const defect = selectedDefect()
    if (!defect) return false
    if (key.kind === 'remove') handlers.onDefectRemove?.(defect.id)
    else if (key.kind === 'move')
      handlers.onDefectChange?.({
        defect: defect.id,
        shape: shapeMoved(bareShape(defect), onTheLeaf(key.right, key.down)),
        phase: 'end',
      })
    else return false
    return true
  }

  const listening = new AbortController()
  container.addEventListener(
    'keydown',
    (event) => {
      const key = scene && outlineKey(event, scene.unit)
      if (key && scene && obey(key, scene.outline)) event.preventDefault()
    },
    { signal: listening.signal },
  )
  container.addEventListener('blur', () => show({ focus: null }), { signal: listening.signal })
  container.tabIndex = 0
  container.setAttribute('role', 'application')
  container.style.touchAction = 'none'

  return {
    update(next) {
      const before = scene
      scene = next
      stage.setLabel(next.label)
      if (draft.focus !== null && draft.focus >= next.outline.length) draft = { ...draft, focus: null }
      if (before?.tool !== next.tool) draft = { ...draft, corners: [], shape: null }
      still.forget()
      if (!before || before.number !== next.number) camera.fit()
      else {
        wood.update()
        marks.update()
      }
      // said when it has come to rest, not at every step of a drag
      if (before && before.outline !== next.outline && !draft.outline) focusOn(draft.focus)
    },
    fit: () => camera.fit(),
    zoomBy: (factor) => camera.zoomBy(factor),
    destroy() {
      unfollow()
      listening.abort()
      camera.destroy()
      stage.destroy()
    },
  }
}

type Layer = Parameters<typeof addPainter>[0]
