/// <reference lib="webworker" />
import { greyOf, type GreyPicture } from '../core/figure/align/grey'
import { leafPixels, type Pixels } from '../core/figure/log/leaf-pixels'
import { makeLog, type Log, type LogOptions } from '../core/figure/log/log'
import { boxHeight, boxWidth, type Box } from '../core/geometry/box'
import type { StoredPicture } from '../core/leaves/leaf'

/** Where the pictures of a flitch's leaves come from. */
export type WoodSource =
  | { readonly kind: 'log'; readonly options: LogOptions }
  | { readonly kind: 'photographs'; readonly leaves: ReadonlyMap<number, LeafPhotograph> }

/** A straightened photograph of the numbered side of a leaf. */
export interface LeafPhotograph {
  readonly picture: StoredPicture
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** What of a leaf is looked at. */
export interface WoodLook {
  readonly leaf: number
  readonly face: 'numbered' | 'other'
  readonly box: Box<'leaf'>
  readonly pxPerMm: number
}

/** Gives grey pictures of leaves; one log is made and each photograph is decoded once. */
export function woodReader(source: WoodSource): (look: WoodLook) => Promise<GreyPicture | null> {
  const read = woodPixels(source)
  return async (look) => {
    const pixels = await read(look)
    return pixels && greyOf(pixels, look.pxPerMm, look.box.min)
  }
}

/** The same in colour. */
export function woodPixels(source: WoodSource): (look: WoodLook) => Promise<Pixels | null> {
  if (source.kind === 'log') {
    let log: Log | null = null
    return ({ leaf, face, box, pxPerMm }) => {
      log ??= makeLog(source.options)
      return Promise.resolve(leafPixels(log, leaf, { pxPerMm, box, face }))
    }
  }
  const decoded = new Map<number, Promise<ImageBitmap>>()
  return async (look) => {
    const photograph = source.leaves.get(look.leaf)
    if (!photograph) return null
    const bitmap = decoded.get(look.leaf) ?? createImageBitmap(new Blob([photograph.bytes]))
    decoded.set(look.leaf, bitmap)
    return cutOut(await bitmap, photograph.picture, look)
  }
}

/** A part of a photograph at the scale that is wanted. The other side of a leaf is seen through it: there is no photograph of it. */
function cutOut(bitmap: ImageBitmap, { mmPerPx, origin }: StoredPicture, { box, pxPerMm }: WoodLook): Pixels {
  const width = Math.max(1, Math.round(boxWidth(box) * pxPerMm))
  const height = Math.max(1, Math.round(boxHeight(box) * pxPerMm))
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })
  if (!context) throw new Error(`This browser has no room for a picture of ${width} × ${height} pixels.`)
  const scale = mmPerPx * pxPerMm
  context.imageSmoothingQuality = 'high'
  context.setTransform(scale, 0, 0, scale, (origin.x - box.min.x) * pxPerMm, (origin.y - box.min.y) * pxPerMm)
  context.drawImage(bitmap, 0, 0)
  return { width, height, rgba: context.getImageData(0, 0, width, height).data }
}
