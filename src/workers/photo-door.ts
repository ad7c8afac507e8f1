import type { FromPhotoWorker, PhotoTrouble, PhotoWanted, ReadPhoto, ToPhotoWorker } from './photo-worker'
import type { WorkerLike } from './one-task'

export type PhotoOutcome =
  | { readonly outcome: 'read'; readonly photo: ReadPhoto }
  | { readonly outcome: 'refused'; readonly trouble: PhotoTrouble }
  | { readonly outcome: 'cancelled' }

/** Photographs read beside the page, one after the other. */
export interface PhotoDoor {
  /** Rejects when the reading breaks down. */
  readonly read: (wanted: PhotoWanted, onProgress?: (share: number) => void) => Promise<PhotoOutcome>
  /** Gives up all that is not done. */
  readonly cancel: () => void
}

interface Waiting {
  readonly done: (outcome: PhotoOutcome) => void
  readonly failed: (error: Error) => void
  readonly onProgress: ((share: number) => void) | undefined
}

const startWorker = (): WorkerLike => new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })

/** How long a worker waits for another photograph, ms. */
const REST = 10_000

/** Opens a door; its worker starts with the first photograph that waits, and ends a while after the last. */
export function createPhotoDoor(start: () => WorkerLike = startWorker): PhotoDoor {
  let worker: WorkerLike | null = null
  let resting: ReturnType<typeof setTimeout> | undefined
  const waiting = new Map<number, Waiting>()
  let nextId = 1

  function take(id: number): Waiting | undefined {
    const found = waiting.get(id)
    waiting.delete(id)
    // its memory is given back for certain only by ending it; but the next photograph is read faster by one that has read some
    if (waiting.size === 0) resting = setTimeout(end, REST)
    return found
  }

  function hear({ data }: MessageEvent<FromPhotoWorker>): void {
    if (data.kind === 'progress') waiting.get(data.id)?.onProgress?.(data.share)
    else if (data.kind === 'read') take(data.id)?.done({ outcome: 'read', photo: data.photo })
    else if (data.kind === 'refused') take(data.id)?.done({ outcome: 'refused', trouble: data.trouble })
    else take(data.id)?.failed(new Error(data.message))
  }

  function opened(): WorkerLike {
    if (worker) return worker
    worker = start()
    worker.onmessage = hear
    worker.onerror = ({ message }) => {
      end()
      for (const { failed } of waiting.values()) failed(new Error(message))
      waiting.clear()
    }
    return worker
  }

  function end(): void {
    clearTimeout(resting)
    worker?.terminate()
    worker = null
  }

  return {
    read(wanted, onProgress) {
      const id = nextId++
      return new Promise((done, failed) => {
        clearTimeout(resting)
        waiting.set(id, { done, failed, onProgress })
        opened().postMessage({ kind: 'read', id, wanted } satisfies ToPhotoWorker)
      })
    },
    cancel() {
      end()
      for (const { done } of waiting.values()) done({ outcome: 'cancelled' })
      waiting.clear()
    },
  }
}
