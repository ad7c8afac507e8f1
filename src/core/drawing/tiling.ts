import { boxHeight, boxWidth, type Box, type Edges } from '../geometry/box'
import { point } from '../geometry/point'
import { GRID } from '../geometry/tolerance'
import type { Transform } from '../geometry/transform'
import { ok, refused, type Result } from '../result'
import { clippedItems } from './clip-items'
import type { Drawing } from './drawing'
import { placed } from './placed'

/** How a drawing at full size goes on several pages. All lengths are mm as they come out of the printer. */
export interface Tiling {
  readonly columns: number
  readonly rows: number
  /** Row by row; blank ones among them, marked. */
  readonly pages: readonly Tile[]
  readonly orientation: Orientation
  /** The drawing has been given a quarter turn (its top to the left): the windows are windows of `turnedDrawing`. */
  readonly turned: boolean
  /** The page as it is seen, lying or upright. */
  readonly page: PageSize
  readonly margins: Edges
  readonly overlap: number
}

export type Orientation = 'upright' | 'lying'

export interface PageSize {
  readonly width: number
  readonly height: number
}

/** One page of a tiling. */
export interface Tile {
  /** Column letter and row number, as on a map: `B2` lies to the right of `A2` and under `B1`. */
  readonly name: string
  readonly row: number
  readonly column: number
  /** What of the drawing is on this page, in the drawing's own millimetres. */
  readonly window: Box<'sheet'>
  /** Nothing of the drawing is in the window, so the page need not be printed. */
  readonly blank: boolean
}

export interface TilingOptions {
  /** The paper; whichever way round it is given. */
  readonly page: PageSize
  /** Of the page as it is seen, upright or lying. */
  readonly margins: Edges
  /** How much of the drawing neighbours have in common. */
  readonly overlap: number
  /** One way only; left out, whichever needs fewer pages. */
  readonly orientation?: Orientation
}

export type TilingRefusal =
  /** What is left of a page between the margins must be larger than the overlap. */
  | { readonly reason: 'no room'; readonly printable: PageSize; readonly overlap: number }
  | { readonly reason: 'too many tiles'; readonly tiles: number; readonly limit: number }

/** More than anybody tapes together. */
export const MOST_TILES = 400

/**
 * The pages for a drawing: the paper upright or lying, the drawing as it is or given a quarter turn, whichever
 * needs the fewest printed pages; of equals the fewest tiles, then in the order said here.
 */
export function tile(drawing: Drawing, options: TilingOptions): Result<Tiling, TilingRefusal> {
  const { page } = options
  const short = Math.min(page.width, page.height)
  const long = Math.max(page.width, page.height)
  const pages = { upright: { width: short, height: long }, lying: { width: long, height: short } }
  const ways = (options.orientation ? [options.orientation] : (['upright', 'lying'] as const)).map((orientation) => ({
    orientation,
    page: pages[orientation],
  }))
  const tried = [drawing, turnedDrawing(drawing)].flatMap((seen, i) =>
    ways.map((way) => tiledOneWay(seen, i === 1, way.orientation, way.page, options)),
  )
  const found = tried.flatMap((result) => (result.ok ? [result.value] : []))
  if (found.length === 0) return tried[0]!
  return ok(found.reduce((best, next) => (isFewer(next, best) ? next : best)))
}

/** How many pages come out of the printer. */
export const printedTiles = ({ pages }: Tiling): number =>
  pages.reduce((count, { blank }) => count + (blank ? 0 : 1), 0)

function isFewer(p: Tiling, q: Tiling): boolean {
  return printedTiles(p) !== printedTiles(q) ? printedTiles(p) < printedTiles(q) : p.pages.length < q.pages.length
}

/** The drawing given a quarter turn anticlockwise as seen, so that its top lies to the left. */
export function turnedDrawing({ title, extent: { min, max }, items }: Drawing): Drawing {
  const quarterTurn: Transform<'sheet', 'sheet'> = { a: 0, b: -1, c: 1, d: 0, e: 0, f: 0 }
  const extent = { min: point<'sheet'>(min.y, -max.x), max: point<'sheet'>(max.y, -min.x) }
  return { title, extent, items: placed(items, quarterTurn) }
}

/** Tiles of length `printable` with `overlap` in common that cover `length`; what is less than 1 µm over adds none. */
export function tilesAlong(length: number, printable: number, overlap: number): number {
  return length <= printable + GRID ? 1 : Math.ceil((length - overlap - GRID) / (printable - overlap))
}

function tiledOneWay(
  drawing: Drawing,
  turned: boolean,
  orientation: Orientation,
  page: PageSize,
  { margins, overlap }: TilingOptions,
): Result<Tiling, TilingRefusal> {
  const printable = {
    width: page.width - margins.left - margins.right,
    height: page.height - margins.top - margins.bottom,
  }
  if (!(printable.width > overlap && printable.height > overlap && overlap >= 0))
    return refused({ reason: 'no room', printable, overlap })
  const columns = tilesAlong(boxWidth(drawing.extent), printable.width, overlap)
  const rows = tilesAlong(boxHeight(drawing.extent), printable.height, overlap)
  if (!(columns * rows <= MOST_TILES))
    return refused({ reason: 'too many tiles', tiles: columns * rows, limit: MOST_TILES })
  const pages = Array.from({ length: columns * rows }, (_, i) =>
    tileAt(drawing, i % columns, Math.floor(i / columns), printable, overlap),
  )
  return ok({ columns, rows, pages, orientation, turned, page, margins, overlap })
}

function tileAt(drawing: Drawing, column: number, row: number, printable: PageSize, overlap: number): Tile {
  const { min } = drawing.extent
  const x = min.x + column * (printable.width - overlap)
  const y = min.y + row * (printable.height - overlap)
  const window = { min: point<'sheet'>(x, y), max: point<'sheet'>(x + printable.width, y + printable.height) }
  const blank = clippedItems(drawing.items, window).length === 0
  return { name: tileName(column, row), row, column, window, blank }
}

/** `A1` for the first column and row; after `Z` comes `AA`. */
export function tileName(column: number, row: number): string {
  let letters = ''
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26))
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters
  return `${letters}${row + 1}`
}
