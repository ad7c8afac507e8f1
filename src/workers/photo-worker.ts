/// <reference lib="webworker" />
import { point } from '../core/geometry/point'
import type { Pixels } from '../core/figure/log/leaf-pixels'
import type { Photograph } from '../core/figure/photo/photograph'
import { readLeafPhoto, type CornersFrom, type LeafPhoto } from '../core/figure/photo/read-leaf-photo'
import type { HowTheyLie, MarkRectangle, ViewTrouble } from '../core/figure/photo/photo-view'
import { photographOfBitmap } from './bitmap-photograph'
import { imageSize, MOST_PIXELS, WORKING_PIXELS } from './image-size'

/** A place in a photograph: 0 to 1 from its left and its top. */
export interface Share {
  readonly x: number
  readonly y: number
}

/** A photograph to be read; `corners` as shares of its width and height, null: by ring marks. */
export interface PhotoWanted {
  readonly file: Blob
  readonly rectangle: MarkRectangle
  readonly lie: HowTheyLie
  readonly corners: readonly Share[] | null
}

export type ToPhotoWorker = { readonly kind: 'read'; readonly id: number; readonly wanted: PhotoWanted }

/** What is read, with the straightened picture as a file to be kept, and a smaller one to be looked at meanwhile. */
export type ReadPhoto = Omit<LeafPhoto, 'picture' | 'view'> & {
  readonly picture: Uint8Array<ArrayBuffer>
  readonly ending: 'webp' | 'jpg' | 'png'
  readonly preview: Blob
}

export type PhotoTrouble =
  | { readonly trouble: 'no picture' }
  | { readonly trouble: 'too many pixels'; readonly width: number; readonly height: number }
  | ViewTrouble

export type FromPhotoWorker =
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'read'; readonly id: number; readonly photo: ReadPhoto }
  | { readonly kind: 'refused'; readonly id: number; readonly trouble: PhotoTrouble }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromPhotoWorker, transfer: Transferable[] = []): void => scope.postMessage(message, transfer)

// one after the other: two photographs of 12 MP at once would take twice the memory
let before: Promise<void> = Promise.resolve()

scope.onmessage = ({ data: { id, wanted } }: MessageEvent<ToPhotoWorker>) => {
  before = before
    .then(() => read(id, wanted))
    .catch((error: unknown) => {
      tell({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) })
    })
}

async function read(id: number, { file, rectangle, lie, corners }: PhotoWanted): Promise<void> {
  const photo = await decoded(file)
  if ('trouble' in photo) return tell({ kind: 'refused', id, trouble: photo })
  tell({ kind: 'progress', id, share: 0.1 })
  const from: CornersFrom = corners
    ? { from: 'taps', corners: corners.map(({ x, y }) => point<'photo'>(x * photo.width, y * photo.height)) }
    : { from: 'marks' }
  const result = readLeafPhoto(photo, from, rectangle, lie, (share) => tell({ kind: 'progress', id, share }))
  photo.close()
  if (!result.ok) return tell({ kind: 'refused', id, trouble: result.reason })
  const { picture, view: _view, ...rest } = result.value
  const kept = await encoded(picture)
  tell({ kind: 'read', id, photo: { ...rest, ...kept } }, [kept.picture.buffer])
}

/** The photograph, turned as it was taken and reduced to what is worked on; or why there is none. */
async function decoded(file: Blob): Promise<Photograph | PhotoTrouble> {
  const head = new Uint8Array(await file.slice(0, 400_000).arrayBuffer())
  const size = imageSize(head)
  if (size && size.width * size.height > MOST_PIXELS) return { trouble: 'too many pixels', ...size }
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image', ...reduced(size) })
  } catch {
    return { trouble: 'no picture' }
  }
  return photographOfBitmap(bitmap)
}

/** To the working size while decoding. A photo turned by a quarter keeps its shape: only one side is given. */
function reduced(size: { readonly width: number; readonly height: number } | null): ImageBitmapOptions {
  if (!size || size.width * size.height <= WORKING_PIXELS) return {}
  const by = Math.sqrt(WORKING_PIXELS / (size.width * size.height))
  return { resizeWidth: Math.round(size.width * by), resizeQuality: 'high' }
}

/** The longer side of what is only looked at, in pixels: a browser keeps what it has shown decoded, 5 MB a leaf at full size. */
const PREVIEW = 1_600

async function encoded({ width, height, rgba }: Pixels): Promise<Pick<ReadPhoto, 'picture' | 'ending' | 'preview'>> {
  const { canvas, context } = canvasOf(width, height)
  context.putImageData(new ImageData(rgba as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0)
  // both at once: a browser writes pictures beside the worker. One that can't write WebP gives PNG instead, and says so
  const [blob, preview] = await Promise.all([
    canvas.convertToBlob({ type: 'image/webp', quality: 0.88 }),
    smaller(canvas, Math.min(1, PREVIEW / Math.max(width, height))),
  ])
  canvas.width = canvas.height = 0
  return {
    picture: new Uint8Array(await blob.arrayBuffer()),
    ending: blob.type === 'image/webp' ? 'webp' : 'png',
    preview,
  }
}

async function smaller(from: OffscreenCanvas, share: number): Promise<Blob> {
  const { canvas, context } = canvasOf(
    Math.max(1, Math.round(from.width * share)),
    Math.max(1, Math.round(from.height * share)),
  )
  context.imageSmoothingQuality = 'high'
  context.drawImage(from, 0, 0, canvas.width, canvas.height)
  const blob = await canvas.convertToBlob({ type: 'image/webp', quality: 0.8 })
  canvas.width = canvas.height = 0
  return blob
}

function canvasOf(width: number, height: number) {
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')
  if (!context) throw new Error(`This browser has no room for a picture of ${width} × ${height} pixels.`)
  return { canvas, context }
}
