import { ok, refused, type Result } from '../core/result'
import type { PdfDocument, PdfFonts, PdfRefusal } from '../documents/pdf/pdf-document'
import type { FromPdfWorker, ToPdfWorker } from './pdf-worker'

export type PdfWorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>

const startPdfWorker = (): PdfWorkerLike => new Worker(new URL('./pdf-worker.ts', import.meta.url), { type: 'module' })

export interface WritingPdf {
  /** null when it was stopped before it was done. Rejects when the writer fails. */
  readonly written: Promise<Result<Uint8Array, PdfRefusal> | null>
  readonly stop: () => void
}

/** Writes a document beside the page, so that it can be used meanwhile. `onPage` is told how many pages are done. */
export function writePdfAside(
  document: PdfDocument,
  fonts: PdfFonts,
  onPage: (done: number) => void,
  start: () => PdfWorkerLike = startPdfWorker,
): WritingPdf {
  const worker = start()
  let stop: () => void = () => undefined
  const written = new Promise<Result<Uint8Array, PdfRefusal> | null>((resolve, reject) => {
    stop = () => resolve(null)
    worker.onmessage = ({ data }: MessageEvent<FromPdfWorker>) => {
      if (data.kind === 'page') onPage(data.done)
      else if (data.kind === 'written') resolve(ok(data.bytes))
      else if (data.kind === 'refused') resolve(refused(data.reason))
      else reject(new Error(data.message))
    }
    worker.onerror = ({ message }) => reject(new Error(message || 'the writer of PDF files did not start'))
  }).finally(() => worker.terminate())
  const task: ToPdfWorker = { document, fonts }
  worker.postMessage(task)
  return { written, stop: () => stop() }
}
