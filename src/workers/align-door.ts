import type { FoundShift } from '../core/figure/align/find-shift'
import type { AlignTask, FromAlignWorker, ToAlignWorker } from './align-worker'
import { taskAside, type TaskAside, type WorkerLike } from './one-task'
import type { WoodSource } from './wood-source'

const startAlignWorker = (): WorkerLike => new Worker(new URL('./align-worker.ts', import.meta.url), { type: 'module' })

/** Found: one for each pair of leaves or each seam, null where there is no picture. */
export type Aligning = TaskAside<readonly (FoundShift | null)[]>

/** Looks at the pictures of leaves beside the page. Told from time to time how much is done, 0 to 1. */
export function alignAside(
  source: WoodSource,
  task: AlignTask,
  onProgress: (share: number) => void,
  start: () => WorkerLike = startAlignWorker,
): Aligning {
  const message: ToAlignWorker = { source, task }
  return taskAside(start(), message, 'the reader of figure', (told: FromAlignWorker) => {
    return told.kind === 'progress' ? void onProgress(told.share) : told.shifts
  })
}
