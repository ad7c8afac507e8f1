import type { LeafPicture } from '../board-types'

type Bitmap = LeafPicture['bitmap']

/** A picture at a whole halving of its size, `share` of the original's pixels a mm. */
interface Level {
  readonly bitmap: Bitmap
  readonly share: number
}

const levels = new WeakMap<object, Level[]>()

/** How many pictures may be scaled down before a frame is shown; the rest wait for the next. */
const AT_ONCE = 8
let left = AT_ONCE

/** Called at the start of a frame. */
export const beginFrame = (): void => {
  left = AT_ONCE
}

/** Asks for the making of one more picture in this frame; false when there is no time left. */
export function mayMakePicture(): boolean {
  if (left <= 0) return false
  left--
  return true
}

/** Whether some picture was drawn larger than need be because there was no time: draw again soon. */
export const wantsFrame = (): boolean => left <= 0

/**
 * The smallest halving of a picture that still has `share` of its pixels each way, made once and kept as long as the
 * picture. Drawing from it costs a fraction of drawing the whole picture small, and shimmers less.
 */
export function pictureLevel(bitmap: Bitmap, share: number): Level {
  let known = levels.get(bitmap)
  if (!known) levels.set(bitmap, (known = [{ bitmap, share: 1 }]))
  const wanted = Math.max(0, Math.floor(Math.log2(1 / Math.max(share, 1e-3))))
  while (known.length <= wanted) {
    const last = known[known.length - 1]!
    if (last.bitmap.width < 32 || last.bitmap.height < 32 || !mayMakePicture()) break
    known.push({ bitmap: halved(last.bitmap), share: last.share / 2 })
  }
  return known[Math.min(wanted, known.length - 1)]!
}

function halved(bitmap: Bitmap): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width / 2))
  canvas.height = Math.max(1, Math.round(bitmap.height / 2))
  const ctx = canvas.getContext('2d')
  if (ctx) {
    ctx.imageSmoothingQuality = 'high'
    ctx.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  }
  return canvas
}
