import { distance, point, type Point } from '../../src/core/geometry/point'
import { polygonArea, ringEdges, type Ring } from '../../src/core/geometry/polygon'
import { intersect } from '../../src/core/geometry/clip'
import { readLeafPhoto, type LeafPhoto } from '../../src/core/figure/photo/read-leaf-photo'
import { photographOf } from '../../src/core/figure/photo/photograph'
import { photoToLeaf } from '../../src/core/figure/photo/photo-view'
import type { ComposedPhoto } from './compose'

export interface Judgement {
  /** Of the straightening: the worst error of a place on the bench, mm. */
  readonly straight: number | null
  /** Of the outline, along the true one, mm. */
  readonly mean: number
  readonly p95: number
  readonly iou: number
  readonly outcome: 'good' | 'warned' | 'refused'
  readonly why: string
}

/** What the program makes of a composed photograph, against what is true. */
export const judge = (photo: ComposedPhoto): Judgement =>
  judgeReading(
    photo,
    readLeafPhoto(photographOf(photo.pixels), { from: 'marks' }, photo.rectangle, {
      sideUp: 'numbered',
      dotAt: 'numbered end',
    }),
  )

export function judgeReading(
  { outline, rectangle, marks }: Pick<ComposedPhoto, 'outline' | 'rectangle' | 'marks'>,
  read: ReturnType<typeof readLeafPhoto>,
): Judgement {
  if (!read.ok) return { straight: null, mean: NaN, p95: NaN, iou: 0, outcome: 'refused', why: read.reason.trouble }
  const truth = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ].map(([x, y]) => point<'leaf'>(x! * rectangle.across, y! * rectangle.along))
  const straight = Math.max(...truth.map((p, i) => distance(p, photoToLeaf(read.value.view, marks[i]!))))
  return { straight, ...judgeOutline(read.value, outline) }
}

function judgeOutline({ outline }: LeafPhoto, truth: Ring<'leaf'>) {
  if (!outline.ok) return { mean: NaN, p95: NaN, iou: 0, outcome: 'refused' as const, why: outline.reason }
  const found = outline.value.outline
  const errors = [...along(truth).map((p) => toRing(p, found)), ...along(found).map((p) => toRing(p, truth))].sort(
    (a, b) => a - b,
  )
  const mean = errors.reduce((sum, e) => sum + e, 0) / errors.length
  const common = intersect([[found]], [[truth]]).reduce((sum, polygon) => sum + polygonArea(polygon), 0)
  const all = polygonArea([found]) + polygonArea([truth]) - common
  return {
    mean,
    p95: errors[Math.floor(errors.length * 0.95)]!,
    iou: common / all,
    outcome: outline.value.warnings.length > 0 ? ('warned' as const) : ('good' as const),
    why: outline.value.warnings.join(', '),
  }
}

const along = (ring: Ring<'leaf'>): Point<'leaf'>[] =>
  ringEdges(ring).flatMap(({ a, b }) => {
    const steps = Math.max(1, Math.round(distance(a, b) / 3))
    return Array.from({ length: steps }, (_, i) =>
      point<'leaf'>(a.x + ((b.x - a.x) * i) / steps, a.y + ((b.y - a.y) * i) / steps),
    )
  })

const toRing = (p: Point<'leaf'>, ring: Ring<'leaf'>): number => {
  let best = Infinity
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!]
    const [dx, dy] = [b.x - a.x, b.y - a.y]
    const t = Math.min(Math.max(((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy), 0), 1)
    best = Math.min(best, Math.hypot(p.x - a.x - dx * t, p.y - a.y - dy * t))
  }
  return best
}
