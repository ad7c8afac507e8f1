import { point } from '../../geometry/point'
import { leafPixels, pixelSize, type PixelRequest, type Pixels } from './leaf-pixels'
import type { Log } from './log'

/** Pixels of a strip right across a picture, from its `row` down. */
export interface Strip {
  readonly row: number
  readonly pixels: Pixels
}

/**
 * The picture of `leafPixels` in strips of about `rows` rows each, from the top: whoever draws them may stop, or do
 * something else, after any of them.
 */
export function* leafStrips(log: Log, leaf: number, request: PixelRequest, rows: number): Generator<Strip, void> {
  const { box, pxPerMm } = request
  const { height } = pixelSize(request)
  for (let row = 0; row < height; row += rows) {
    const min = point<'leaf'>(box.min.x, box.min.y + row / pxPerMm)
    const max = point<'leaf'>(box.max.x, box.min.y + Math.min(row + rows, height) / pxPerMm)
    yield { row, pixels: leafPixels(log, leaf, { ...request, box: { min, max } }) }
  }
}
