import type { Point } from '../../geometry/point'
import type { Pixels } from '../log/leaf-pixels'

/**
 * A picture of wood as darkness by the logarithm, so that a shadow is a plain shift: one value a pixel, row by row, in the
 * frame of a leaf. Pixels that are not wood are not known.
 */
export interface GreyPicture {
  readonly width: number
  readonly height: number
  readonly pxPerMm: number
  /** Where its top left corner lies, mm. */
  readonly origin: Point<'leaf'>
  readonly values: Float32Array
  /** 1 where there is wood, else 0. */
  readonly known: Uint8Array
}

/** A picture in grey. A pixel counts as wood when it covers nine tenths and more. */
export function greyOf({ width, height, rgba }: Pixels, pxPerMm: number, origin: Point<'leaf'>): GreyPicture {
  const values = new Float32Array(width * height)
  const known = new Uint8Array(width * height)
  for (let i = 0; i < values.length; i++) {
    if (rgba[4 * i + 3]! < 230) continue
    known[i] = 1
    values[i] = Math.log(1 + 0.3 * rgba[4 * i]! + 0.59 * rgba[4 * i + 1]! + 0.11 * rgba[4 * i + 2]!)
  }
  return { width, height, pxPerMm, origin, values, known }
}

/** The picture seen from behind: left and right change places. */
export function mirrored(picture: GreyPicture): GreyPicture {
  const { width, height } = picture
  const values = new Float32Array(width * height)
  const known = new Uint8Array(width * height)
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const [to, from] = [j * width + i, j * width + (width - 1 - i)]
      values[to] = picture.values[from]!
      known[to] = picture.known[from]!
    }
  return { ...picture, values, known }
}

/** The mean of blocks of `by` by `by` pixels; a block is known where half of it is. */
export function shrunk(picture: GreyPicture, by: number): GreyPicture {
  const width = Math.floor(picture.width / by)
  const height = Math.floor(picture.height / by)
  const values = new Float32Array(width * height)
  const known = new Uint8Array(width * height)
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      let [sum, count] = [0, 0]
      for (let y = j * by; y < (j + 1) * by; y++)
        for (let x = i * by; x < (i + 1) * by; x++) {
          const at = y * picture.width + x
          if (picture.known[at] === 0) continue
          sum += picture.values[at]!
          count++
        }
      if (2 * count < by * by) continue
      values[j * width + i] = sum / count
      known[j * width + i] = 1
    }
  return { ...picture, width, height, pxPerMm: picture.pxPerMm / by, values, known }
}
