import type { Box } from '../core/geometry/box'
import { present } from '../core/invariant'
import { DEMO_LOG } from '../core/figure/demo-flitch'
import type { LogOptions } from '../core/figure/log/log'
import type { FromLogWorker, LeafPicture, ToLogWorker } from './log-worker'
import type { WorkerLike } from './one-task'

/** A sharp picture of a part of a leaf, in the leaf's frame; `box: null` is all of it. */
export interface SharpPicture {
  readonly pxPerMm: number
  readonly box: Box<'leaf'> | null
  readonly face?: 'numbered' | 'other'
  /** Told from time to time how much is done, 0 to 1. */
  readonly onProgress?: (share: number) => void
}

/** Pictures of the leaves of a simulated log, painted beside the page. */
export interface FigureDoor {
  /** What a whole-leaf picture covers: the frame that all leaves share, once the log is made. */
  readonly frame: Promise<Box<'leaf'>>
  /** The whole frame of a leaf, coarse; painted before anything sharp, and once only at one scale. Rejects when the door is closed. */
  readonly thumbnail: (leaf: number, pxPerMm?: number) => Promise<ImageBitmap>
  /** null when it was cancelled, or the door closed, before it was done. */
  readonly sharp: (leaf: number, picture: SharpPicture) => Promise<ImageBitmap | null>
  /** Gives up all sharp pictures that are not done. */
  readonly cancel: () => void
  /** Ends the worker. */
  readonly close: () => void
}

/** Pixels a millimetre of a thumbnail. */
export const THUMBNAIL_SCALE = 0.25

/** Pixels a millimetre of what is seen first of all: in a third of the time, for as long as the thumbnails take. */
export const FIRST_SCALE = 0.125

interface Waiting {
  readonly urgent: boolean
  readonly done: (bitmap: ImageBitmap | null) => void
  readonly failed: (error: Error) => void
  readonly onProgress: ((share: number) => void) | undefined
}

const startLogWorker = (): WorkerLike => new Worker(new URL('./log-worker.ts', import.meta.url), { type: 'module' })

/** Opens a door to the pictures of a log, the demonstration flitch's unless another is given. */
export function createFigureDoor(
  options: LogOptions = DEMO_LOG,
  startWorker: () => WorkerLike = startLogWorker,
): FigureDoor {
  const worker = startWorker()
  const waiting = new Map<number, Waiting>()
  const thumbnails = new Map<string, Promise<ImageBitmap>>()
  let nextId = 1
  let ended: Error | null = null
  const tell = (message: ToLogWorker) => worker.postMessage(message)
  let frameMade: (frame: Box<'leaf'>) => void = () => undefined
  let frameFailed: (error: Error) => void = () => undefined
  const frame = new Promise<Box<'leaf'>>((resolve, reject) => ([frameMade, frameFailed] = [resolve, reject]))
  // nobody may be asking for the frame
  frame.catch(() => undefined)

  function end(error: Error): void {
    ended = error
    worker.terminate()
    frameFailed(error)
    for (const { urgent, done, failed } of waiting.values())
      if (urgent) failed(error)
      else done(null)
    waiting.clear()
  }

  function take(id: number): Waiting | undefined {
    const found = waiting.get(id)
    waiting.delete(id)
    return found
  }

  function paint(
    picture: LeafPicture,
    urgent: boolean,
    onProgress?: (share: number) => void,
  ): Promise<ImageBitmap | null> {
    if (ended) return urgent ? Promise.reject(ended) : Promise.resolve(null)
    const id = nextId++
    tell({ kind: 'paint', id, urgent, picture })
    return new Promise((done, failed) => waiting.set(id, { urgent, done, failed, onProgress }))
  }

  worker.onmessage = ({ data }: MessageEvent<FromLogWorker>) => {
    if (data.kind === 'frame') frameMade(data.frame)
    else if (data.kind === 'progress') waiting.get(data.id)?.onProgress?.(data.share)
    else if (data.kind === 'failed') take(data.id)?.failed(new Error(data.message))
    // painted just as it was cancelled: let the memory go
    else (take(data.id)?.done ?? (() => data.bitmap.close()))(data.bitmap)
  }
  worker.onerror = ({ message }) => end(new Error(`The pictures of the wood cannot be painted: ${message}`))
  tell({ kind: 'log', options })

  function thumbnail(leaf: number, pxPerMm = THUMBNAIL_SCALE): Promise<ImageBitmap> {
    const name = `${leaf} at ${pxPerMm}`
    const known = thumbnails.get(name)
    if (known) return known
    const painted = paint({ leaf, pxPerMm, box: null, face: 'numbered' }, true)
    const picture = painted.then((bitmap) => present(bitmap, 'a thumbnail was cancelled'))
    thumbnails.set(name, picture)
    return picture
  }

  return {
    frame,
    thumbnail,
    sharp: (leaf, { pxPerMm, box, face = 'numbered', onProgress }) =>
      paint({ leaf, pxPerMm, box, face }, false, onProgress),
    cancel() {
      for (const [id, { urgent, done }] of waiting) {
        if (urgent) continue
        tell({ kind: 'cancel', id })
        waiting.delete(id)
        done(null)
      }
    },
    close: () => end(new Error('The pictures of the wood were closed.')),
  }
}
