import { boxAround, boxHeight } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import { ringEdges, type Ring } from '../../core/geometry/polygon'
import type { LeafWood } from '../board-types'

/** One line of drawn grain, with the box it lies in so that it can be passed over quickly. */
export interface GrainLine {
  readonly points: readonly Point<'leaf'>[]
  /** A late ring: drawn stronger. */
  readonly strong: boolean
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
}

/** Between two drawn rings, at the middle of the log; mm. */
export const RING_SPACING = 5.2
const STRONG_EVERY = 3
const STEPS = 44

/**
 * The grain that is drawn where there is no picture: the lines in which a cone of yearly rings meets a flat cut, bent
 * after the leaf's wild edges. They narrow towards the far end and their heart lies off the middle, so that a leaf that
 * is mirrored or turned end for end looks so. A sketch of wood, not a claim about this leaf's figure.
 */
export function grainLines({ outline, cut, place }: Pick<LeafWood, 'outline' | 'cut' | 'place'>): readonly GrainLine[] {
  const box = boxAround(outline)
  const length = boxHeight(box)
  const edges = edgeTable(outline, box.min.y, length)
  const crown = cut === 'flat' || cut === 'half round' || cut === 'sawn' || cut === 'rotary'
  const depth = 62 - place * 0.55
  const taper = (crown ? 86 : 30) / Math.max(length, 1)
  // seen from the heart at 0: the wood reaches from -share to 1 - share of its width
  const heart = crown ? 0.43 : -0.62
  const lines: GrainLine[] = []
  const outer = Math.hypot(crown ? 205 : 560, depth) + 110
  for (let k = 1; depth + k * RING_SPACING < outer; k++) {
    const radius = depth + (k - 0.5) * RING_SPACING
    for (const points of ringOnCut(radius, { depth, taper, length, heart, edges, top: box.min.y }))
      lines.push(grainLine(points, k % STRONG_EVERY === 0))
  }
  return lines
}

interface CutThrough {
  readonly depth: number
  readonly taper: number
  readonly length: number
  readonly heart: number
  readonly edges: readonly { readonly left: number; readonly right: number }[]
  readonly top: number
}

/** Where one ring comes through: y by the distance u from the heart, which makes arches; cut where they leave the leaf. */
function ringOnCut(radius: number, cut: CutThrough): readonly Point<'leaf'>[][] {
  const reach = 560
  const lines: Point<'leaf'>[][] = []
  let line: Point<'leaf'>[] = []
  for (let i = -STEPS; i <= STEPS; i++) {
    // closer steps near the crown, where the arch turns
    const share = i / STEPS
    const u = Math.sign(share) * share * share * reach
    const y = (radius - Math.hypot(u, cut.depth)) / cut.taper
    if (y < -60 || y > cut.length + 60) {
      if (line.length > 1) lines.push(line)
      line = []
      continue
    }
    line.push(onLeaf(u, y, radius, cut))
  }
  if (line.length > 1) lines.push(line)
  return lines.map(smoothed)
}

function onLeaf(u: number, y: number, radius: number, { heart, edges, length, top }: CutThrough): Point<'leaf'> {
  const at = Math.min(edges.length - 1, Math.max(0, (y / length) * (edges.length - 1)))
  const [i, t] = [Math.floor(at), at - Math.floor(at)]
  const [here, next] = [edges[i]!, edges[Math.min(edges.length - 1, i + 1)]!]
  const left = here.left + (next.left - here.left) * t
  const right = here.right + (next.right - here.right) * t
  const wander =
    6 * Math.sin(y / 230 + 0.7) + 2.6 * Math.sin(y / 83 + radius / 31) + 1.1 * Math.sin(y / 37 + radius / 9)
  return point(left + (right - left) * heart + u + wander, top + y)
}

/** Corners between the few points taken out by one round of cutting them off. */
const smoothed = (line: readonly Point<'leaf'>[]): Point<'leaf'>[] =>
  line.length < 3
    ? [...line]
    : [
        line[0]!,
        ...line.slice(1).flatMap((p, i) => {
          const before = line[i]!
          return [
            point<'leaf'>(before.x * 0.75 + p.x * 0.25, before.y * 0.75 + p.y * 0.25),
            point<'leaf'>(before.x * 0.25 + p.x * 0.75, before.y * 0.25 + p.y * 0.75),
          ]
        }),
        line.at(-1)!,
      ]

function grainLine(points: readonly Point<'leaf'>[], strong: boolean): GrainLine {
  const { min, max } = boxAround(points)
  return { points, strong, minX: min.x, maxX: max.x, minY: min.y, maxY: max.y }
}

const ROWS = 24

/** The wild edges at a few heights, evened out. */
function edgeTable(outline: Ring<'leaf'>, top: number, length: number): readonly { left: number; right: number }[] {
  const rows = Array.from({ length: ROWS + 1 }, (_, i) => edgesAt(outline, top + (length * (i + 0.5)) / (ROWS + 1)))
  return rows.map((_, i) => {
    const near = rows.slice(Math.max(0, i - 1), i + 2)
    const mean = (side: 'left' | 'right') => near.reduce((sum, row) => sum + row[side], 0) / near.length
    return { left: mean('left'), right: mean('right') }
  })
}

function edgesAt(outline: Ring<'leaf'>, y: number): { left: number; right: number } {
  let [left, right] = [Infinity, -Infinity]
  for (const { a, b } of ringEdges(outline)) {
    if (a.y > y === b.y > y) continue
    const x = a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)
    left = Math.min(left, x)
    right = Math.max(right, x)
  }
  return left <= right ? { left, right } : { left: 0, right: 0 }
}
