import { boxHeight, boxWidth, type Edges } from '../../core/geometry/box'
import { GRID } from '../../core/geometry/tolerance'
import type { Drawing } from '../../core/drawing/drawing'
import { tile, turnedDrawing, type Orientation, type Tiling, type TilingRefusal } from '../../core/drawing/tiling'
import { ok, refused, type Result } from '../../core/result'
import { pageOn, type Paper } from '../paper'
import { UNCORRECTED, type Correction } from './correction'
import { overviewPage } from './overview-page'
import type { PdfPage } from './pdf-document'
import { OVERLAP } from './printing'
import { LEAST_WINDOW, TILE_MARGINS, type TileSheet } from './tile-sheet'
import { tilePage } from './tile-page'

export interface TileOptions {
  readonly overlap?: number
  readonly correction?: Correction
  readonly orientation?: Orientation
  readonly margins?: Edges
}

export type TilePaperRefusal =
  | TilingRefusal
  /** The page has no room for the check bars beside the drawing. */
  | { readonly reason: 'paper too small'; readonly window: number; readonly least: number }

/**
 * The tiling of a drawing on a paper, with margins that hold the page's name, its neighbours and the check bars.
 * On a printer that must be told to draw larger, less goes on a page: printable ÷ correction.
 */
export function tileOnPaper(
  drawing: Drawing,
  paper: Paper,
  { overlap = OVERLAP, correction = UNCORRECTED, orientation, margins = TILE_MARGINS }: TileOptions = {},
): Result<Tiling, TilePaperRefusal> {
  const { extent } = drawing
  const room = Math.max(margins.left + margins.right, margins.top + margins.bottom) + overlap
  const told = pageOn(paper, { width: boxWidth(extent), height: boxHeight(extent) }, room)
  const page = { width: told.width / correction.across, height: told.height / correction.along }
  const tiling = tile(drawing, { page, margins, overlap, ...(orientation ? { orientation } : {}) })
  if (!tiling.ok) return tiling
  const windows = [page.width - margins.left - margins.right, page.height - margins.top - margins.bottom]
  const window = Math.min(...windows)
  return window < LEAST_WINDOW ? refused({ reason: 'paper too small', window, least: LEAST_WINDOW }) : ok(tiling.value)
}

export interface TiledPagesOptions {
  readonly title: string
  /** Bars to be measured, on every page. */
  readonly checkBar: boolean
  readonly correction?: Correction
}

/**
 * The pages of a tiled drawing, blank ones left out: first, if there is more than one, a plan of the tiles; then
 * the tiles row by row. `tiling` must come from `tileOnPaper` with the same drawing, paper and correction.
 */
export function tiledPages(drawing: Drawing, tiling: Tiling, paper: Paper, options: TiledPagesOptions): PdfPage[] {
  const seen = tiling.turned ? turnedDrawing(drawing) : drawing
  const sheet = tileSheet(tiling, paper, options)
  const tiles = tiling.pages.filter(({ blank }) => !blank)
  const pages = tiles.map((one, i) => tilePage(seen, one, i + 1, sheet))
  return pages.length > 1 ? [overviewPage(seen, sheet), ...pages] : pages
}

function tileSheet(tiling: Tiling, paper: Paper, options: TiledPagesOptions): TileSheet {
  const correction = options.correction ?? UNCORRECTED
  // a sheet that lies is fed as it stands: what is across it as seen is along its long side
  const stands = Math.abs(tiling.page.width - paper.width / correction.across) <= GRID
  const { across, along } = correction
  const sides =
    paper.height === null ? (['across the roll', 'along the roll'] as const) : (['short side', 'long side'] as const)
  return {
    title: options.title,
    checkBar: options.checkBar,
    tiling,
    paperName: paper.name,
    correction: stands ? { x: across, y: along } : { x: along, y: across },
    sideAcross: stands ? sides[0] : sides[1],
    sideDown: stands ? sides[1] : sides[0],
  }
}
