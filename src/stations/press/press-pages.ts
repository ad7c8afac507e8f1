import { refused, ok, type Result } from '../../core/result'
import { pressSheets } from '../../core/sheets/draw-press-sheet'
import type { PdfPage } from '../../documents/pdf/pdf-document'
import type { Printing } from '../../documents/pdf/printing'
import { sheetPages } from '../../documents/pdf/sheet-document'
import { sheetRefusal } from '../../documents/pdf/sheet-refusal'
import type { PressWork } from './press-work.svelte'

/** The pages of a part's press sheet as they are printed, or why there are none. */
export function pressPages({ face, room, unit }: PressWork, printing: Printing): Result<readonly PdfPage[], string> {
  const laidOut = sheetPages(pressSheets(face, room, unit), printing)
  return laidOut.ok ? ok(laidOut.value.pages) : refused(sheetRefusal(laidOut.reason, printing.paper.name))
}
