import { point } from '../../core/geometry/point'
import { transformPoint } from '../../core/geometry/transform'
import { bareLength } from '../../core/units/show-length'
import type { FaceScene } from '../board-types'
import { drawDimension, legibleChain } from '../paint/dimensions'
import { drawLetter } from '../paint/marks'
import { strokeLine } from '../paint/paths'
import { drawText, SMALL } from '../paint/text'
import { boxAround, type Box } from '../../core/geometry/box'
import { boxOnScreen, viewTransform, type View } from '../view'
import { LETTERS_OFF, sizeTexts, type FaceLayout } from './face-layout'

/** Round the wood: sizes, the chain of columns, the letters of the seams and how far apart in the log they meet. */
export function paintDimensions(ctx: CanvasRenderingContext2D, scene: FaceScene, layout: FaceLayout, view: View): void {
  paintSizes(ctx, scene, layout, view)
  for (const { text, x, y } of layout.offsets)
    drawText(ctx, text, x, y, { font: scene.colours.font, size: SMALL, colour: scene.colours.inkSoft, align: 'center' })
  paintColumns(ctx, scene, view, columnsOff(scene, layout))
  for (const at of layout.letters) {
    const seam = scene.seams.find(({ letter }) => letter === at.letter)
    ctx.lineWidth = 1
    ctx.strokeStyle = scene.colours.inkSoft
    strokeLine(ctx, at.foot, at)
    drawLetter(ctx, at, at.letter, scene.colours, {
      selected: scene.selected?.kind === 'seam' && scene.selected.letter === at.letter,
      breaks: seam?.meets === 'breaks' && seam.band === null,
    })
  }
}

/** Overall width beyond the letters at the head, overall length at the left edge (lying: at the foot of the drawing). */
function paintSizes(ctx: CanvasRenderingContext2D, scene: FaceScene, layout: FaceLayout, view: View): void {
  const finished = boxOnScreen(view, scene.finished)
  const sheet = clearOfBeside(ctx, scene, view)
  const atHead = layout.letters.some(({ foot, x, y }) => (scene.lying ? x < foot.x - 4 : y < foot.y - 4))
  const off = atHead ? LETTERS_OFF + 20 + 27 * Math.max(0, layout.letterRows - 1) : 22
  const [width, length] = sizeTexts(scene)
  const beside = layout.letters.some(({ foot, x, y }) => (scene.lying ? y > foot.y + 4 : x < foot.x - 4)) ? 46 : 22
  if (scene.lying) {
    drawDimension(
      ctx,
      {
        along: 'y',
        at: sheet.min.x - off,
        from: finished.min.y,
        to: finished.max.y,
        text: width,
        side: -1,
        leadTo: sheet.min.x,
      },
      scene.colours,
    )
    drawDimension(
      ctx,
      {
        along: 'x',
        at: sheet.max.y + beside,
        from: finished.min.x,
        to: finished.max.x,
        text: length,
        side: 1,
        leadTo: sheet.max.y,
      },
      scene.colours,
    )
    return
  }
  drawDimension(
    ctx,
    {
      along: 'x',
      at: sheet.min.y - off,
      from: finished.min.x,
      to: finished.max.x,
      text: width,
      side: -1,
      leadTo: sheet.min.y,
    },
    scene.colours,
  )
  drawDimension(
    ctx,
    {
      along: 'y',
      at: sheet.min.x - beside,
      from: finished.min.y,
      to: finished.max.y,
      text: length,
      side: -1,
      leadTo: sheet.min.x,
    },
    scene.colours,
  )
}

/** The finished widths of the columns, at the foot (lying: at the right). */
function paintColumns(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View, off: number): void {
  if (scene.columns.length < 2) return
  const toScreen = viewTransform<'panel'>(view)
  const sheet = clearOfBeside(ctx, scene, view)
  const along = scene.lying ? 'y' : 'x'
  const links = scene.columns.map(({ from, to }) => {
    const [p, q] = [transformPoint(toScreen, point<'panel'>(from, 0)), transformPoint(toScreen, point<'panel'>(to, 0))]
    const text = bareLength(to - from, scene.unit, 'seam')
    return scene.lying ? { from: q.y, to: p.y, text } : { from: p.x, to: q.x, text }
  })
  const ordered = scene.lying ? [...links].reverse() : links
  for (const link of legibleChain(ordered, along, scene.colours))
    drawDimension(
      ctx,
      {
        along,
        at: (scene.lying ? sheet.max.x : sheet.max.y) + off,
        ...link,
        side: 1,
        leadTo: (scene.lying ? sheet.max.x : sheet.max.y) + off - 20,
      },
      scene.colours,
    )
}

/**
 * What dimensions stand off from: the sheet, and on the sides where other parts hang those too. Where they reach to the rim
 * of the board, sizes stand on their wood.
 */
function clearOfBeside(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): Box<'screen'> {
  const sheet = boxOnScreen(view, scene.sheet)
  if (scene.beside.length === 0) return sheet
  const { min, max } = boxOnScreen(
    view,
    boxAround([scene.sheet.min, scene.sheet.max, ...scene.beside.flatMap((other) => other.sheet)]),
  )
  const { clientWidth, clientHeight } = ctx.canvas
  return {
    min: point(min.x > ROOM ? min.x : sheet.min.x, min.y > ROOM ? min.y : sheet.min.y),
    max: point(max.x < clientWidth - ROOM ? max.x : sheet.max.x, max.y < clientHeight - ROOM ? max.y : sheet.max.y),
  }
}

/** Px for a size and its line. */
const ROOM = 48

/** How far out the chain of columns stands: beyond the offsets. */
function columnsOff({ lying }: FaceScene, { offsets }: FaceLayout): number {
  if (offsets.length === 0) return 22
  return lying ? Math.max(...offsets.map(({ width }) => width)) + 24 : 38
}
