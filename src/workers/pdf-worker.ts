/// <reference lib="webworker" />
import type { PdfDocument, PdfFonts, PdfRefusal } from '../documents/pdf/pdf-document'
import { writePdf } from '../documents/pdf/write-pdf'
import type { Failed } from './one-task'

export interface ToPdfWorker {
  readonly document: PdfDocument
  readonly fonts: PdfFonts
}

export type FromPdfWorker =
  | { readonly kind: 'page'; readonly done: number }
  | { readonly kind: 'written'; readonly bytes: Uint8Array }
  | { readonly kind: 'refused'; readonly reason: PdfRefusal }

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromPdfWorker | Failed, transfer: Transferable[] = []): void =>
  scope.postMessage(message, transfer)

scope.onmessage = async ({ data }: MessageEvent<ToPdfWorker>) => {
  try {
    const written = await writePdf(data.document, data.fonts, (done) => tell({ kind: 'page', done }))
    if (written.ok) tell({ kind: 'written', bytes: written.value }, [written.value.buffer as ArrayBuffer])
    else tell({ kind: 'refused', reason: written.reason })
  } catch (error) {
    tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}
