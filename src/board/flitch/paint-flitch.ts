import { boxAround } from '../../core/geometry/box'
import type { LeafState } from '../../core/leaves/leaf'
import { bareLength, showLength } from '../../core/units/show-length'
import type { BoardColours, FlitchScene } from '../board-types'
import { paintNumber, paintTaken, paintWholeLeaf } from '../leaf/paint-leaf'
import { drawPlate, plateWidth } from '../paint/marks'
import { hatch, strokeLine, traceRing } from '../paint/paths'
import { drawText, SMALL, textWidth } from '../paint/text'
import { boxOnScreen, viewTransform } from '../view'
import { GUTTER, type FlitchRow } from './flitch-layout'

interface RowLook {
  /** Of the board, px. */
  readonly width: number
  readonly selected: boolean
}

/** One leaf with its number, its size, and words on what has become of it. */
export function paintRow(ctx: CanvasRenderingContext2D, row: FlitchRow, scene: FlitchScene, look: RowLook): void {
  const { leaf, view, leafTop, bottom } = row
  const { colours } = scene
  const middle = (leafTop + bottom) / 2
  const start = boxOnScreen(view, boxAround(leaf.wood.outline)).min.x
  if (look.selected) markRow(ctx, row, look.width, colours)
  paintWholeLeaf(ctx, leaf.wood, view, colours)
  for (const piece of leaf.taken) paintTaken(ctx, piece, view, colours)
  if (leaf.state !== 'in use') paintState(ctx, row, colours)
  paintNumber(ctx, leaf.number, Math.max(GUTTER - 12, start - 12), middle, colours, 22)
  paintWords(ctx, row, scene, look)
  if (row.missingAfter > 0) paintGap(ctx, row, look.width, colours)
}

function markRow(
  ctx: CanvasRenderingContext2D,
  { top, bottom }: FlitchRow,
  width: number,
  colours: BoardColours,
): void {
  ctx.beginPath()
  ctx.roundRect(4, top - 3, width - 8, bottom - top + 10, 8)
  ctx.fillStyle = colours.sheet
  ctx.fill()
  ctx.lineWidth = 2
  ctx.strokeStyle = colours.act
  ctx.stroke()
}

/** Size, state and note on the line above the leaf. What the state is stands in words. */
function paintWords(ctx: CanvasRenderingContext2D, row: FlitchRow, scene: FlitchScene, { width }: RowLook): void {
  const { leaf, top } = row
  const { colours, unit } = scene
  const y = top + 13
  const size = `${bareLength(leaf.width, unit, 'place')} × ${showLength(leaf.length, unit, 'place')}`
  const style = { font: colours.font, size: SMALL, colour: colours.inkSoft }
  drawText(ctx, size, GUTTER, y, style)
  let x = GUTTER + textWidth(size, style) + 14
  if (leaf.state !== 'in use') {
    const wide = plateWidth(leaf.state, colours, true)
    drawPlate(ctx, leaf.state, { x: x + wide / 2, y, width: wide, height: 19 }, colours, true)
    x += wide + 12
  }
  const remarks = [defectWords(leaf.wood.defects.length), takenWords(leaf.taken), leaf.note]
  for (const remark of remarks.filter((words) => words !== '')) {
    const wide = textWidth(remark, style)
    if (x + wide > width - 8) break
    drawText(ctx, remark, x, y, style)
    x += wide + 14
  }
}

const defectWords = (count: number): string => (count === 0 ? '' : count === 1 ? '1 defect' : `${count} defects`)

const takenWords = (taken: readonly { readonly name: string }[]): string =>
  taken.length === 0 ? '' : `taken by ${[...new Set(taken.map(({ name }) => name))].join('; ')}`

/** A spare is hatched one way, a leaf set aside both ways and paler. */
function paintState(ctx: CanvasRenderingContext2D, { leaf, view }: FlitchRow, colours: BoardColours): void {
  const box = boxOnScreen(view, boxAround(leaf.wood.outline))
  const slopes: Readonly<Record<LeafState, readonly (1 | -1)[]>> = { 'in use': [], spare: [1], 'set aside': [1, -1] }
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, viewTransform<'leaf'>(view), leaf.wood.outline)
  ctx.clip()
  ctx.globalAlpha = leaf.state === 'set aside' ? 0.62 : 0.3
  ctx.fillStyle = colours.ground
  ctx.fill()
  ctx.globalAlpha = 0.45
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.ink
  for (const slope of slopes[leaf.state]) hatch(ctx, box, 16, slope)
  ctx.restore()
}

/** Leaves that are known to be missing leave a gap with words in it. */
function paintGap(
  ctx: CanvasRenderingContext2D,
  { bottom, missingAfter }: FlitchRow,
  width: number,
  colours: BoardColours,
): void {
  const words = missingAfter === 1 ? '1 leaf missing' : `${missingAfter} leaves missing`
  const style = { font: colours.font, size: SMALL, colour: colours.inkSoft }
  const y = bottom + 20
  drawText(ctx, words, GUTTER, y, style)
  ctx.setLineDash([4, 4])
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.inkSoft
  strokeLine(ctx, { x: GUTTER + textWidth(words, style) + 10, y }, { x: width - 16, y })
  ctx.setLineDash([])
}
