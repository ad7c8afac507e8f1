import { boxGrown, boxHeight, type Box } from '../../core/geometry/box'
import { point } from '../../core/geometry/point'
import { translation } from '../../core/geometry/transform'
import { crossMark, text } from '../../core/drawing/build'
import { clippedItems } from '../../core/drawing/clip-items'
import { SMALLEST_TEXT, type Drawing, type Item } from '../../core/drawing/drawing'
import { placed } from '../../core/drawing/placed'
import { CAP_HEIGHT } from '../../core/drawing/text-width'
import type { Tile } from '../../core/drawing/tiling'
import { CHECK_BAR } from './correction'
import type { PdfPage } from './pdf-document'
import { guide, pageWindow, sheetFoot, sheetPage, tileNote, type TileSheet } from './tile-sheet'

/** The printed neighbour on each side. */
interface Neighbours {
  readonly left: Tile | undefined
  readonly right: Tile | undefined
  readonly above: Tile | undefined
  readonly below: Tile | undefined
}

/**
 * One tile as a page: what of the drawing lies in its window, where its neighbours join and how they meet. A full
 * hairline is the edge to be cut, a dashed one the line it is laid to on the neighbour; crosses meet crosses. Pages that
 * meet edge to edge are cut on all of theirs.
 */
export function tilePage(drawing: Drawing, tile: Tile, number: number, sheet: TileSheet): PdfPage {
  const window = pageWindow(sheet)
  const { min } = tile.window
  const toPage = translation<'sheet'>(window.min.x - min.x, window.min.y - min.y)
  const neighbours = neighboursOf(tile, sheet)
  // strokes are cut exactly; the clip is a little wider so that a line on the edge keeps its full width
  const clip = boxGrown(window, { top: 0.5, right: 0.5, bottom: 0.5, left: 0.5 })
  return sheetPage(sheet, {
    label: tile.name,
    bookmark: `${sheet.title}: ${tile.name}`,
    inWindow: { window: clip, items: placed(clippedItems(drawing.items, tile.window), toPage) },
    items: [
      ...joins(window, neighbours, sheet.tiling.overlap),
      ...crosses(window, neighbours, sheet.tiling.overlap),
      ...joinNames(window, neighbours, sheet.checkBar),
      ...sheetFoot(sheet, tile.name, tileNote(sheet, number)),
    ],
  })
}

function neighboursOf({ column, row }: Tile, { tiling }: TileSheet): Neighbours {
  const at = (c: number, r: number) => tiling.pages.find((t) => t.column === c && t.row === r && !t.blank)
  return {
    left: at(column - 1, row),
    right: at(column + 1, row),
    above: at(column, row - 1),
    below: at(column, row + 1),
  }
}

function joins({ min, max }: Box<'sheet'>, { left, right, above, below }: Neighbours, overlap: number): Item[] {
  const upright = (x: number, dashed: boolean) => guide([x, min.y], [x, max.y], dashed)
  const level = (y: number, dashed: boolean) => guide([min.x, y], [max.x, y], dashed)
  const laidOver = overlap > 0
  return [
    ...(left ? [upright(min.x, false)] : []),
    ...(right ? [upright(max.x - overlap, laidOver)] : []),
    ...(above ? [level(min.y, false)] : []),
    ...(below ? [level(max.y - overlap, laidOver)] : []),
  ]
}

/** In the middle of the overlap at each corner beside a neighbour: the same spots of the drawing on every tile. */
function crosses({ min, max }: Box<'sheet'>, { left, right, above, below }: Neighbours, overlap: number): Item[] {
  const half = overlap / 2
  const corners = [
    { x: min.x + half, y: min.y + half, beside: left ?? above },
    { x: max.x - half, y: min.y + half, beside: right ?? above },
    { x: min.x + half, y: max.y - half, beside: left ?? below },
    { x: max.x - half, y: max.y - half, beside: right ?? below },
  ]
  // edge to edge a cross lies half on one page and half on the next
  const size = overlap > 0 ? Math.min(6, overlap) : 6
  return corners.flatMap(({ x, y, beside }) => (beside ? crossMark('mark', point(x, y), size) : []))
}

function joinNames(window: Box<'sheet'>, { left, right, above, below }: Neighbours, checkBar: boolean): Item[] {
  const { min, max } = window
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 }
  const cap = SMALLEST_TEXT * CAP_HEIGHT
  // on the left the bars take the foot of the edge
  const free = checkBar ? min.y + Math.max(boxHeight(window) - CHECK_BAR - 4, 0) / 2 : middle.y
  const name = (x: number, y: number, neighbour: Tile | undefined, angle: number): Item[] =>
    neighbour ? [text(point(x, y), `joins ${neighbour.name}`, { anchor: 'middle', angle })] : []
  return [
    ...name(min.x - 1.5, free, left, -Math.PI / 2),
    ...name(max.x + 1.5 + cap, middle.y, right, -Math.PI / 2),
    ...name(middle.x, min.y - 1.5, above, 0),
    ...name(middle.x, max.y + 1.5 + cap, below, 0),
  ]
}
