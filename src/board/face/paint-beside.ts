import { boxAround, type Box } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import { transformPoint, type Transform } from '../../core/geometry/transform'
import type { FaceBeside, FaceScene } from '../board-types'
import { traceRing } from '../paint/paths'
import { drawText, SMALL, textWidth } from '../paint/text'
import { viewTransform, type View } from '../view'
import { paintCell, paintSeamLines } from './paint-cells'

/** How much paler what hangs beside a face is than the face that is worked on. */
const PALER = 0.3

/** The parts that hang beside a face that is worked on: their wood, paler, and what is trimmed off paler still. */
export function paintBeside(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  for (const other of scene.beside) {
    for (const cell of other.cells) paintCell(ctx, cell, toScreen, scene.colours)
    paintSeamLines(ctx, other.seams, toScreen, true)
    ctx.fillStyle = scene.colours.ground
    veil(ctx, other, toScreen, PALER, false)
    veil(ctx, other, toScreen, 0.45, true)
    ctx.beginPath()
    traceRing(ctx, toScreen, other.finished)
    ctx.lineWidth = 1
    ctx.strokeStyle = scene.colours.inkSoft
    ctx.stroke()
  }
}

function veil(
  ctx: CanvasRenderingContext2D,
  { finished, sheet }: FaceBeside,
  toScreen: Transform<'panel', 'screen'>,
  alpha: number,
  onlyOver: boolean,
): void {
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, sheet)
  if (onlyOver) traceRing(ctx, toScreen, finished)
  ctx.globalAlpha = alpha
  ctx.fill('evenodd')
  ctx.restore()
}

/** Their names, on a plate in the middle of each; where the rim of the board cuts one off, clear of the sizes on its wood. */
export function paintBesideNames(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  const { font, ink, sheet } = scene.colours
  for (const { finished, name } of scene.beside) {
    const box = boxAround(finished.map((p) => transformPoint(toScreen, p)))
    const [min, max] = [shown(box.min, ctx.canvas), shown(box.max, ctx.canvas)]
    if (max.x - min.x < LEAST_SEEN || max.y - min.y < LEAST_SEEN) continue
    const words = fitting(name, max.x - min.x - 24, (text) => textWidth(text, { font, size: SMALL }))
    const width = textWidth(words, { font, size: SMALL }) + 16
    const [x, y] = [(min.x + max.x) / 2, nameAt(box, ctx.canvas)]
    ctx.beginPath()
    ctx.roundRect(x - width / 2, y - 14, width, 28, 6)
    ctx.globalAlpha = 0.92
    ctx.fillStyle = sheet
    ctx.fill()
    ctx.globalAlpha = 1
    drawText(ctx, words, x, y, { font, colour: ink, size: SMALL, align: 'center' })
  }
}

/** How far down the board a name stands: at the rim that cuts its part off, since sizes stand at the face and half-way along. */
function nameAt({ min, max }: Box<'screen'>, { clientWidth, clientHeight }: HTMLCanvasElement): number {
  const [above, below] = [min.y < 0, max.y > clientHeight]
  if (above !== below) return above ? FROM_RIM : clientHeight - FROM_RIM
  const [high, low] = [Math.max(0, min.y), Math.min(clientHeight, max.y)]
  return high + (low - high) * (min.x < 0 || max.x > clientWidth ? 0.25 : 0.5)
}

/** Px from the rim of the board to the middle of a name. */
const FROM_RIM = 24

/** What is seen is no smaller than this where a name stands on it, px. */
const LEAST_SEEN = 40

/** The spot of the board that is nearest. */
const shown = ({ x, y }: Point<'screen'>, { clientWidth, clientHeight }: HTMLCanvasElement): Point<'screen'> =>
  point(Math.min(clientWidth, Math.max(0, x)), Math.min(clientHeight, Math.max(0, y)))

/** As much of a name as there is room for. */
function fitting(name: string, room: number, widthOf: (text: string) => number): string {
  let words = name
  while (words.length > 1 && widthOf(words) > room) words = `${words.replace(/…$/, '').slice(0, -1)}…`
  return words
}
