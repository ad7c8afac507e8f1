/**
 * Closed shapes in a DXF file: closed polylines with their bulges, circles, ellipses, splines, and lines and arcs that run
 * end to end. Input: the text. Output: shapes in mm, y turned down. Tolerance: ends nearer than `JOINS` are one; ellipses
 * and splines run beside their polygons by the chord error at most. Failure: throws what the reader throws.
 */
import DxfParser from 'dxf-parser'
import { CHORD_ERROR } from '../../core/geometry/tolerance'
import type { Corner } from '../../core/geometry/panel-outline'
import { distance } from '../../core/geometry/point'
import { corner, stepsFor, type FoundShapes, type Shape } from './shape'

const JOINS = 0.05

const UNITS: Readonly<Record<number, readonly [number, string]>> = {
  1: [25.4, 'inches, as the file states'],
  2: [304.8, 'feet, as the file states'],
  4: [1, 'millimetres, as the file states'],
  5: [10, 'centimetres, as the file states'],
  6: [1000, 'metres, as the file states'],
}

interface At {
  readonly x: number
  readonly y: number
}

/** What is used of an entity; which fields are there hangs on its type. */
interface Entity {
  readonly type: string
  readonly shape?: boolean
  readonly closed?: boolean
  readonly vertices?: readonly (At & { readonly bulge?: number })[]
  readonly center?: At
  readonly radius?: number
  readonly startAngle?: number
  readonly endAngle?: number
  readonly majorAxisEndPoint?: At
  readonly axisRatio?: number
  readonly controlPoints?: readonly At[]
  readonly knotValues?: readonly number[]
  readonly degreeOfSplineCurve?: number
}

/** A line from its first corner to its last, the last one's bulge without a meaning. */
type Run = readonly Corner[]

export function shapesInDxf(text: string): FoundShapes {
  const file = new DxfParser().parseSync(text)
  if (!file) throw new Error('nothing in it')
  const [scale, unit] = UNITS[Number(file.header['$INSUNITS'] ?? 0)] ?? [
    1,
    'millimetres, since the file states no unit',
  ]
  const closed: Shape[] = []
  const runs: Run[] = []
  for (const entity of file.entities as unknown as readonly Entity[]) {
    const drawn = drawnBy(entity, scale)
    if (drawn?.closed) closed.push(drawn.corners)
    else if (drawn) runs.push(drawn.corners)
  }
  const joined = joinRuns(runs)
  return { shapes: [...closed, ...joined.closed], unit, open: joined.open }
}

interface Drawn {
  readonly corners: readonly Corner[]
  readonly closed: boolean
}

function drawnBy(entity: Entity, scale: number): Drawn | null {
  const at = ({ x, y }: At, bulge = 0) => corner(x * scale, -y * scale, -bulge)
  const { vertices = [], center, radius = 0 } = entity
  switch (entity.type) {
    case 'LINE':
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return { corners: vertices.map((p) => at(p, p.bulge)), closed: entity.shape === true }
    case 'CIRCLE':
      if (!center) return null
      return {
        corners: [at({ x: center.x - radius, y: center.y }, 1), at({ x: center.x + radius, y: center.y }, 1)],
        closed: true,
      }
    case 'ARC': {
      if (!center) return null
      const [from, to] = [entity.startAngle ?? 0, entity.endAngle ?? 0]
      const sweep = (to - from + 4 * Math.PI) % (2 * Math.PI)
      const on = (angle: number) => ({ x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) })
      return { corners: [at(on(from), Math.tan(sweep / 4)), at(on(to))], closed: false }
    }
    case 'ELLIPSE':
      return ellipse(entity, scale)
    case 'SPLINE':
      return spline(entity, scale)
    default:
      return null
  }
}

function ellipse(
  { center, majorAxisEndPoint: major, axisRatio = 1, startAngle = 0, endAngle = 0 }: Entity,
  scale: number,
) {
  if (!center || !major) return null
  const whole = 2 * Math.PI
  const turned = (endAngle - startAngle + 2 * whole) % whole
  const sweep = turned < 1e-6 ? whole : turned
  const steps = Math.max(3, stepsFor(Math.hypot(major.x, major.y) * scale, sweep, CHORD_ERROR))
  const isWhole = sweep > whole - 1e-6
  const corners = Array.from({ length: isWhole ? steps : steps + 1 }, (_, i) => {
    const angle = startAngle + (sweep * i) / steps
    const [cos, sin] = [Math.cos(angle), Math.sin(angle) * axisRatio]
    return corner(
      (center.x + major.x * cos - major.y * sin) * scale,
      -(center.y + major.y * cos + major.x * sin) * scale,
    )
  })
  return { corners, closed: isWhole }
}

const SPLINE_STEPS = 64

/** By de Boor's rule, between every two knots (L. Piegl, W. Tiller, "The NURBS Book", algorithm A3.1; no weights). */
function spline(
  { controlPoints = [], knotValues: knots = [], degreeOfSplineCurve: degree = 3, closed }: Entity,
  scale: number,
) {
  if (controlPoints.length <= degree || knots.length < controlPoints.length + degree + 1) return null
  const corners: Corner[] = []
  for (let span = degree; span < controlPoints.length; span++) {
    const [from, to] = [knots[span]!, knots[span + 1]!]
    if (to <= from) continue
    for (let i = 0; i < SPLINE_STEPS; i++)
      corners.push(onSpline(controlPoints, knots, degree, span, from + ((to - from) * i) / SPLINE_STEPS, scale))
  }
  const last = controlPoints.length - 1
  corners.push(onSpline(controlPoints, knots, degree, last, knots[last + 1]!, scale))
  const [first, end] = [corners[0]!, corners[corners.length - 1]!]
  const meets = distance(first.at, end.at) < JOINS
  return meets || closed
    ? { corners: meets ? corners.slice(0, -1) : corners, closed: true }
    : { corners, closed: false }
}

function onSpline(
  points: readonly At[],
  knots: readonly number[],
  degree: number,
  span: number,
  at: number,
  scale: number,
): Corner {
  const held = Array.from({ length: degree + 1 }, (_, j) => ({ ...points[span - degree + j]! }))
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const low = knots[span - degree + j]!
      const share = (at - low) / (knots[j + 1 + span - r]! - low)
      held[j]!.x = held[j - 1]!.x * (1 - share) + held[j]!.x * share
      held[j]!.y = held[j - 1]!.y * (1 - share) + held[j]!.y * share
    }
  return corner(held[degree]!.x * scale, -held[degree]!.y * scale)
}

const reversed = (run: Run): Run =>
  run.map((_, i) => {
    const j = run.length - 1 - i
    return { at: run[j]!.at, bulge: j > 0 ? -run[j - 1]!.bulge : 0 }
  })

/** Lines and arcs put end to end, whichever way each was drawn. */
function joinRuns(runs: readonly Run[]): { readonly closed: readonly Shape[]; readonly open: number } {
  const left = runs.filter((run) => run.length > 1)
  const closed: Shape[] = []
  let open = 0
  while (left.length > 0) {
    let run = left.pop()!
    for (;;) {
      const end = run[run.length - 1]!.at
      if (run.length > 2 && distance(end, run[0]!.at) < JOINS) break
      const nth = left.findIndex((other) =>
        [other[0]!, other[other.length - 1]!].some(({ at }) => distance(at, end) < JOINS),
      )
      if (nth < 0) break
      const [next] = left.splice(nth, 1) as [Run]
      const on = distance(next[0]!.at, end) < JOINS ? next : reversed(next)
      run = [...run.slice(0, -1), ...on]
    }
    const isClosed = run.length > 2 && distance(run[run.length - 1]!.at, run[0]!.at) < JOINS
    if (isClosed) closed.push(run.slice(0, -1))
    else open++
  }
  return { closed, open }
}
