import type { Point } from '../core/geometry/point'

/** A picture of one side of a leaf in the leaf's frame: where its top left corner lies, and how fine it is. */
export interface SideFigure {
  readonly bitmap: ImageBitmap
  readonly pxPerMm: number
  readonly origin: Point<'leaf'>
}
