import type { Box } from '../../geometry/box'
import { point } from '../../geometry/point'
import type { Pixels } from '../log/leaf-pixels'
import { photographOf, type PixelBox } from './photograph'
import type { StraightFrame } from './straighten'

/** A part of a straightened picture, with its own frame. */
export function croppedTo(
  picture: Pixels,
  { origin, mmPerPx }: StraightFrame,
  box: PixelBox,
): { readonly picture: Pixels; readonly frame: StraightFrame } {
  const corner = point<'leaf'>(origin.x + box.left * mmPerPx, origin.y + box.top * mmPerPx)
  const frame = { origin: corner, width: box.width, height: box.height, mmPerPx }
  return { picture: photographOf(picture).part(box), frame }
}

/** The same part of a mask of the picture's width. */
export function croppedMask(mask: Uint8Array, width: number, { left, top, ...size }: PixelBox): Uint8Array {
  const out = new Uint8Array(size.width * size.height)
  for (let row = 0; row < size.height; row++) {
    const from = (top + row) * width + left
    out.set(mask.subarray(from, from + size.width), row * size.width)
  }
  return out
}

type Size = { readonly width: number; readonly height: number }

/** The box of what a mask holds, wider by `margin` pixels on all sides as far as the picture goes; it must hold something. */
export function boxOfMask(mask: Uint8Array, size: Size, margin: number): PixelBox {
  let [left, top, right, bottom] = [size.width, size.height, 0, 0]
  for (let y = 0, at = 0; y < size.height; y++)
    for (let x = 0; x < size.width; x++, at++) {
      if (!mask[at]) continue
      if (x < left) left = x
      if (x > right) right = x
      if (y < top) top = y
      bottom = y
    }
  return boxBetween(left - margin, top - margin, right + margin, bottom + margin, size)
}

/** The pixels of a frame that a box of the leaf lies in, and so many more on all sides. */
export function pixelsRound({ min, max }: Box<'leaf'>, frame: StraightFrame, margin: number): PixelBox {
  const { origin, mmPerPx } = frame
  const place = (mm: number, from: number) => Math.floor((mm - from) / mmPerPx)
  const [left, top] = [place(min.x, origin.x) - margin, place(min.y, origin.y) - margin]
  return boxBetween(left, top, place(max.x, origin.x) + margin, place(max.y, origin.y) + margin, frame)
}

/** From the first to the last pixel both ways, as far as the picture goes. */
function boxBetween(left: number, top: number, right: number, bottom: number, { width, height }: Size): PixelBox {
  const [fromX, fromY] = [Math.max(0, left), Math.max(0, top)]
  return {
    left: fromX,
    top: fromY,
    width: Math.min(width - 1, right) - fromX + 1,
    height: Math.min(height - 1, bottom) - fromY + 1,
  }
}
