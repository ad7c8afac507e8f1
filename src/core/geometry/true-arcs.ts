/**
 * Arcs in a cut ring set out anew between their own ends.
 *
 * Input: a ring whose edges say on which curve they lie, cut by straight lines. Output: the same, each run of edges on one
 * arc replaced by equal chords from where the lines beside it really meet the circle; the area below the arc is that of
 * the true one. So cells that are alike have rings that are alike, wherever on the circle they were cut, and neighbours
 * still share their ends. Tolerance: chords run beside the arc by less than the chord error. Failure: none; a whole
 * circle, and curves that are no arcs, stay as they are.
 */
import type { Curve } from './curve'
import { add, cross, distance, dot, point, scale, subtract, type Point, type Space } from './point'
import type { Ring } from './polygon'
import { CHORD_ERROR } from './tolerance'

interface Curved<S extends Space> {
  readonly curve: Curve<S> | null
}

interface Tagged<S extends Space, T extends Curved<S>> {
  readonly ring: Ring<S>
  readonly tags: readonly T[]
}

type ArcCurve<S extends Space> = Extract<Curve<S>, { shape: 'arc' }>

export function withTrueArcs<S extends Space, T extends Curved<S>>(tagged: Tagged<S, T>): Tagged<S, T> {
  const { ring, tags } = tagged
  const count = ring.length
  const startsRun = (i: number) => !isSameArc(tags[(i + count - 1) % count]!.curve, tags[i]!.curve)
  const first = ring.findIndex((_, i) => startsRun(i))
  if (first < 0 || tags.every(({ curve }) => curve?.shape !== 'arc')) return tagged
  const points: Point<S>[] = []
  const kept: T[] = []
  for (let step = 0; step < count;) {
    const i = (first + step) % count
    let length = 1
    while (step + length < count && !startsRun((i + length) % count)) length++
    const { curve } = tags[i]!
    const run = runEnds(tagged, i, length)
    const set = curve?.shape === 'arc' ? arcBetween(run.from, run.to, curve, run.clockwise) : [run.from]
    if (curve?.shape === 'arc') {
      points.push(...set)
      kept.push(...set.map(() => tags[i]!))
    } else {
      for (let k = 0; k < length; k++) {
        points.push(k === 0 ? run.from : ring[(i + k) % count]!)
        kept.push(tags[(i + k) % count]!)
      }
    }
    step += length
  }
  return { ring: points, tags: kept }
}

const isSameArc = <S extends Space>(p: Curve<S> | null, q: Curve<S> | null): boolean =>
  p?.shape === 'arc' && q?.shape === 'arc'
    ? p.radius === q.radius && p.centre.x === q.centre.x && p.centre.y === q.centre.y
    : p?.shape !== 'arc' && q?.shape !== 'arc'

/** The two ends of a run, each on the circle of the arc that begins or ends there, and which way an arc bends. */
function runEnds<S extends Space, T extends Curved<S>>({ ring, tags }: Tagged<S, T>, i: number, length: number) {
  const count = ring.length
  const at = (k: number) => ring[((k % count) + count) % count]!
  const curveOf = (k: number) => tags[((k % count) + count) % count]!.curve
  const cornerOn = (k: number): Point<S> => {
    const [before, after] = [curveOf(k - 1), curveOf(k)]
    if (before === null && after?.shape === 'arc') return onCircle(at(k - 1), at(k), after)
    if (after === null && before?.shape === 'arc') return onCircle(at(k + 1), at(k), before)
    return at(k)
  }
  const curve = curveOf(i)
  const clockwise =
    curve?.shape === 'arc' ? cross(subtract(at(i), curve.centre), subtract(at(i + 1), curve.centre)) > 0 : true
  return { from: cornerOn(i), to: cornerOn(i + length), clockwise }
}

/** Where the line from one point to a corner near the circle meets it, nearest to the corner; the corner where it runs past. */
function onCircle<S extends Space>(from: Point<S>, corner: Point<S>, { centre, radius }: ArcCurve<S>): Point<S> {
  const length = distance(from, corner)
  if (length === 0) return corner
  const along = scale(subtract(corner, from), 1 / length)
  const gap = subtract(corner, centre)
  const middle = -dot(gap, along)
  const square = radius * radius - cross(along, gap) ** 2
  if (square < 0) return corner
  const half = Math.sqrt(square)
  const step = Math.abs(middle - half) < Math.abs(middle + half) ? middle - half : middle + half
  // where the line only grazes the circle the meeting lies far off
  return Math.abs(step) > 1 ? corner : add(corner, scale(along, step))
}

/** Points along an arc, its end left out. */
function arcBetween<S extends Space>(
  from: Point<S>,
  to: Point<S>,
  { centre, radius }: ArcCurve<S>,
  clockwise: boolean,
): readonly Point<S>[] {
  const [start, end] = [from, to].map((p) => Math.atan2(p.y - centre.y, p.x - centre.x)) as [number, number]
  const whole = 2 * Math.PI
  const sweep = clockwise ? (end - start + 2 * whole) % whole : -((start - end + 2 * whole) % whole)
  const widest = Math.sqrt((4.8 * CHORD_ERROR) / radius)
  const steps = Math.max(1, Math.ceil(Math.abs(sweep) / widest))
  const each = sweep / steps
  const inner = innerRadius(radius, steps, Math.abs(each))
  return Array.from({ length: steps }, (_, k) => {
    const angle = start + each * k
    return k === 0 ? from : point<S>(centre.x + inner * Math.cos(angle), centre.y + inner * Math.sin(angle))
  })
}

/** How far out the points between the two ends lie, so that the chords have the area of the arc. */
function innerRadius(radius: number, steps: number, each: number): number {
  if (steps < 2) return radius
  const sine = Math.sin(each)
  const wanted = (radius * radius * steps * each) / sine
  const free = steps - 2
  return free === 0 ? wanted / (2 * radius) : (Math.sqrt(radius * radius + free * wanted) - radius) / free
}
