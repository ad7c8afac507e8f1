import type { Ring } from '../../geometry/polygon'
import { ringEdges } from '../../geometry/polygon'
import type { GreyPicture } from './grey'

/**
 * A picture of which only the wood inside an outline is known: on a photograph there is the table beside the leaf. A pixel
 * is inside when its middle is.
 */
export function withinOutline(picture: GreyPicture, outline: Ring<'leaf'>): GreyPicture {
  const { width, height, pxPerMm, origin } = picture
  const edges = ringEdges(outline)
  const known = new Uint8Array(width * height)
  for (let j = 0; j < height; j++) {
    const y = origin.y + (j + 0.5) / pxPerMm
    const crossings = edges
      .filter(({ a, b }) => a.y > y !== b.y > y)
      .map(({ a, b }) => (a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y) - origin.x) * pxPerMm - 0.5)
      .sort((p, q) => p - q)
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const to = Math.min(width - 1, Math.floor(crossings[k + 1]!))
      for (let i = Math.max(0, Math.ceil(crossings[k]!)); i <= to; i++)
        known[j * width + i] = picture.known[j * width + i]!
    }
  }
  return { ...picture, known }
}
