import { printedTiles, type TilingRefusal } from '../../core/drawing/tiling'
import type { Item } from '../../core/drawing/drawing'
import type { Sheet, SheetSet } from '../../core/drawing/sheet-set'
import { ok, type Result } from '../../core/result'
import { point } from '../../core/geometry/point'
import { text } from '../../core/drawing/build'
import { pageOn } from '../paper'
import { barsAcross, barsUp } from './check-bars'
import type { PdfPage } from './pdf-document'
import { correctionNote, overlapOf, type Printing } from './printing'
import { tiledPages, tileOnPaper, type TilePaperRefusal } from './tiled-pages'

export interface SheetPages {
  /** As they are printed, one behind the other. */
  readonly pages: readonly PdfPage[]
  /** The same, sheet by sheet. */
  readonly sheets: readonly { readonly sheet: Sheet; readonly pages: readonly PdfPage[] }[]
}

/** The pages of a set as they are printed: sheets laid out to fit stand upright, full-scale ones are tiled. */
export function sheetPages(set: SheetSet, printing: Printing): Result<SheetPages, TilePaperRefusal | TilingRefusal> {
  const sheets: SheetPages['sheets'][number][] = []
  for (const sheet of set.sheets) {
    const made = sheet.kind === 'page' ? ok(laidOut(sheet, printing)) : fullScale(sheet, set.title, printing)
    if (!made.ok) return made
    sheets.push({ sheet, pages: made.value })
  }
  return ok({ pages: sheets.flatMap(({ pages }) => pages), sheets })
}

/** Drawn for the paper that is there; a printer that must be told to draw larger finds less room on it. */
function laidOut(sheet: Extract<Sheet, { kind: 'page' }>, { paper, correction }: Printing): readonly PdfPage[] {
  const told = pageOn(paper, { width: 190, height: 277 }, 20)
  const [across, along] = [Math.min(told.width, told.height), Math.max(told.width, told.height)]
  const page = { width: across / correction.across, height: along / correction.along }
  const scale = { x: correction.across, y: correction.along }
  return sheet.draw(page).map((items, i, all) => ({
    width: across,
    height: along,
    label: all.length > 1 ? `${sheet.title} ${i + 1}` : sheet.title,
    bookmark: i === 0 ? sheet.title : null,
    items: [...items, ...pageBars(page.width, page.height), ...pageNote(correctionNote(scale), page.height)],
    correction: scale,
  }))
}

/** Bars in the white round a page that is laid out to fit: below on the right, and up the left side. */
const pageBars = (width: number, height: number): readonly Item[] => [
  ...barsAcross(point(width - PAGE_BAR_ROOM - 102, height - PAGE_BAR_ROOM + 1.8), 'short side'),
  ...barsUp(point(6.6, height - 60), 'long side'),
]

/** In the white below, left of the bars. */
const pageNote = (note: string, height: number): readonly Item[] =>
  note === '' ? [] : [text(point(PAGE_BAR_ROOM, height - PAGE_BAR_ROOM + 6), note)]

/** Pages that are laid out to fit leave this much white. */
const PAGE_BAR_ROOM = 13

function fullScale(
  sheet: Extract<Sheet, { kind: 'full scale' }>,
  title: string,
  { paper, correction, joining }: Printing,
): Result<readonly PdfPage[], TilePaperRefusal> {
  const tiling = tileOnPaper(sheet.drawing, paper, { correction, overlap: overlapOf(joining) })
  if (!tiling.ok) return tiling
  const pages = tiledPages(sheet.drawing, tiling.value, paper, {
    title: `${title}: ${sheet.title}`,
    checkBar: true,
    correction,
  })
  return ok(
    pages.map((page, i) => ({
      ...page,
      label: printedTiles(tiling.value) > 1 ? `${sheet.title} ${page.label}` : sheet.title,
      bookmark: i === 0 ? sheet.title : null,
    })),
  )
}
