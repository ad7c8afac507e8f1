import type { LandmarkLook, Sights } from '../core/templates/viewfinder'
import type { FromLandmarkWorker, ToLandmarkWorker } from './landmark-worker'
import { taskAside, type TaskAside, type WorkerLike } from './one-task'
import type { WoodSource } from './wood-source'

const startLandmarkWorker = (): WorkerLike =>
  new Worker(new URL('./landmark-worker.ts', import.meta.url), { type: 'module' })

/** Looks for landmarks in the pictures of leaves beside the page. Told from time to time how much is done, 0 to 1. */
export function landmarksAside(
  source: WoodSource,
  looks: readonly LandmarkLook[],
  onProgress: (share: number) => void,
  start: () => WorkerLike = startLandmarkWorker,
): TaskAside<Sights> {
  const message: ToLandmarkWorker = { source, looks }
  return taskAside(start(), message, 'the finder of landmarks', (told: FromLandmarkWorker) => {
    return told.kind === 'progress' ? void onProgress(told.share) : told.sights
  })
}
