import type { FoundShift } from '../core/figure/align/find-shift'
import type { AlignTask, FromAlignWorker, ToAlignWorker } from './align-worker'
import type { WoodSource } from './wood-source'

export type AlignWorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>

const startAlignWorker = (): AlignWorkerLike =>
  new Worker(new URL('./align-worker.ts', import.meta.url), { type: 'module' })

export interface Aligning {
  /** One for each pair of leaves or each seam, null where there is no picture; null when it was stopped. */
  readonly found: Promise<readonly (FoundShift | null)[] | null>
  readonly stop: () => void
}

/** Looks at the pictures of leaves beside the page. Told from time to time how much is done, 0 to 1. */
export function alignAside(
  source: WoodSource,
  task: AlignTask,
  onProgress: (share: number) => void,
  start: () => AlignWorkerLike = startAlignWorker,
): Aligning {
  const worker = start()
  let stop: () => void = () => undefined
  const found = new Promise<readonly (FoundShift | null)[] | null>((resolve, reject) => {
    stop = () => resolve(null)
    worker.onmessage = ({ data }: MessageEvent<FromAlignWorker>) => {
      if (data.kind === 'progress') onProgress(data.share)
      else if (data.kind === 'found') resolve(data.shifts)
      else reject(new Error(data.message))
    }
    worker.onerror = ({ message }) => reject(new Error(message || 'the reader of figure did not start'))
  }).finally(() => worker.terminate())
  const message: ToAlignWorker = { source, task }
  worker.postMessage(message)
  return { found, stop: () => stop() }
}
