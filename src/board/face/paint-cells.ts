import { boxAround } from '../../core/geometry/box'
import { ringCovers, ringEdges } from '../../core/geometry/polygon'
import { between, type Point } from '../../core/geometry/point'
import { compose, invert, transformPoint, type Transform } from '../../core/geometry/transform'
import type { BoardColours, FaceCell, FaceMade, FaceScene, FaceSeam, FaceString } from '../board-types'
import { drawDefect } from '../paint/defects'
import { hatch, traceRegion, traceRing } from '../paint/paths'
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
  if (cell.made) paintParts(ctx, cell, cell.made, toScreen, colours)
  else if (cell.leaf !== null) paintLeafIn(ctx, cell, cell, toScreen, colours)
  ctx.restore()
}

/** The wood of one leaf as it lies in a cell. */
function paintLeafIn(
  ctx: CanvasRenderingContext2D,
  { ring, turnedOver }: FaceCell,
  { wood, leafToPanel }: Pick<FaceCell, 'wood' | 'leafToPanel'>,
  toScreen: Transform<'panel', 'screen'>,
  colours: BoardColours,
): void {
  const leafToScreen = compose(toScreen, leafToPanel)
  const seen = seenThrough(ring, invert(leafToPanel))
  drawWood(ctx, { wood, turnedOver, toScreen: leafToScreen, seen, colours })
  for (const defect of wood.defects) drawDefect(ctx, leafToScreen, defect, colours)
}

/** A made-up leaf: each part clipped to its own wood, and the joints between them. */
function paintParts(
  ctx: CanvasRenderingContext2D,
  cell: FaceCell,
  { parts, joints }: FaceMade,
  toScreen: Transform<'panel', 'screen'>,
  colours: BoardColours,
): void {
  for (const part of parts) {
    ctx.save()
    ctx.beginPath()
    traceRegion(ctx, compose(toScreen, part.leafToPanel), part.region)
    ctx.clip('evenodd')
    paintLeafIn(ctx, cell, part, toScreen, colours)
    ctx.restore()
  }
  ctx.save()
  ctx.setLineDash(JOINT_DASH)
  strokeLines(
    ctx,
    joints.map(({ a, b }) => [a, b]),
    toScreen,
    JOINT,
  )
  ctx.restore()
}

/** Joints within a leaf are dashed, so that they are not taken for a seam between two. */
const JOINT_DASH = [9, 4]
const JOINT: readonly (readonly [number, string])[] = [
  [2.6, 'rgb(20 12 4 / 0.5)'],
  [1.2, 'rgb(255 246 232 / 0.95)'],
]

/** Whether the leaf reaches to all corners of the cell and the middles of its edges. */
function isCovered({ leaf, ring, leafToPanel, wood, made }: FaceCell): boolean {
  if (leaf === null) return false
  const back = invert(leafToPanel)
  const outline = made?.outline ?? wood.outline
  return ringEdges(ring).every(({ a, b }) =>
    [a, between(a, b, 0.5)].every((p) => ringCovers(outline, transformPoint(back, p))),
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
  traceRing(ctx, compose(toScreen, cell.leafToPanel), cell.made?.outline ?? cell.wood.outline)
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
  const along = seams.map(({ line }) => line)
  strokeLines(ctx, along, toScreen, finely ? SEAM.map(([width, colour]) => [width / 2, colour] as const) : SEAM)
}

/** The line of other wood between border and field; never so thin that it is not seen. */
export function paintString(
  ctx: CanvasRenderingContext2D,
  string: FaceString | null,
  toScreen: Transform<'panel', 'screen'>,
): void {
  if (!string) return
  ctx.beginPath()
  traceRing(ctx, toScreen, string.outside)
  traceRing(ctx, toScreen, string.inside)
  ctx.fillStyle = STRING.wood
  ctx.fill('evenodd')
  ctx.lineWidth = 0.8
  ctx.strokeStyle = STRING.edge
  ctx.stroke()
}

/** Whatever its species: a string is light against the wood that it parts. */
const STRING = { wood: '#ecd9b0', edge: 'rgb(40 24 8 / 0.55)' }

function strokeLines(
  ctx: CanvasRenderingContext2D,
  along: readonly (readonly Point<'panel'>[])[],
  toScreen: Transform<'panel', 'screen'>,
  lines: readonly (readonly [number, string])[],
): void {
  ctx.beginPath()
  for (const line of along)
    line.forEach((p, i) => {
      const { x, y } = transformPoint(toScreen, p)
      if (i === 0) ctx.moveTo(x, y)
      else ctx.lineTo(x, y)
    })
  ctx.lineCap = 'butt'
  for (const [width, colour] of lines) {
    ctx.lineWidth = width
    ctx.strokeStyle = colour
    ctx.stroke()
  }
}

const SEAM: readonly (readonly [number, string])[] = [
  [3.4, 'rgb(20 12 4 / 0.12)'],
  [2, 'rgb(20 12 4 / 0.24)'],
  [0.9, 'rgb(255 246 232 / 0.75)'],
]
