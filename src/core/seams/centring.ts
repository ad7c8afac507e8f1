import { cross, subtract } from '../geometry/point'
import type { Edge } from '../geometry/polygon'
import { isBandJoint } from '../patterns/pattern'
import type { Seam } from './find-seams'

/** How far the seams found lie off the panel's centre; null on an axis where no seam runs that way. */
export interface Centre {
  readonly x: number | null
  readonly y: number | null
}

/**
 * Measured on the seams: the upright seam nearest to the centre line and the level one; round a centre, the point where
 * the seams cross. Positive to the right and down. Seams of a border and within jointed sheets are left out.
 */
export function centreOfSeams(all: readonly Seam[]): Centre {
  const seams = all.filter(({ kind }) => !isBandJoint(kind) && kind !== 'sheet')
  const round = seams.filter(({ kind }) => kind === 'radial' || kind === 'diameter')
  if (round.length > 1) return crossing(round)
  return {
    x: nearest(
      seams.filter(({ edge }) => Math.abs(edge.a.x - edge.b.x) < 0.01).map(({ edge }) => (edge.a.x + edge.b.x) / 2),
    ),
    y: nearest(
      seams.filter(({ edge }) => Math.abs(edge.a.y - edge.b.y) < 0.01).map(({ edge }) => (edge.a.y + edge.b.y) / 2),
    ),
  }
}

const nearest = (offsets: readonly number[]): number | null =>
  offsets.length ? offsets.reduce((best, x) => (Math.abs(x) < Math.abs(best) ? x : best)) : null

/** Where the lines of the first seam and of the one most square to it meet. */
function crossing(seams: readonly Seam[]): Centre {
  const first = seams[0]!.edge
  const square = seams.reduce((best, seam) => (lean(first, seam.edge) > lean(first, best.edge) ? seam : best)).edge
  const along = subtract(first.b, first.a)
  const other = subtract(square.b, square.a)
  const t = cross(subtract(square.a, first.a), other) / cross(along, other)
  return { x: first.a.x + t * along.x, y: first.a.y + t * along.y }
}

function lean(first: Edge<'panel'>, edge: Edge<'panel'>): number {
  const [u, v] = [subtract(first.b, first.a), subtract(edge.b, edge.a)]
  return Math.abs(cross(u, v)) / (Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y))
}
