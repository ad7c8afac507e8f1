/// <reference lib="webworker" />
import type { Pixels } from '../core/figure/log/leaf-pixels'
import type { PixelBox, Photograph } from '../core/figure/photo/photograph'

/**
 * A photograph that lies in memory once, as the browser has decoded it: each part is drawn on a small canvas and read from
 * there. A canvas of the whole and its pixels would take three times as much.
 */
export function photographOfBitmap(bitmap: ImageBitmap): Photograph {
  const { width, height } = bitmap
  const canvas = new OffscreenCanvas(1, 1)
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (!context) throw new Error(`This browser has no room for a photograph of ${width} × ${height} pixels.`)

  let read: ImageData | null = null

  function part(box: PixelBox): Pixels {
    giveBack(read)
    fit(canvas, box)
    context!.clearRect(0, 0, box.width, box.height)
    context!.drawImage(bitmap, box.left, box.top, box.width, box.height, 0, 0, box.width, box.height)
    read = context!.getImageData(0, 0, box.width, box.height)
    return { width: box.width, height: box.height, rgba: read.data }
  }

  function close(): void {
    bitmap.close()
    giveBack(read)
    read = null
    canvas.width = canvas.height = 0
  }

  return { width, height, part, close }
}

/** Empties pixels at once; what is only left lying is given back when the browser comes to it. Not all can. */
function giveBack(pixels: ImageData | null): void {
  const buffer = pixels?.data.buffer as { readonly transfer?: (length: number) => unknown } | undefined
  buffer?.transfer?.(0)
}

/** Makes a canvas as large as a box where that doesn't fit, or fills only a small corner of it. */
function fit(canvas: OffscreenCanvas, { width, height }: PixelBox): void {
  const isLarge = canvas.width * canvas.height > 8 * width * height
  if (canvas.width >= width && canvas.height >= height && !isLarge) return
  canvas.width = isLarge ? width : Math.max(width, canvas.width)
  canvas.height = isLarge ? height : Math.max(height, canvas.height)
}
