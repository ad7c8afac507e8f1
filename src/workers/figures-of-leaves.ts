/// <reference lib="webworker" />
import { bandPassed } from '../core/figure/align/band-pass'
import type { GreyPicture } from '../core/figure/align/grey'
import { withinOutline } from '../core/figure/align/within-outline'
import { boxAround } from '../core/geometry/box'
import { leafOutline } from '../core/leaves/bundle'
import type { Flitch } from '../core/leaves/flitch'
import { woodReader, type WoodSource } from './wood-source'

/** Pixels a millimetre at which whole windows are judged. */
const SCALE = 0.5

/** The figure of each leaf in use, by its number, in leaf mm; leaves without a picture are left out. */
export async function figuresOfLeaves(
  source: WoodSource,
  flitch: Flitch,
  onProgress: (share: number) => void,
): Promise<ReadonlyMap<number, GreyPicture>> {
  const read = woodReader(source)
  const leaves = flitch.leaves.filter(({ state }) => state === 'in use')
  const figures = new Map<number, GreyPicture>()
  for (const [i, leaf] of leaves.entries()) {
    const outline = leafOutline(flitch, leaf)
    const picture = await read({ leaf: leaf.number, face: 'numbered', box: boxAround(outline), pxPerMm: SCALE })
    if (picture) figures.set(leaf.number, bandPassed(withinOutline(picture, outline)))
    onProgress((i + 1) / leaves.length)
  }
  return figures
}
