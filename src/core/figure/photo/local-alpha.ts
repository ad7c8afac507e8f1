import type { Pixels } from '../log/leaf-pixels'
import { square, weightedMeans, type Plane } from '../box-sums'
import { grown, inverted, shrunk } from './planes'

export interface LeafAlpha {
  /** How much of each pixel is leaf: 0 to 1. */
  readonly alpha: Plane
  /** In the band along the edge, how far apart the colours of leaf and table are (steps of 256); 0 elsewhere. */
  readonly contrastAt: Plane
}

/** Reach of the two passes, mm; the second looks nearer. */
const PASSES = [6, 4]
/** Kept clear of the edge when the colours on its two sides are taken, mm. */
const CLEAR = 1.5

/**
 * The leaf's share of every pixel, from a rough mask: near its edge the mean colours on both sides are taken, and the
 * pixel is what it is between them. Where the table is lighter the share of its brightness is left open, so that the
 * leaf's shadow counts as table.
 */
export function leafAlpha(picture: Pixels, rough: Uint8Array, mmPerPx: number): LeafAlpha {
  const { width, height } = picture
  const colours = rgbPlanes(picture)
  let mask = rough
  let result: LeafAlpha | null = null
  for (const reach of PASSES) {
    result = onePass(colours, mask, width, height, Math.max(2, Math.round(reach / mmPerPx)), mmPerPx)
    mask = halfAndMore(result.alpha)
  }
  return result!
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
  reach: number,
  mmPerPx: number,
): LeafAlpha {
  const clear = Math.max(1, Math.round(CLEAR / mmPerPx))
  const inside = weightedMeans(colours, shrunk(mask, width, height, clear), width, height, square(reach + clear))
  const outside = weightedMeans(
    colours,
    inverted(grown(mask, width, height, clear)),
    width,
    height,
    square(reach + clear),
  )
  const band = grown(mask, width, height, reach)
  const core = shrunk(mask, width, height, reach)
  const alpha = Float32Array.from(mask)
  const contrastAt = new Float32Array(alpha.length)
  for (let i = 0; i < alpha.length; i++) {
    if (!band[i] || core[i]) continue
    const [ir, ig, ib] = [inside[0]![i]!, inside[1]![i]!, inside[2]![i]!]
    const [or, og, ob] = [outside[0]![i]!, outside[1]![i]!, outside[2]![i]!]
    if (Number.isNaN(ir) || Number.isNaN(or)) continue
    const [r, g, b] = [colours[0]![i]!, colours[1]![i]!, colours[2]![i]!]
    const [dr, dg, db] = [ir - or, ig - og, ib - ob]
    const square = dr * dr + dg * dg + db * db
    contrastAt[i] = Math.sqrt(square)
    const plain = square < 1 ? alpha[i]! : ((r - or) * dr + (g - og) * dg + (b - ob) * db) / square
    const unmixed = dr + dg + db < -60 ? unmixedShare([ir, ig, ib], [or, og, ob], [r, g, b]) : null
    alpha[i] = Math.min(Math.max(unmixed ?? plain, 0), 1)
  }
  return { alpha, contrastAt }
}

type Colour = readonly [number, number, number]

const dot = (p: Colour, q: Colour): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]

/** Two colours nearer in direction than this (1 − cos) can't be told from a colour and its shadow. */
const LEAST_ANGLE = 0.02

/** The leaf's share where a pixel is so much of one colour and so much, perhaps shaded, of the other; or null. */
function unmixedShare(leaf: Colour, table: Colour, pixel: Colour): number | null {
  const [ll, tt, lt] = [dot(leaf, leaf), dot(table, table), dot(leaf, table)]
  const det = ll * tt - lt * lt
  if (1 - lt / Math.sqrt(ll * tt) < LEAST_ANGLE || det < 1) return null
  const [lp, tp] = [dot(leaf, pixel), dot(table, pixel)]
  const a = Math.max(0, (lp * tt - tp * lt) / det)
  const b = Math.max(0, (tp * ll - lp * lt) / det)
  return a + b > 0 ? a / (a + b) : null
}
