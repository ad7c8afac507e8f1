/**
 * Wood joined along one straight line.
 *
 * Input: what lies on either side of the line, in one frame, its faces on the line to within the snapping of the grid.
 * Output: both as one region, and the stretches of the line on which they lie against each other. Tolerance: the joint
 * is closed over twice the grid. Failure: none; where the two do not meet there is no stretch.
 */
import { unite } from '../geometry/clip'
import { distance, point, type Point } from '../geometry/point'
import { ringEdges, type Edge, type Region } from '../geometry/polygon'
import { edgeLength, sharedStretch } from '../geometry/segment'
import { GRID, MEETS } from '../geometry/tolerance'

export interface JointLine {
  readonly through: Point<'leaf'>
  /** The way the line runs from the numbered end to the far end. */
  readonly runs: 'right' | 'left'
  /** The tangent of its angle to the grain. */
  readonly slope: number
}

export interface Joined {
  readonly region: Region<'leaf'>
  readonly seams: readonly Edge<'leaf'>[]
}

const hand = ({ runs }: JointLine): 1 | -1 => (runs === 'right' ? 1 : -1)

/** How far a point lies across from the line, positive on the side to which the line runs. */
export const acrossFromLine = (line: JointLine, p: Point<'leaf'>): number =>
  hand(line) * (p.x - line.through.x) - line.slope * (p.y - line.through.y)

export function joinedAlong(near: Region<'leaf'>, far: Region<'leaf'>, line: JointLine): Joined {
  const seams = seamsOn(line, near, far)
  // snapped on its own, each face may stand a thousandth back: a strip over the joint closes it
  const closing = seams.map((seam) => stripOver(line, seam))
  return { region: unite(near, far, ...closing), seams }
}

function seamsOn(line: JointLine, near: Region<'leaf'>, far: Region<'leaf'>): readonly Edge<'leaf'>[] {
  const long = Math.hypot(1, line.slope)
  const faces = (region: Region<'leaf'>) =>
    region
      .flat()
      .flatMap(ringEdges)
      .filter(({ a, b }) => [a, b].every((p) => Math.abs(acrossFromLine(line, p)) < 4 * GRID * long))
  const others = faces(far)
  const shared = faces(near)
    .flatMap((edge) => others.map((other) => sharedStretch(edge, other, 8 * GRID)))
    .filter((seam) => seam !== null)
    .filter((seam) => edgeLength(seam) > 8 * GRID)
  return continued(shared.map(({ a, b }) => (a.y <= b.y ? { a, b } : { a: b, b: a })))
}

/** Stretches from the numbered end on, each with those that follow it without a gap. */
function continued(stretches: readonly Edge<'leaf'>[]): readonly Edge<'leaf'>[] {
  const merged: Edge<'leaf'>[] = []
  for (const stretch of [...stretches].sort((p, q) => p.a.y - q.a.y)) {
    const before = merged[merged.length - 1]
    if (before && distance(before.b, stretch.a) < MEETS) merged[merged.length - 1] = { a: before.a, b: stretch.b }
    else merged.push(stretch)
  }
  return merged
}

/** A strip along a seam, twice the grid to either side. */
function stripOver({ slope }: JointLine, { a, b }: Edge<'leaf'>): Region<'leaf'> {
  const by = 2 * GRID * Math.hypot(1, slope)
  return [[[point(a.x - by, a.y), point(a.x + by, a.y), point(b.x + by, b.y), point(b.x - by, b.y)]]]
}
