import type { Pixels } from '../log/leaf-pixels'
import { blankPlanes, meansRoom, square, weightedMeans, type MeansRoom, type Plane } from '../box-sums'
import { grown, inverted, shrunk } from './planes'

export interface LeafAlpha {
  /** How much of each pixel is leaf: 0 to 1. */
  readonly alpha: Plane
  /** In the band along the edge, how well leaf and table can be told apart (steps of 256 in brightness); 0 elsewhere. */
  readonly contrastAt: Plane
}

/**
 * Reach of the passes and what is kept clear of the edge when the colours on its two sides are taken, mm: at first the
 * leaf's own shadow may pass for leaf, later the edge is known and one can look nearer.
 */
const PASSES = [
  { reach: 6, clear: 3.5 },
  { reach: 5, clear: 2 },
  { reach: 4, clear: 1.5 },
]

/**
 * The leaf's share of every pixel, from a rough mask: near its edge the mean colours on both sides are taken, and the
 * pixel is what it is between them; by its hue alone where a shadow on the table could pass for leaf.
 */
export function leafAlpha(picture: Pixels, rough: Uint8Array, mmPerPx: number): LeafAlpha {
  const { width, height } = picture
  const colours = rgbPlanes(picture)
  const room = alphaRoom(width * height)
  let mask = rough
  for (const { reach, clear } of PASSES) {
    const inPixels = {
      reach: Math.max(2, Math.round(reach / mmPerPx)),
      clear: Math.max(1, Math.round(clear / mmPerPx)),
    }
    onePass(colours, mask, width, height, inPixels, room)
    mask = halfAndMore(room.alpha)
  }
  return room
}

/** Room for the passes: each is written over the one before. */
interface AlphaRoom extends LeafAlpha {
  readonly inside: MeansRoom
  readonly outside: MeansRoom
}

function alphaRoom(pixels: number): AlphaRoom {
  const inside = meansRoom(3, pixels)
  const [alpha, contrastAt] = blankPlanes(2, pixels) as [Plane, Plane]
  return { inside, outside: { ...inside, means: blankPlanes(3, pixels) }, alpha, contrastAt }
}

function halfAndMore(alpha: Plane): Uint8Array {
  const mask = new Uint8Array(alpha.length)
  for (let i = 0; i < mask.length; i++) if (alpha[i]! > 0.5) mask[i] = 1
  return mask
}

function rgbPlanes({ rgba }: Pixels): readonly Plane[] {
  return [0, 1, 2].map((c) => {
    const plane = new Float32Array(rgba.length / 4)
    for (let i = 0, at = c; i < plane.length; i++, at += 4) plane[i] = rgba[at]!
    return plane
  })
}

function onePass(
  colours: readonly Plane[],
  mask: Uint8Array,
  width: number,
  height: number,
  { reach, clear }: { readonly reach: number; readonly clear: number },
  { alpha, contrastAt, ...room }: AlphaRoom,
): void {
  const box = square(reach + clear)
  const inside = weightedMeans(colours, shrunk(mask, width, height, clear), width, height, box, room.inside)
  const table = inverted(grown(mask, width, height, clear))
  const outside = weightedMeans(colours, table, width, height, box, room.outside)
  const band = grown(mask, width, height, reach)
  const core = shrunk(mask, width, height, reach)
  alpha.set(mask)
  contrastAt.fill(0)
  for (let i = 0; i < alpha.length; i++) {
    if (!band[i] || core[i]) continue
    const leafColour = colourAt(inside, i)
    const tableColour = colourAt(outside, i)
    if (Number.isNaN(leafColour[0]) || Number.isNaN(tableColour[0])) continue
    const { share, contrast } = shareOf(leafColour, tableColour, colourAt(colours, i))
    alpha[i] = share ?? alpha[i]!
    contrastAt[i] = contrast
  }
}

type Colour = readonly [number, number, number]

const colourAt = (planes: readonly Plane[], i: number): Colour => [planes[0]![i]!, planes[1]![i]!, planes[2]![i]!]

const dot = (p: Colour, q: Colour): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]

/** Two colours nearer in direction than this (1 − cos) can't be told from a colour and its shadow. */
const LEAST_ANGLE = 0.003
/** Seen in its own colour a table so much brighter than the leaf can pass for leaf where a shadow lies on it. */
const BRIGHTER = 1.03
/** Wood differs far less in hue than in brightness, so a difference in hue is worth so much more. */
const HUE_WORTH = 2

/**
 * The leaf's share of a pixel, and how far apart leaf and table are for telling it. Where a shadow on the table would
 * look more like the leaf, or the hues tell more, brightness is left out of it.
 */
function shareOf(leaf: Colour, table: Colour, pixel: Colour): { share: number | null; contrast: number } {
  const [ll, tt, lt] = [dot(leaf, leaf), dot(table, table), dot(leaf, table)]
  const [lp, tp] = [dot(leaf, pixel), dot(table, pixel)]
  const apart = Math.sqrt(Math.max(ll + tt - 2 * lt, 0))
  const hue = HUE_WORTH * Math.sqrt(Math.max(ll * tt - lt * lt, 0) / Math.max(ll, tt))
  const isShadowRisk = tt > BRIGHTER * lt && 1 - lt / Math.sqrt(ll * tt) > LEAST_ANGLE
  if (!isShadowRisk && hue < apart)
    return { share: apart < 1 ? null : within((lp - tp - lt + tt) / (apart * apart)), contrast: apart }
  const a = Math.max(0, lp * tt - tp * lt)
  const b = Math.max(0, tp * ll - lp * lt)
  return { share: a + b > 0 ? a / (a + b) : null, contrast: hue }
}

const within = (share: number): number => Math.min(Math.max(share, 0), 1)
