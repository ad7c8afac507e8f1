import { point } from '../../core/geometry/point'
import { ringCentroid } from '../../core/geometry/pole'
import { ringCovers } from '../../core/geometry/polygon'
import { transformPoint } from '../../core/geometry/transform'
import type { PartsScene } from '../board-types'
import { paintCell, paintSeamLines, paintString } from '../face/paint-cells'
import { drawTag, tagSize, type Tag } from '../paint/marks'
import { traceRing } from '../paint/paths'
import { drawText, NORMAL, SMALL } from '../paint/text'
import { viewTransform } from '../view'
import { partWords, type PlacedPart } from './parts-layout'

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
  traceRing(ctx, toScreen, part.outline)
  ctx.clip()
  for (const cell of part.cells) paintCell(ctx, cell, toScreen, colours)
  paintString(ctx, part.string, toScreen)
  paintSeamLines(ctx, part.seams, toScreen, true)
  ctx.restore()
  ctx.beginPath()
  traceRing(ctx, toScreen, part.outline)
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
  drawText(ctx, partWords(part, unit), x, y + 34, {
    font: colours.font,
    colour: colours.inkSoft,
    size: SMALL,
    align: 'center',
  })
}

/** Small tags, where every cell has room for its own: half the numbers of a face would say less than none. */
function paintNumbers(ctx: CanvasRenderingContext2D, { part, view }: PlacedPart, colours: PartsScene['colours']): void {
  const toScreen = viewTransform<'panel'>(view)
  const tags = part.cells.flatMap(({ leaf, ring, turnedOver }): readonly (Tag & { fits: boolean })[] => {
    if (leaf === null) return []
    const outline = ring.map((p) => transformPoint(toScreen, p))
    const { x, y } = ringCentroid(outline)
    const size = tagSize(leaf, turnedOver, TAG, colours)
    const corners = [-1, 1].flatMap((i) =>
      [-1, 1].map((j) => point<'screen'>(x + (i * size.width) / 2, y + (j * size.height) / 2)),
    )
    return [{ ...size, x, y, number: leaf, turnedOver, fits: corners.every((p) => ringCovers(outline, p)) }]
  })
  if (tags.every(({ fits }) => fits)) for (const tag of tags) drawTag(ctx, tag, colours, false)
}
