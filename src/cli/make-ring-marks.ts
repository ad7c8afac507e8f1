import { ok, refused, type Result } from '../core/result'
import { ringMarkSheets } from '../core/sheets/draw-ring-marks'
import { documentId } from '../documents/document-id'
import type { PdfFonts } from '../documents/pdf/pdf-document'
import type { Printing } from '../documents/pdf/printing'
import { sheetPages } from '../documents/pdf/sheet-document'
import { sheetRefusal } from '../documents/pdf/sheet-refusal'
import { writePdf } from '../documents/pdf/write-pdf'
import type { MadeFile } from './write-files'

/** Stands where the job file would. */
export const RING_MARKS = 'ring-marks'

/** The cards by which photographs are straightened; they need no job. */
export async function makeRingMarks(
  printing: Printing,
  created: Date,
  fonts: PdfFonts,
): Promise<Result<readonly MadeFile[], string>> {
  const laidOut = sheetPages(ringMarkSheets, printing)
  if (!laidOut.ok) return refused(sheetRefusal(laidOut.reason, printing.paper.name))
  const id = documentId(`ring marks ${printing.paper.id}`)
  const pdf = await writePdf({ title: 'Ring marks', pages: laidOut.value.pages, created, id }, fonts)
  if (!pdf.ok) return refused(sheetRefusal(pdf.reason, printing.paper.name))
  return ok([{ name: 'ring-marks.pdf', content: pdf.value }])
}
