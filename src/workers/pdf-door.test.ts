/**
 * Rules kept here:
 * [M2] A document is written beside the page: its pages are counted, it can be stopped, a failure is told; the worker
 *   ends each time.
 */
import { describe, expect, it } from 'vitest'
import type { PdfDocument, PdfFonts } from '../documents/pdf/pdf-document'
import type { Failed, WorkerLike } from './one-task'
import { writePdfAside } from './pdf-door'
import type { FromPdfWorker } from './pdf-worker'

const paper: PdfDocument = { title: 'Door', pages: [], created: new Date(0), id: '0'.repeat(32) }
const fonts: PdfFonts = { regular: new Uint8Array(), bold: new Uint8Array() }

/** A worker played by the test. */
function played() {
  const asked: unknown[] = []
  const worker: WorkerLike & { terminated: boolean } = {
    terminated: false,
    onmessage: null,
    onerror: null,
    postMessage: (message: unknown) => void asked.push(message),
    terminate: () => void (worker.terminated = true),
  }
  const answer = (data: FromPdfWorker | Failed) =>
    worker.onmessage?.call(worker as unknown as Worker, { data } as MessageEvent)
  const counted: number[] = []
  const writing = writePdfAside(
    paper,
    fonts,
    (done) => counted.push(done),
    () => worker,
  )
  return { worker, asked, answer, counted, writing }
}

describe('the writer of PDF files beside the page', () => {
  it('[M2] counts the pages and gives the bytes', async () => {
    const { worker, asked, answer, counted, writing } = played()
    expect(asked).toEqual([{ document: paper, fonts }])
    answer({ kind: 'page', done: 1 })
    answer({ kind: 'page', done: 2 })
    answer({ kind: 'written', bytes: new Uint8Array([37, 80]) })
    expect(await writing.done).toEqual({ ok: true, value: new Uint8Array([37, 80]) })
    expect(counted).toEqual([1, 2])
    expect(worker.terminated).toBe(true)
  })

  it('[M2] gives nothing when it is stopped', async () => {
    const { worker, writing } = played()
    writing.stop()
    expect(await writing.done).toBeNull()
    expect(worker.terminated).toBe(true)
  })

  it('[M2] says why it refuses or fails', async () => {
    const one = played()
    one.answer({ kind: 'refused', reason: { reason: 'no pages' } })
    expect(await one.writing.done).toEqual({ ok: false, reason: { reason: 'no pages' } })
    const two = played()
    two.answer({ kind: 'failed', message: 'no memory' })
    await expect(two.writing.done).rejects.toThrow('no memory')
    const three = played()
    three.worker.onerror?.call(three.worker as unknown as Worker, { message: 'not found' } as ErrorEvent)
    await expect(three.writing.done).rejects.toThrow('not found')
    expect([one, two, three].every(({ worker }) => worker.terminated)).toBe(true)
  })
})
