import type { Job, Part } from '../core/job/job'
import { writeJob } from '../core/job/write-job'
import { ringMarkSheets } from '../core/sheets/draw-ring-marks'
import { ok, refused, type Result } from '../core/result'
import { documentId } from '../documents/document-id'
import type { PdfDocument, PdfPage } from '../documents/pdf/pdf-document'
import type { Printing } from '../documents/pdf/printing'
import { sheetPages } from '../documents/pdf/sheet-document'
import { sheetRefusal } from '../documents/pdf/sheet-refusal'

/** The document of a part's pages. `name` tells the part from the others of its job. */
export function partDocument(
  job: Job,
  part: Part,
  name: string,
  pages: readonly PdfPage[],
  printing: Printing,
  created: Date,
): PdfDocument {
  const title = [job.name, part.name].filter(Boolean).join(': ')
  return { title, pages, created, id: printedId(name, printing, writeJob(job)) }
}

/** The document of pages that are about the whole job. */
export function jobDocument(
  job: Job,
  name: string,
  pages: readonly PdfPage[],
  printing: Printing,
  created: Date,
): PdfDocument {
  const title = [job.name, name].filter(Boolean).join(': ')
  return { title, pages, created, id: printedId(name, printing, writeJob(job)) }
}

/** The cards by which photographs are straightened, or why they can't be printed on this paper. */
export function ringMarksDocument(printing: Printing, created: Date): Result<PdfDocument, string> {
  const laidOut = sheetPages(ringMarkSheets, printing)
  if (!laidOut.ok) return refused(sheetRefusal(laidOut.reason, printing.paper.name))
  return ok({ title: 'Ring marks', pages: laidOut.value.pages, created, id: printedId('ring marks', printing, '') })
}

/** From all that decides what is on the pages: another printer gives another document. */
function printedId(name: string, { paper, correction: { across, along }, joining }: Printing, content: string): string {
  return documentId(`${name} ${paper.id} ${across} ${along} ${joining} ${content}`)
}
