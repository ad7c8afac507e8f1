import { ok, refused, type Result } from '../core/result'
import type { PdfDocument, PdfFonts, PdfRefusal } from '../documents/pdf/pdf-document'
import { taskAside, type TaskAside, type WorkerLike } from './one-task'
import type { FromPdfWorker, ToPdfWorker } from './pdf-worker'

const startPdfWorker = (): WorkerLike => new Worker(new URL('./pdf-worker.ts', import.meta.url), { type: 'module' })

/** A document being written. */
export type WritingPdf = TaskAside<Result<Uint8Array, PdfRefusal>>

/** Writes a document beside the page, so that it can be used meanwhile. `onPage` is told how many pages are done. */
export function writePdfAside(
  document: PdfDocument,
  fonts: PdfFonts,
  onPage: (done: number) => void,
  start: () => WorkerLike = startPdfWorker,
): WritingPdf {
  const task: ToPdfWorker = { document, fonts }
  return taskAside(start(), task, 'the writer of PDF files', (told: FromPdfWorker) => {
    if (told.kind === 'page') return void onPage(told.done)
    return told.kind === 'written' ? ok(told.bytes) : refused(told.reason)
  })
}
