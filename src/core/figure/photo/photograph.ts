import type { Pixels } from '../log/leaf-pixels'

/** A part of a picture: whole pixels, from `left` and `top`. */
export interface PixelBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/**
 * A photograph of which one part after the other is read: 12 megapixels in colour take 48 MB, and need not lie in memory
 * a second time beside what the browser has decoded.
 */
export interface Photograph {
  readonly width: number
  readonly height: number
  /** The pixels of a box within it; good until the next is asked for. */
  readonly part: (box: PixelBox) => Pixels
  /** Called when no more of it will be read. */
  readonly close: () => void
}

/** Pixels read at once where all of a photograph is gone through, row by row. */
const STRIP_PIXELS = 1_000_000

/** Goes through a photograph in strips of its full width, each a multiple of `step` rows high except for what is left. */
export function forEachStrip(
  { width, height, part }: Photograph,
  step: number,
  use: (strip: Pixels, top: number) => void,
): void {
  const rows = step * Math.max(1, Math.floor(STRIP_PIXELS / (width * step)))
  for (let top = 0; top < height; top += rows)
    use(part({ left: 0, top, width, height: Math.min(rows, height - top) }), top)
}

/** A photograph whose pixels lie in memory already. */
export function photographOf(pixels: Pixels): Photograph {
  const { width, height, rgba } = pixels
  const part = (box: PixelBox): Pixels => {
    const from = (box.top * width + box.left) * 4
    if (box.width === width) return { ...box, rgba: rgba.subarray(from, from + box.height * width * 4) }
    const cut = new Uint8ClampedArray(box.width * box.height * 4)
    for (let row = 0; row < box.height; row++) {
      const at = from + row * width * 4
      cut.set(rgba.subarray(at, at + box.width * 4), row * box.width * 4)
    }
    return { width: box.width, height: box.height, rgba: cut }
  }
  return { width, height, part, close: () => undefined }
}
