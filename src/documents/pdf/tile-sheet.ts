import type { Box, Edges } from '../../core/geometry/box'
import { point } from '../../core/geometry/point'
import { line, text } from '../../core/drawing/build'
import { SMALLEST_TEXT, type Item } from '../../core/drawing/drawing'
import { textCutTo } from '../../core/drawing/text-width'
import { printedTiles, type Tiling } from '../../core/drawing/tiling'
import { barsAcross, barsUp } from './check-bars'
import { correctionNote } from './printing'
import type { PdfPage } from './pdf-document'

/** Room on each edge of a tile for what names and measures it. The outer 6 mm stay white: few printers reach there. */
export const TILE_MARGINS: Edges = { top: 11, right: 11, bottom: 21, left: 15 }

/** The bars and the page's name need this much along each edge of the window. */
export const LEAST_WINDOW = 130

/** What all pages of one tiling have in common. Lengths are mm of real paper, as seen. */
export interface TileSheet {
  readonly title: string
  readonly checkBar: boolean
  readonly tiling: Tiling
  readonly paperName: string
  readonly correction: { readonly x: number; readonly y: number }
  /** What the bar across, and the one down, lies along. */
  readonly sideAcross: string
  readonly sideDown: string
}

/** Where the drawing shows on a page. */
export function pageWindow({ tiling: { page, margins } }: TileSheet): Box<'sheet'> {
  return {
    min: point(margins.left, margins.top),
    max: point(page.width - margins.right, page.height - margins.bottom),
  }
}

/** A page of the sheet's size as the printer is told it. */
export function sheetPage(sheet: TileSheet, page: Pick<PdfPage, 'label' | 'bookmark' | 'items' | 'inWindow'>): PdfPage {
  const { correction, tiling } = sheet
  return { ...page, correction, width: tiling.page.width * correction.x, height: tiling.page.height * correction.y }
}

/** Below the window, from the left: the page's name, the bars, the title. Beside it on the left: the bars upright. */
export function sheetFoot(sheet: TileSheet, name: string, note: string): Item[] {
  const { min, max } = pageWindow(sheet)
  const barsFrom = max.x - min.x > 150 ? min.x + 24 : min.x + 20
  const bars = sheet.checkBar
    ? [
        ...barsAcross(point(barsFrom, max.y + 7.5), sheet.sideAcross),
        ...barsUp(point(min.x - 7, max.y), sheet.sideDown),
      ]
    : []
  const room = max.x - (sheet.checkBar ? barsFrom + 106 : min.x + 24)
  const right = (y: number, words: string, weight: 'regular' | 'bold'): Item[] => {
    const cut = textCutTo(words, room, SMALLEST_TEXT, weight)
    return cut === '' ? [] : [text(point(max.x, y), cut, { anchor: 'end', weight })]
  }
  return [
    text(point(min.x, max.y + 12.5), name, { size: 10, weight: 'bold' }),
    ...bars,
    ...right(max.y + 4.5, correctionNote(sheet.correction), 'regular'),
    ...right(max.y + 8.5, sheet.title, 'bold'),
    ...right(max.y + 12.5, note, 'regular'),
  ]
}

export const tileNote = ({ tiling }: TileSheet, number: number): string =>
  `${number} of ${printedTiles(tiling)}, print at actual size`

/** A hairline that is cut along or laid to. */
export const guide = (from: readonly [number, number], to: readonly [number, number], dashed: boolean): Item =>
  line('mark', [point(...from), point(...to)], { pen: 0.1, dash: dashed ? [2, 2] : null })
