/**
 * What two cells share along a round border.
 *
 * Input: tagged rings that run positively, their arcs set out between their own ends. Output: the arcs that both have,
 * as the points along them, running with the first cell's ring. Tolerance: arcs are one when their centre and radius
 * agree to the grid, and shared when they overlap by more. Failure: none.
 */
import { arcPoints } from '../geometry/arc'
import { cross, distance, subtract, type Point } from '../geometry/point'
import { GRID } from '../geometry/tolerance'
import type { TaggedRing } from '../faces/cells'

/** A run of edges on one circle: from an angle on, by so much, clockwise as seen when positive. */
interface ArcRun {
  readonly centre: Point<'panel'>
  readonly radius: number
  readonly from: number
  readonly sweep: number
  readonly source: number
}

export interface SharedArc {
  readonly source: number
  readonly line: readonly Point<'panel'>[]
}

export function sharedArcs(one: TaggedRing<'panel'>, other: TaggedRing<'panel'>): readonly SharedArc[] {
  const others = arcRuns(other)
  return arcRuns(one).flatMap((run) =>
    others.filter((their) => isSameCircle(run, their)).flatMap((their) => overlapOf(run, their)),
  )
}

const isSameCircle = (p: ArcRun, q: ArcRun): boolean =>
  distance(p.centre, q.centre) < GRID && Math.abs(p.radius - q.radius) < GRID

/** The runs of edges that lie between border and field on one circle. */
function arcRuns({ ring, tags }: TaggedRing<'panel'>): readonly ArcRun[] {
  const count = ring.length
  const onArc = (i: number) => {
    const tag = tags[(i + count) % count]!
    return tag.kind === 'seam' && tag.joint === 'border' && tag.curve?.shape === 'arc' ? tag : null
  }
  const runs: ArcRun[] = []
  for (let i = 0; i < count; i++) {
    const tag = onArc(i)
    const before = onArc(i - 1)
    const goesOn = before && tag && before.source === tag.source
    if (!tag || tag.curve?.shape !== 'arc' || goesOn) continue
    let steps = 1
    while (steps < count && onArc(i + steps)?.source === tag.source) steps++
    runs.push(arcRun(ring, i, steps, tag.curve, tag.source ?? 0))
  }
  if (runs.length === 0 && onArc(0)) {
    const tag = onArc(0)!
    if (tag.curve?.shape === 'arc') runs.push(arcRun(ring, 0, count, tag.curve, tag.source ?? 0))
  }
  return runs
}

function arcRun(
  ring: TaggedRing<'panel'>['ring'],
  begin: number,
  steps: number,
  { centre, radius }: { readonly centre: Point<'panel'>; readonly radius: number },
  source: number,
): ArcRun {
  const at = (i: number) => subtract(ring[i % ring.length]!, centre)
  let sweep = 0
  for (let i = begin; i < begin + steps; i++) {
    const [p, q] = [at(i), at(i + 1)]
    sweep += Math.atan2(cross(p, q), p.x * q.x + p.y * q.y)
  }
  return { centre, radius, from: Math.atan2(at(begin).y, at(begin).x), sweep, source }
}

const ROUND = 2 * Math.PI

/** In what both have, as it is run by the first; two bits where a nearly whole circle meets one from both ends. */
function overlapOf(run: ArcRun, other: ArcRun): readonly SharedArc[] {
  const [low, high] = ends(run)
  const [otherLow, otherHigh] = ends(other)
  return [-2, -1, 0, 1, 2].flatMap((turns) => {
    const from = Math.max(low, otherLow + turns * ROUND)
    const to = Math.min(high, otherHigh + turns * ROUND)
    if ((to - from) * run.radius <= GRID) return []
    const line = arcPoints(run.centre, run.radius, from, to)
    return [{ source: run.source, line: run.sweep > 0 ? line : line.reverse() }]
  })
}

const ends = ({ from, sweep }: ArcRun): readonly [number, number] =>
  sweep > 0 ? [from, from + sweep] : [from + sweep, from]
