import { boxAround, boxHeight, boxWidth } from '../../geometry/box'
import { point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import type { GreyPicture } from './grey'
import { withinOutline } from './within-outline'

/**
 * What of a picture lies in a ring: the box round the ring, to the nearest pixel, in which only what lies in the ring is
 * known. What the picture does not hold is not known; null where it holds nothing of it.
 */
export function figureWithin(picture: GreyPicture, ring: Ring<'leaf'>): GreyPicture | null {
  const { pxPerMm, origin } = picture
  const box = boxAround(ring)
  const [left, top] = [Math.round((box.min.x - origin.x) * pxPerMm), Math.round((box.min.y - origin.y) * pxPerMm)]
  const [width, height] = [Math.round(boxWidth(box) * pxPerMm), Math.round(boxHeight(box) * pxPerMm)]
  const [from, to] = [Math.max(0, left), Math.min(picture.width, left + width)]
  if (width < 1 || height < 1 || to <= from || top >= picture.height || top + height <= 0) return null
  const values = new Float32Array(width * height)
  const known = new Uint8Array(width * height)
  for (let j = Math.max(0, -top); j < height && top + j < picture.height; j++) {
    const row = (top + j) * picture.width
    values.set(picture.values.subarray(row + from, row + to), j * width + from - left)
    known.set(picture.known.subarray(row + from, row + to), j * width + from - left)
  }
  const at = point<'leaf'>(origin.x + left / pxPerMm, origin.y + top / pxPerMm)
  return withinOutline({ width, height, pxPerMm, origin: at, values, known }, ring)
}
