import type { Box } from '../../core/geometry/box'
import { point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import { transformPoint } from '../../core/geometry/transform'
import type { FaceScene } from '../board-types'
import { strokeLine, traceRing } from '../paint/paths'
import { boxOnScreen, viewTransform, type View } from '../view'
import type { FaceLayout } from './face-layout'
import { paintSeamLines, paintString } from './paint-cells'

/** Outlines, seams and centre lines of a face: everything that is a line on the wood. */
export function paintLines(ctx: CanvasRenderingContext2D, scene: FaceScene, layout: FaceLayout, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  veilOverhang(ctx, scene, view)
  paintString(ctx, scene.string, toScreen)
  paintSeamLines(ctx, scene.seams, toScreen)
  outline(ctx, view, scene.outlines.sheet.ring, { dash: [6, 4], width: 1, colour: scene.colours.inkSoft, soft: true })
  if (differs(scene.core, scene.finished) && differs(scene.core, scene.sheet))
    outline(ctx, view, scene.outlines.core.ring, { dash: [2, 3], width: 1.25, colour: '#fff8ea', soft: true })
  finishedOutline(ctx, scene, view)
  centreLines(ctx, scene, layout, view)
  selectedCell(ctx, scene, view)
  selectedSeam(ctx, scene, view)
}

const differs = (p: Box<'panel'>, q: Box<'panel'>): boolean =>
  Math.max(
    Math.abs(p.min.x - q.min.x),
    Math.abs(p.min.y - q.min.y),
    Math.abs(p.max.x - q.max.x),
    Math.abs(p.max.y - q.max.y),
  ) > 0.01

/** What will be trimmed off is paler than the face. */
function veilOverhang(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  ctx.beginPath()
  traceRing(ctx, toScreen, scene.outlines.sheet.ring)
  traceRing(ctx, toScreen, scene.outlines.finished.ring)
  ctx.globalAlpha = 0.42
  ctx.fillStyle = scene.colours.ground
  ctx.fill('evenodd')
  ctx.globalAlpha = 1
}

interface LineLook {
  readonly dash: readonly number[]
  readonly width: number
  readonly colour: string
  /** With a soft dark edge. */
  readonly soft: boolean
}

function outline(ctx: CanvasRenderingContext2D, view: View, ring: Ring<'panel'>, look: LineLook): void {
  ctx.beginPath()
  traceRing(ctx, viewTransform<'panel'>(view), ring)
  if (look.soft) {
    ctx.lineWidth = look.width + 1.5
    ctx.strokeStyle = 'rgb(20 12 4 / 0.28)'
    ctx.stroke()
  }
  ctx.lineWidth = look.width
  ctx.strokeStyle = look.colour
  ctx.setLineDash([...look.dash])
  ctx.stroke()
  ctx.setLineDash([])
}

/** The edge of the finished panel: strong on dark wood and on light. */
function finishedOutline(ctx: CanvasRenderingContext2D, { outlines }: FaceScene, view: View): void {
  ctx.beginPath()
  traceRing(ctx, viewTransform<'panel'>(view), outlines.finished.ring)
  ctx.lineJoin = 'miter'
  ctx.lineWidth = 3.5
  ctx.strokeStyle = 'rgb(20 12 4 / 0.55)'
  ctx.stroke()
  ctx.lineWidth = 1.25
  ctx.strokeStyle = '#fff8ea'
  ctx.stroke()
}

/**
 * The middle of the finished panel: a dash-dot line that comes in from each edge, with a tick outside, and a small cross
 * where the two meet. The figure is left free.
 */
function centreLines(ctx: CanvasRenderingContext2D, scene: FaceScene, layout: FaceLayout, view: View): void {
  const sheet = boxOnScreen(view, scene.sheet)
  const centre = transformPoint(viewTransform<'panel'>(view), point<'panel'>(0, 0))
  for (const across of [true, false]) {
    const at = (along: number) => (across ? { x: centre.x, y: along } : { x: along, y: centre.y })
    const middle = across ? centre.y : centre.x
    for (const [end, out] of [
      [across ? sheet.min.y : sheet.min.x, -1],
      [across ? sheet.max.y : sheet.max.x, 1],
    ] as const) {
      const tip = at(end + out * TICK)
      onWood(ctx, scene, () => {
        ctx.setLineDash([12, 4, 2, 4])
        strokeLine(ctx, at(end), at(end - out * Math.min(INWARD, Math.abs(end - middle))))
        ctx.setLineDash([])
      })
      if (
        layout.plates.some(
          (plate) =>
            Math.abs(plate.x - tip.x) < plate.width / 2 + 5 && Math.abs(plate.y - tip.y) < plate.height / 2 + 8,
        )
      )
        continue
      ctx.lineWidth = 1.5
      ctx.strokeStyle = scene.colours.note
      strokeLine(ctx, at(end + out * 3), tip)
      const wing = across ? { x: 4, y: 0 } : { x: 0, y: 4 }
      strokeLine(ctx, { x: tip.x - wing.x, y: tip.y - wing.y }, { x: tip.x + wing.x, y: tip.y + wing.y })
    }
    onWood(ctx, scene, () => strokeLine(ctx, at(middle - 9), at(middle + 9)))
  }
}

const TICK = 14
const INWARD = 40

/** A line that shows on dark wood and on light. */
function onWood(ctx: CanvasRenderingContext2D, { colours }: FaceScene, draw: () => void): void {
  ctx.lineWidth = 3
  ctx.strokeStyle = 'rgb(255 255 255 / 0.55)'
  draw()
  ctx.lineWidth = 1.25
  ctx.strokeStyle = colours.dark ? '#5a3ea8' : colours.note
  draw()
}

function selectedCell(ctx: CanvasRenderingContext2D, { cells, selected, colours }: FaceScene, view: View): void {
  const cell = selected?.kind === 'cell' ? cells.find(({ id }) => id === selected.cell) : undefined
  if (!cell) return
  ctx.beginPath()
  traceRing(ctx, viewTransform<'panel'>(view), cell.ring)
  ctx.lineJoin = 'round'
  ctx.lineWidth = 6
  ctx.strokeStyle = 'rgb(255 255 255 / 0.7)'
  ctx.stroke()
  ctx.lineWidth = 3
  ctx.strokeStyle = colours.dark ? '#0a6a72' : colours.act
  ctx.stroke()
}

function selectedSeam(ctx: CanvasRenderingContext2D, { seams, selected, colours }: FaceScene, view: View): void {
  const seam = selected?.kind === 'seam' ? seams.find(({ letter }) => letter === selected.letter) : undefined
  if (!seam) return
  const toScreen = viewTransform<'panel'>(view)
  ctx.beginPath()
  for (const { x, y } of seam.line.map((p) => transformPoint(toScreen, p))) ctx.lineTo(x, y)
  ctx.lineWidth = 6
  ctx.strokeStyle = 'rgb(255 255 255 / 0.7)'
  ctx.stroke()
  ctx.lineWidth = 3
  ctx.strokeStyle = colours.dark ? '#0a6a72' : colours.act
  ctx.stroke()
}
