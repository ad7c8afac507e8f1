import { boxAround } from '../../core/geometry/box'
import { ringCovers, ringEdges } from '../../core/geometry/polygon'
import { between } from '../../core/geometry/point'
import { compose, invert, transformPoint, type Transform } from '../../core/geometry/transform'
import type { BoardColours, FaceCell, FaceScene, FaceSeam } from '../board-types'
import { drawDefect } from '../paint/defects'
import { hatch, traceRing } from '../paint/paths'
import { drawText, SMALL } from '../paint/text'
import { drawWood, seenThrough } from '../paint/wood'
import { viewTransform, type View } from '../view'

/** The wood of a face: every cell with its own leaf, as it will lie, cut to the cell. */
export function paintCells(ctx: CanvasRenderingContext2D, scene: FaceScene, view: View): void {
  const toScreen = viewTransform<'panel'>(view)
  if (scene.showLeaves) for (const cell of scene.cells) ghostLeaf(ctx, cell, toScreen, scene)
  for (const cell of scene.cells) paintCell(ctx, cell, toScreen, scene.colours)
}

/** One cell, clipped. Where the leaf does not reach, the sheet stays bare and is hatched. */
export function paintCell(
  ctx: CanvasRenderingContext2D,
  cell: FaceCell,
  toScreen: Transform<'panel', 'screen'>,
  colours: BoardColours,
): void {
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, cell.ring)
  ctx.clip()
  if (!isCovered(cell)) bareCell(ctx, cell, toScreen, colours)
  if (cell.leaf !== null) {
    const leafToScreen = compose(toScreen, cell.leafToPanel)
    drawWood(ctx, {
      wood: cell.wood,
      turnedOver: cell.turnedOver,
      toScreen: leafToScreen,
      seen: seenThrough(cell.ring, invert(cell.leafToPanel)),
      colours,
    })
    for (const defect of cell.wood.defects) drawDefect(ctx, leafToScreen, defect, colours)
  }
  ctx.restore()
}

/** Whether the leaf reaches to all corners of the cell and the middles of its edges. */
function isCovered({ leaf, ring, leafToPanel, wood }: FaceCell): boolean {
  if (leaf === null) return false
  const back = invert(leafToPanel)
  return ringEdges(ring).every(({ a, b }) =>
    [a, between(a, b, 0.5)].every((p) => ringCovers(wood.outline, transformPoint(back, p))),
  )
}

function bareCell(
  ctx: CanvasRenderingContext2D,
  cell: FaceCell,
  toScreen: Transform<'panel', 'screen'>,
  colours: BoardColours,
): void {
  const box = boxAround(cell.ring.map((p) => transformPoint(toScreen, p)))
  ctx.fillStyle = colours.sheet
  ctx.fill()
  ctx.strokeStyle = colours.note
  ctx.globalAlpha = 0.5
  ctx.lineWidth = 1
  hatch(ctx, box, 11)
  ctx.globalAlpha = 1
  if (cell.leaf !== null) return
  drawText(ctx, 'no leaf', (box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2, {
    font: colours.font,
    colour: colours.ink,
    size: SMALL,
    align: 'center',
    halo: colours.sheet,
  })
}

/** The rest of a leaf beyond its cell, faintly. */
function ghostLeaf(
  ctx: CanvasRenderingContext2D,
  cell: FaceCell,
  toScreen: Transform<'panel', 'screen'>,
  { colours, selected }: FaceScene,
): void {
  if (cell.leaf === null) return
  const isSelected = selected?.kind === 'cell' && selected.cell === cell.id
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, compose(toScreen, cell.leafToPanel), cell.wood.outline)
  ctx.globalAlpha = isSelected ? 0.28 : 0.05
  ctx.fillStyle = colours.wood
  ctx.fill()
  ctx.globalAlpha = isSelected ? 0.9 : 0.35
  ctx.lineWidth = 1
  ctx.setLineDash([2, 3])
  ctx.strokeStyle = colours.inkSoft
  ctx.stroke()
  ctx.restore()
}

/** A hairline with a soft dark edge: the figure is seen to meet there. Finer in small drawings. */
export function paintSeamLines(
  ctx: CanvasRenderingContext2D,
  seams: readonly FaceSeam[],
  toScreen: Transform<'panel', 'screen'>,
  finely = false,
): void {
  ctx.beginPath()
  for (const { edge } of seams) {
    const [a, b] = [transformPoint(toScreen, edge.a), transformPoint(toScreen, edge.b)]
    ctx.moveTo(a.x, a.y)
    ctx.lineTo(b.x, b.y)
  }
  ctx.lineCap = 'butt'
  for (const [width, colour] of SEAM) {
    ctx.lineWidth = finely ? width / 2 : width
    ctx.strokeStyle = colour
    ctx.stroke()
  }
}

const SEAM: readonly (readonly [number, string])[] = [
  [3.4, 'rgb(20 12 4 / 0.12)'],
  [2, 'rgb(20 12 4 / 0.24)'],
  [0.9, 'rgb(255 246 232 / 0.75)'],
]
