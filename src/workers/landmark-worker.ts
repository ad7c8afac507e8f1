/// <reference lib="webworker" />
import { greyOf } from '../core/figure/align/grey'
import { withinOutline } from '../core/figure/align/within-outline'
import { findLandmarks } from '../core/figure/landmarks/find-landmarks'
import type { Pixels } from '../core/figure/log/leaf-pixels'
import type { LandmarkLook, Sight } from '../core/templates/viewfinder'
import type { CellId } from '../core/ids'
import type { Failed } from './one-task'
import { woodPixels, type WoodSource } from './wood-source'

export interface ToLandmarkWorker {
  readonly source: WoodSource
  readonly looks: readonly LandmarkLook[]
}

export type FromLandmarkWorker =
  | { readonly kind: 'progress'; readonly share: number }
  /** Leaves without a picture are missing. */
  | { readonly kind: 'found'; readonly sights: ReadonlyMap<CellId, Sight> }

/** Pixels a millimetre: stripes are placed to half a millimetre. */
const SCALE = 1

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromLandmarkWorker | Failed): void => scope.postMessage(message)

scope.onmessage = async ({ data: { source, looks } }: MessageEvent<ToLandmarkWorker>) => {
  try {
    const read = woodPixels(source)
    const sights = new Map<CellId, Sight>()
    for (const [i, look] of looks.entries()) {
      const pixels = await read({ leaf: look.leaf, face: 'numbered', box: look.box, pxPerMm: SCALE })
      if (pixels) sights.set(look.cell, await sightOf(pixels, look))
      tell({ kind: 'progress', share: (i + 1) / looks.length })
    }
    tell({ kind: 'found', sights })
  } catch (error) {
    tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}

async function sightOf(pixels: Pixels, { box, window, outline, knots }: LandmarkLook): Promise<Sight> {
  const wood = withinOutline(greyOf(pixels, SCALE, box.min), outline)
  return { landmarks: findLandmarks(wood, window, knots), picture: { bytes: await jpegOf(pixels), type: 'jpeg', box } }
}

/** As a picture to be printed; on white where there is no wood. */
async function jpegOf({ width, height, rgba }: Pixels): Promise<Uint8Array> {
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')
  if (!context) throw new Error(`This browser has no room for a picture of ${width} × ${height} pixels.`)
  context.putImageData(new ImageData(rgba as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0)
  context.globalCompositeOperation = 'destination-over'
  context.fillStyle = '#ffffff'
  context.fillRect(0, 0, width, height)
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.82 })
  return new Uint8Array(await blob.arrayBuffer())
}
