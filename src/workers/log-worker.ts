/// <reference lib="webworker" />
import type { Box } from '../core/geometry/box'
import { pixelSize } from '../core/figure/log/leaf-pixels'
import { leafStrips, type Strip } from '../core/figure/log/leaf-strips'
import { leafFrame, makeLog, type Log, type LogOptions } from '../core/figure/log/log'

/** What to paint; `box: null` is the whole frame that the leaves share. */
export interface LeafPicture {
  readonly leaf: number
  readonly pxPerMm: number
  readonly box: Box<'leaf'> | null
  readonly face: 'numbered' | 'other'
}

export type ToLogWorker =
  | { readonly kind: 'log'; readonly options: LogOptions }
  /** Urgent pictures are painted before all others, even before one that has been begun. */
  | { readonly kind: 'paint'; readonly id: number; readonly urgent: boolean; readonly picture: LeafPicture }
  | { readonly kind: 'cancel'; readonly id: number }

export type FromLogWorker =
  | { readonly kind: 'frame'; readonly frame: Box<'leaf'> }
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'painted'; readonly id: number; readonly bitmap: ImageBitmap }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

interface Job {
  readonly id: number
  readonly urgent: boolean
  readonly picture: LeafPicture
  painting: Painting | null
}

interface Painting {
  readonly canvas: OffscreenCanvas
  readonly context: OffscreenCanvasRenderingContext2D
  readonly strips: Generator<Strip, void>
}

/** Pixels painted between two looks at the messages: about a twentieth of a second. */
const PIXELS_AT_ONCE = 60_000

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromLogWorker, transfer: Transferable[] = []): void => scope.postMessage(message, transfer)

let log: Log | null = null
let jobs: readonly Job[] = []
let running = false

scope.onmessage = ({ data }: MessageEvent<ToLogWorker>) => {
  if (data.kind === 'log') {
    log = makeLog(data.options)
    tell({ kind: 'frame', frame: leafFrame(log) })
  } else if (data.kind === 'cancel') {
    drop(data.id)
  } else {
    jobs = [...jobs, { id: data.id, urgent: data.urgent, picture: data.picture, painting: null }]
    void paintAll()
  }
}

function drop(id: number): void {
  jobs = jobs.filter((job) => job.id !== id)
}

async function paintAll(): Promise<void> {
  if (running) return
  running = true
  for (let job = nextJob(); job; job = nextJob()) {
    try {
      paintStrip(job)
    } catch (error) {
      drop(job.id)
      tell({ kind: 'failed', id: job.id, message: error instanceof Error ? error.message : String(error) })
    }
    await messagesIn()
  }
  running = false
}

const turn = new MessageChannel()

/** Lets messages in, of which one may cancel the picture that is painted; a timer would wait 4 ms each time. */
const messagesIn = (): Promise<void> =>
  new Promise((resolve) => {
    turn.port1.onmessage = () => resolve()
    turn.port2.postMessage(null)
  })

const nextJob = (): Job | undefined => jobs.find(({ urgent }) => urgent) ?? jobs[0]

function paintStrip(job: Job): void {
  job.painting ??= beginPainting(job.picture)
  const { canvas, context, strips } = job.painting
  const { value: strip } = strips.next()
  const painted = strip ? strip.row + strip.pixels.height : canvas.height
  if (strip) {
    const { width, height, rgba } = strip.pixels
    context.putImageData(new ImageData(rgba as Uint8ClampedArray<ArrayBuffer>, width, height), 0, strip.row)
    tell({ kind: 'progress', id: job.id, share: painted / canvas.height })
  }
  if (painted < canvas.height) return
  drop(job.id)
  const bitmap = canvas.transferToImageBitmap()
  tell({ kind: 'painted', id: job.id, bitmap }, [bitmap])
}

function beginPainting({ leaf, pxPerMm, box, face }: LeafPicture): Painting {
  if (!log) throw new Error('A picture was asked for before the log was there.')
  const request = { pxPerMm, box: box ?? leafFrame(log), face }
  const { width, height } = pixelSize(request)
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')
  if (!context) throw new Error(`This browser has no room for a picture of ${width} × ${height} pixels.`)
  const rows = Math.max(16, Math.round(PIXELS_AT_ONCE / width))
  return { canvas, context, strips: leafStrips(log, leaf, request, rows) }
}
