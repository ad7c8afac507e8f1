import { boxAround, boxCentre, boxHeight, boxRing, boxWidth } from '../../core/geometry/box'
import { transformPoint } from '../../core/geometry/transform'
import { bareLength, showLength } from '../../core/units/show-length'
import type { PartsScene } from '../board-types'
import { paintCell, paintSeamLines } from '../face/paint-cells'
import { drawTag, tagSize } from '../paint/marks'
import { traceRing } from '../paint/paths'
import { drawText, NORMAL, SMALL } from '../paint/text'
import { viewTransform } from '../view'
import type { PlacedPart } from './parts-layout'

const TAG = 19

/** A part with its face, as it will be when it is finished, its name and its size. */
export function paintPart(
  ctx: CanvasRenderingContext2D,
  placed: PlacedPart,
  { colours, unit }: PartsScene,
  selected: boolean,
): void {
  const { part, view } = placed
  const toScreen = viewTransform<'panel'>(view)
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, boxRing(part.finished))
  ctx.clip()
  for (const cell of part.cells) paintCell(ctx, cell, toScreen, colours)
  paintSeamLines(ctx, part.seams, toScreen)
  ctx.restore()
  ctx.beginPath()
  traceRing(ctx, toScreen, boxRing(part.finished))
  if (selected) {
    ctx.lineWidth = 6
    ctx.strokeStyle = colours.act
    ctx.stroke()
  }
  ctx.lineWidth = selected ? 2 : 1.25
  ctx.strokeStyle = selected ? colours.sheet : colours.inkSoft
  ctx.stroke()
  paintNumbers(ctx, placed, colours)
  const [x, y] = [placed.x + placed.width / 2, placed.y + placed.height]
  const name = { font: colours.font, colour: colours.ink, size: NORMAL, bold: true, align: 'center' } as const
  drawText(ctx, part.name, x, y + 16, name)
  const size = `${bareLength(boxWidth(part.finished), unit, 'whole')} × ${showLength(boxHeight(part.finished), unit, 'whole')}`
  drawText(ctx, part.remark === '' ? size : `${size}, ${part.remark}`, x, y + 34, {
    font: colours.font,
    colour: colours.inkSoft,
    size: SMALL,
    align: 'center',
  })
}

/** Small tags in the cells that have room for one. */
function paintNumbers(ctx: CanvasRenderingContext2D, { part, view }: PlacedPart, colours: PartsScene['colours']): void {
  const toScreen = viewTransform<'panel'>(view)
  for (const { leaf, ring, turnedOver } of part.cells) {
    if (leaf === null) continue
    const box = boxAround(ring.map((p) => transformPoint(toScreen, p)))
    const size = tagSize(leaf, turnedOver, TAG, colours)
    if (boxWidth(box) < size.width + 6 || boxHeight(box) < size.height + 6) continue
    const middle = ring.reduce((sum, p) => ({ x: sum.x + p.x / ring.length, y: sum.y + p.y / ring.length }), {
      x: 0,
      y: 0,
    })
    const at = ring.length > 4 || ring.length === 3 ? transformPoint(toScreen, middle) : boxCentre(box)
    drawTag(ctx, { ...size, x: at.x, y: at.y, number: leaf, turnedOver }, colours, false)
  }
}
