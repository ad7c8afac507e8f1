import { point, type Point } from '../../geometry/point'
import { ringEdges, signedArea, type Ring } from '../../geometry/polygon'
import { ok, refused, type Result } from '../../result'
import type { Pixels } from '../log/leaf-pixels'
import { leafAlpha } from './local-alpha'
import { boxOfMask, croppedMask, croppedTo } from './cropped'
import { longestContour, simplifiedRing } from './contour'
import { separateLeaf, type OutlineRefusal } from './separate-leaf'
import type { StraightFrame } from './straighten'

/** An outline read from a straightened photograph. */
export interface FoundOutline {
  readonly outline: Ring<'leaf'>
  /** For each edge, from its point to the next: whether leaf and table are too alike there to be sure of it. */
  readonly unsure: readonly boolean[]
  /** Mean difference of leaf and table along the outline, in steps of 256. */
  readonly contrast: number
  /** What must be looked at before the outline is trusted. */
  readonly warnings: readonly OutlineWarning[]
}

export type OutlineWarning = 'low contrast' | 'wood-coloured table' | 'stray patches' | 'unsure stretches'

/** Below this mean contrast an outline is refused; below the next it is given with a warning. */
const LEAST_CONTRAST = 28
const LOW_CONTRAST = 40
/** A stretch with less is shown dashed. */
const UNSURE = 22
/** Hot pixels off the leaf, as a share of it. */
const MOST_STRAY = 0.1
const SIMPLIFIED = 0.3
/** So much of the table round the leaf is looked at for its edge, mm: more than all passes together reach. */
const ROUND_LEAF = 40

/** `ignored`: places that are neither leaf nor table, such as the cards with the marks. */
export function findOutline(
  whole: Pixels,
  all: StraightFrame,
  ignored: readonly { readonly centre: Point<'leaf'>; readonly radius: number }[],
): Result<FoundOutline, OutlineRefusal> {
  const separated = separateLeaf(whole, all, ignored)
  if (!separated.ok) return separated
  const { stray, isWoodLike } = separated.value
  const round = boxOfMask(separated.value.mask, whole, Math.round(ROUND_LEAF / all.mmPerPx))
  const { picture, frame } = croppedTo(whole, all, round)
  const mask = croppedMask(separated.value.mask, whole.width, round)
  const { alpha, contrastAt } = leafAlpha(picture, mask, frame.mmPerPx)
  const contour = longestContour(alpha, frame.width, frame.height, 0.5)
  if (!contour) return refused('no leaf')
  const { origin, mmPerPx } = frame
  const toLeaf = (p: Point<'screen'>) => point<'leaf'>(origin.x + p.x * mmPerPx, origin.y + p.y * mmPerPx)
  const ring = clockwise(simplifiedRing(contour.map(toLeaf), SIMPLIFIED))
  const contrasts = ringEdges(ring).map(({ a, b }) => edgeContrast(a, b, frame, contrastAt))
  const contrast = contrasts.reduce((sum, c, i) => sum + c * edgeLength(ring, i), 0) / perimeter(ring)
  if (contrast < LEAST_CONTRAST) return refused(isWoodLike ? 'wood-coloured table' : 'too little contrast')
  const unsure = contrasts.map((c) => c < UNSURE)
  const share = unsure.reduce((sum, isUnsure, i) => sum + (isUnsure ? edgeLength(ring, i) : 0), 0) / perimeter(ring)
  const warnings: OutlineWarning[] = [
    ...(contrast < LOW_CONTRAST ? (['low contrast'] as const) : []),
    ...(isWoodLike ? (['wood-coloured table'] as const) : []),
    ...(stray > MOST_STRAY ? (['stray patches'] as const) : []),
    ...(share > 0.01 ? (['unsure stretches'] as const) : []),
  ]
  return ok({ outline: ring.map(rounded), unsure, contrast, warnings })
}

const clockwise = (ring: Ring<'leaf'>): Ring<'leaf'> => (signedArea(ring) < 0 ? [...ring].reverse() : ring)

const rounded = ({ x, y }: Point<'leaf'>): Point<'leaf'> => point(Math.round(x * 100) / 100, Math.round(y * 100) / 100)

const edgeLength = (ring: Ring<'leaf'>, i: number): number => {
  const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!]
  return Math.hypot(b.x - a.x, b.y - a.y)
}

const perimeter = (ring: Ring<'leaf'>): number => ring.reduce((sum, _, i) => sum + edgeLength(ring, i), 0)

/** Mean of the contrasts met along an edge, every two millimetres. */
function edgeContrast(a: Point<'leaf'>, b: Point<'leaf'>, frame: StraightFrame, at: Float32Array): number {
  const { origin, width, height, mmPerPx } = frame
  const steps = Math.max(1, Math.round(Math.hypot(b.x - a.x, b.y - a.y) / 2))
  let [sum, count] = [0, 0]
  for (let i = 0; i <= steps; i++) {
    const x = Math.floor((a.x + ((b.x - a.x) * i) / steps - origin.x) / mmPerPx)
    const y = Math.floor((a.y + ((b.y - a.y) * i) / steps - origin.y) / mmPerPx)
    const value = at[Math.min(Math.max(y, 0), height - 1) * width + Math.min(Math.max(x, 0), width - 1)]!
    if (value > 0) [sum, count] = [sum + value, count + 1]
  }
  return count > 0 ? sum / count : 0
}
