import { boxAround } from '../../core/geometry/box'
import { type Point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import { transformPoint } from '../../core/geometry/transform'
import type { DefectShape } from '../../core/leaves/leaf'
import { showLength } from '../../core/units/show-length'
import type { BoardColours, OutlineScene } from '../board-types'
import { paintNumber, paintWholeLeaf } from '../leaf/paint-leaf'
import { drawDefect } from '../paint/defects'
import { drawPlate, plateWidth } from '../paint/marks'
import { strokeLine, traceRing } from '../paint/paths'
import { boxOnScreen, viewTransform, type Size, type View } from '../view'
import { shapeHandles } from './shape-edit'

/** What is being drawn or has the keyboard just now; not yet in the scene. */
export interface OutlineDraft {
  readonly outline: Ring<'leaf'> | null
  readonly shape: DefectShape | null
  /** Corners of an area so far. */
  readonly corners: readonly Point<'leaf'>[]
  readonly focus: number | null
}

export const NO_DRAFT: OutlineDraft = { outline: null, shape: null, corners: [], focus: null }

/** The leaf as it stands. */
export function paintOutlineWood(ctx: CanvasRenderingContext2D, scene: OutlineScene, view: View): void {
  const chosen = scene.selected?.kind === 'defect' ? scene.selected.defect : null
  paintWholeLeaf(ctx, scene.wood, view, scene.colours, chosen)
  if (scene.number === null) return
  const { min, max } = boxOnScreen(view, boxAround(scene.outline))
  paintNumber(ctx, scene.number, min.x - 14, (min.y + max.y) / 2, scene.colours)
}

/** Points, handles and what is being drawn. */
export function paintOutlineMarks(
  ctx: CanvasRenderingContext2D,
  scene: OutlineScene,
  draft: OutlineDraft,
  view: View,
  size: Size,
): void {
  const toScreen = viewTransform<'leaf'>(view)
  const { colours } = scene
  const ring = draft.outline ?? scene.outline
  ctx.beginPath()
  traceRing(ctx, toScreen, ring)
  twice(ctx, colours, 2)
  if (!draft.outline) paintUnsure(ctx, scene, view)
  if (scene.tool === 'outline') paintPoints(ctx, ring, draft.focus, view, colours)
  if (draft.shape) drawDefect(ctx, toScreen, draft.shape, colours, true)
  paintCorners(ctx, draft.corners, view, colours)
  paintHandles(ctx, scene, draft, view)
  const focus = draft.focus === null ? undefined : ring[draft.focus]
  if (focus && scene.tool === 'outline') paintPlace(ctx, focus, scene, view, size)
}

/** A line that shows on any wood. */
function twice(ctx: CanvasRenderingContext2D, colours: BoardColours, width: number): void {
  ctx.lineJoin = 'round'
  ctx.lineWidth = width + 2
  ctx.strokeStyle = 'rgb(255 255 255 / 0.8)'
  ctx.stroke()
  ctx.lineWidth = width
  ctx.strokeStyle = colours.dark ? '#0a6a72' : colours.act
  ctx.stroke()
}

/** Dashed, over the line: what could not be told from the table, until a point of it is moved. */
function paintUnsure(ctx: CanvasRenderingContext2D, { unsure, colours }: OutlineScene, view: View): void {
  if (unsure.length === 0) return
  const toScreen = viewTransform<'leaf'>(view)
  ctx.save()
  ctx.beginPath()
  let end: Point<'leaf'> | null = null
  for (const { a, b } of unsure) {
    // dashes run on over points
    const [from, to] = [transformPoint(toScreen, a), transformPoint(toScreen, b)]
    if (end?.x !== a.x || end.y !== a.y) ctx.moveTo(from.x, from.y)
    ctx.lineTo(to.x, to.y)
    end = b
  }
  ctx.lineWidth = 4
  ctx.strokeStyle = '#ffffff'
  ctx.stroke()
  ctx.setLineDash([7, 5])
  ctx.strokeStyle = colours.dark ? '#5a3ea8' : colours.note
  ctx.stroke()
  ctx.restore()
}

function dot(
  ctx: CanvasRenderingContext2D,
  { x, y }: Point<'screen'>,
  radius: number,
  strong: boolean,
  act: string,
): void {
  ctx.beginPath()
  ctx.arc(x, y, radius, 0, 2 * Math.PI)
  ctx.fillStyle = strong ? act : '#ffffff'
  ctx.fill()
  ctx.lineWidth = 2
  ctx.strokeStyle = strong ? '#ffffff' : act
  ctx.stroke()
}

function paintPoints(
  ctx: CanvasRenderingContext2D,
  ring: Ring<'leaf'>,
  focus: number | null,
  view: View,
  colours: BoardColours,
): void {
  const toScreen = viewTransform<'leaf'>(view)
  const act = colours.dark ? '#0a6a72' : colours.act
  const places = ring.map((p) => transformPoint(toScreen, p))
  // where points stand close they are drawn small, so that the edge between them can still be seen
  places.forEach((place, i) => {
    const next = places[(i + 1) % places.length]!
    const near = Math.hypot(next.x - place.x, next.y - place.y) < 16
    if (i !== focus) dot(ctx, place, near ? 3.5 : 5.5, false, act)
  })
  const focused = focus === null ? undefined : places[focus]
  if (!focused) return
  ctx.beginPath()
  ctx.arc(focused.x, focused.y, 13, 0, 2 * Math.PI)
  ctx.lineWidth = 3
  ctx.strokeStyle = act
  ctx.stroke()
  dot(ctx, focused, 7, true, act)
}

function paintCorners(
  ctx: CanvasRenderingContext2D,
  corners: readonly Point<'leaf'>[],
  view: View,
  colours: BoardColours,
): void {
  const places = corners.map((p) => transformPoint(viewTransform<'leaf'>(view), p))
  ctx.beginPath()
  places.forEach(({ x, y }, i) => (i === 0 ? ctx.moveTo(x, y) : ctx.lineTo(x, y)))
  twice(ctx, colours, 2)
  places.forEach((place, i) => dot(ctx, place, i === 0 ? 7 : 5, i === 0, colours.dark ? '#0a6a72' : colours.act))
}

function paintHandles(ctx: CanvasRenderingContext2D, scene: OutlineScene, draft: OutlineDraft, view: View): void {
  const { selected, colours, wood } = scene
  const defect = selected?.kind === 'defect' ? wood.defects.find(({ id }) => id === selected.defect) : undefined
  const shape = draft.shape ?? defect
  if (!defect || !shape) return
  const toScreen = viewTransform<'leaf'>(view)
  for (const handle of shapeHandles(shape))
    dot(ctx, transformPoint(toScreen, handle), 6.5, true, colours.dark ? '#0a6a72' : colours.act)
}

/** Where the point with the keyboard lies, in words beside it. */
function paintPlace(
  ctx: CanvasRenderingContext2D,
  at: Point<'leaf'>,
  { unit, colours }: OutlineScene,
  view: View,
  { width, height }: Size,
): void {
  const { x, y } = transformPoint(viewTransform<'leaf'>(view), at)
  const words = placeWords(at, unit)
  const wide = plateWidth(words, colours, true)
  const held = Math.min(width - wide / 2 - 4, Math.max(wide / 2 + 4, x))
  const below = y < height / 2
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.inkSoft
  strokeLine(ctx, { x, y: y + (below ? 14 : -14) }, { x: held, y: y + (below ? 26 : -26) })
  drawPlate(ctx, words, { x: held, y: y + (below ? 36 : -36), width: wide, height: 22 }, colours, true)
}

/** `742 mm from the numbered end, 18 mm across` */
export const placeWords = ({ x, y }: Point<'leaf'>, unit: OutlineScene['unit']): string =>
  `${showLength(y, unit, 'place')} along, ${showLength(x, unit, 'place')} across`
