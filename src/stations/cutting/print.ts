import regularUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url'
import boldUrl from '@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf?url'
import type { DerivedPart } from '../../core/derive'
import type { Job } from '../../core/job/job'
import { writeJob } from '../../core/job/write-job'
import { ok, refused, type Result } from '../../core/result'
import { partSheets } from '../../core/sheets/part-sheets'
import { documentId } from '../../documents/document-id'
import type { Paper } from '../../documents/paper'
import type { PdfFonts, PdfPage } from '../../documents/pdf/pdf-document'
import { sheetPages } from '../../documents/pdf/sheet-document'
import { sheetRefusal } from '../../documents/pdf/sheet-refusal'
import { writePdf } from '../../documents/pdf/write-pdf'

/** The pages of a part's sheets on a paper, or why there are none. */
export function pagesOf(face: DerivedPart, job: Job, paper: Paper): Result<readonly PdfPage[], string> {
  const laidOut = sheetPages(partSheets(face, job.unit), paper)
  return laidOut.ok ? ok(laidOut.value.pages) : refused(sheetRefusal(laidOut.reason, paper.name))
}

/** The PDF of those pages. The library and the typeface are fetched from the app's own files when first needed. */
export async function pdfOf(
  face: DerivedPart,
  job: Job,
  paper: Paper,
  created: Date,
): Promise<Result<Uint8Array, string>> {
  const pages = pagesOf(face, job, paper)
  if (!pages.ok) return pages
  const id = documentId(`${face.part.id} ${paper.id} ${writeJob(job)}`)
  const title = `${job.name}: ${face.part.name}`
  const pdf = await writePdf({ title, pages: pages.value, created, id }, await fonts())
  return pdf.ok ? ok(pdf.value) : refused(sheetRefusal(pdf.reason, paper.name))
}

let loaded: Promise<PdfFonts> | null = null

function fonts(): Promise<PdfFonts> {
  loaded ??= Promise.all([regularUrl, boldUrl].map(load)).then(([regular, bold]) => ({
    regular: regular!,
    bold: bold!,
  }))
  // a failed load is tried again the next time
  loaded.catch(() => (loaded = null))
  return loaded
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`the typeface could not be read (${response.status})`)
  return new Uint8Array(await response.arrayBuffer())
}
