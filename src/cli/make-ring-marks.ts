import { ok, refused, type Result } from '../core/result'
import type { PdfFonts } from '../documents/pdf/pdf-document'
import type { Printing } from '../documents/pdf/printing'
import { ringMarksDocument } from '../store/job-documents'
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
  const document = ringMarksDocument(printing, created)
  if (!document.ok) return document
  const pdf = await writePdf(document.value, fonts)
  if (!pdf.ok) return refused(sheetRefusal(pdf.reason, printing.paper.name))
  return ok([{ name: 'ring-marks.pdf', content: pdf.value }])
}
