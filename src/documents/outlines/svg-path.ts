/**
 * The closed shapes of an SVG path.
 *
 * Input: the `d` of a path, and where it is moved. Output: a shape for each part that is closed, by `z` or by coming back
 * to its start; the others are counted. Arcs of circles stay arcs where the path is only moved, turned, mirrored or made
 * larger; other curves become chords within the chord error. Source: the path grammar and the arc formulas of SVG 1.1,
 * F.6. Failure: what can't be read ends the path there.
 */
import type { Corner } from '../../core/geometry/panel-outline'
import { distance, point, type Point } from '../../core/geometry/point'
import { CHORD_ERROR } from '../../core/geometry/tolerance'
import { determinant, transformPoint, type Transform } from '../../core/geometry/transform'
import { stepsFor, type Shape } from './shape'

type Map = Transform<'panel', 'panel'>
type Spot = Point<'panel'>

const LENGTHS: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 }
const CLOSES = 0.01

export function pathShapes(d: string, map: Map): { readonly closed: readonly Shape[]; readonly open: number } {
  const pen = new Pen(map)
  for (const [, command, given] of d.matchAll(/([mlhvcsqtaz])([^mlhvcsqtaz]*)/gi)) {
    const kind = command!.toLowerCase()
    const values = numbersIn(given!, kind === 'a')
    const each = LENGTHS[kind]!
    if (each === 0) pen.close()
    for (let i = 0; each > 0 && i + each <= values.length; i += each) {
      // further pairs behind a move are lines
      const way = kind === 'm' && i > 0 ? 'l' : kind
      pen.draw(way, values.slice(i, i + each), command === kind)
    }
  }
  return pen.done()
}

/** Flags of an arc are single digits and may stand without a gap. */
function numbersIn(text: string, isArc: boolean): number[] {
  const values: number[] = []
  let rest = text
  for (;;) {
    const isFlag = isArc && (values.length % 7 === 3 || values.length % 7 === 4)
    const found = (isFlag ? /^[\s,]*([01])/ : /^[\s,]*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/).exec(rest)
    if (!found) return values
    values.push(Number(found[1]))
    rest = rest.slice(found[0].length)
  }
}

class Pen {
  private readonly closed: Shape[] = []
  private open = 0
  private corners: Corner[] = []
  private at: Spot = point(0, 0)
  private start: Spot = point(0, 0)
  private control: { readonly kind: string; readonly at: Spot } | null = null
  private readonly scale: number
  private readonly isSimilar: boolean

  constructor(private readonly map: Map) {
    const { a, b, c, d } = map
    this.scale = Math.max(Math.hypot(a, b), Math.hypot(c, d))
    const even = Math.abs(Math.hypot(a, b) - Math.hypot(c, d)) < 1e-9 * this.scale
    this.isSimilar = even && Math.abs(a * c + b * d) < 1e-9 * this.scale ** 2
  }

  draw(kind: string, values: readonly number[], relative: boolean): void {
    const from = this.at
    const spot = (i: number): Spot =>
      relative ? point(from.x + values[i]!, from.y + values[i + 1]!) : point(values[i]!, values[i + 1]!)
    const mirrored = (of: string) =>
      this.control?.kind === of ? point<'panel'>(2 * from.x - this.control.at.x, 2 * from.y - this.control.at.y) : from
    if (kind === 'm') {
      this.finish()
      this.at = this.start = spot(0)
    } else if (kind === 'l') this.lineTo(spot(0))
    else if (kind === 'h') this.lineTo(point(relative ? from.x + values[0]! : values[0]!, from.y))
    else if (kind === 'v') this.lineTo(point(from.x, relative ? from.y + values[0]! : values[0]!))
    else if (kind === 'c') this.bezier('c', spot(0), spot(2), spot(4))
    else if (kind === 's') this.bezier('c', mirrored('c'), spot(0), spot(2))
    else if (kind === 'q') this.quadratic(spot(0), spot(2))
    else if (kind === 't') this.quadratic(mirrored('q'), spot(0))
    else if (kind === 'a') this.arcTo(values, spot(5))
    if (!'csqt'.includes(kind)) this.control = null
  }

  close(): void {
    if (this.corners.length > 0) this.lineTo(this.start)
    this.finish()
    this.at = this.start
  }

  done(): { readonly closed: readonly Shape[]; readonly open: number } {
    this.finish()
    return { closed: this.closed, open: this.open }
  }

  private finish(): void {
    const { corners } = this
    this.corners = []
    if (corners.length === 0) return
    const [first, end] = [transformPoint(this.map, this.start), transformPoint(this.map, this.at)]
    if (corners.length > 1 && distance(first, end) < CLOSES) this.closed.push(corners)
    else this.open++
  }

  /** A corner where the pen is, from which the edge runs on with this bulge, to a place. */
  private go(to: Spot, bulge = 0): void {
    const at = transformPoint(this.map, this.at)
    if (distance(at, transformPoint(this.map, to)) > 1e-6)
      this.corners.push({ at, bulge: determinant(this.map) < 0 ? -bulge : bulge })
    this.at = to
  }

  private lineTo(to: Spot): void {
    this.go(to)
  }

  private bezier(kind: string, p: Spot, q: Spot, to: Spot, control: Spot = q): void {
    const from = this.at
    // the chords' error is at most the largest second difference x 3/4 / n² (cubic)
    const bend = Math.max(
      Math.hypot(from.x - 2 * p.x + q.x, from.y - 2 * p.y + q.y),
      Math.hypot(p.x - 2 * q.x + to.x, p.y - 2 * q.y + to.y),
    )
    const steps = Math.max(1, Math.ceil(Math.sqrt((0.75 * bend * this.scale) / CHORD_ERROR)))
    for (let i = 1; i <= steps; i++) {
      const [t, u] = [i / steps, 1 - i / steps]
      const blend = (k: 'x' | 'y') => u ** 3 * from[k] + 3 * u * u * t * p[k] + 3 * u * t * t * q[k] + t ** 3 * to[k]
      this.go(i === steps ? to : point(blend('x'), blend('y')))
    }
    this.control = { kind, at: control }
  }

  private quadratic(control: Spot, to: Spot): void {
    const from = this.at
    const third = (end: Spot) =>
      point<'panel'>(end.x + (2 / 3) * (control.x - end.x), end.y + (2 / 3) * (control.y - end.y))
    this.bezier('q', third(from), third(to), to, control)
  }

  private arcTo([rx = 0, ry = 0, tilt = 0, large, sweep]: readonly number[], to: Spot): void {
    const from = this.at
    if (rx === 0 || ry === 0 || distance(from, to) === 0) return this.lineTo(to)
    const arc = arcOf(from, to, [Math.abs(rx), Math.abs(ry)], (tilt * Math.PI) / 180, large === 1, sweep === 1)
    if (this.isSimilar && Math.abs(arc.rx - arc.ry) < 1e-9 * arc.rx) {
      // in halves, so that no bulge is without limit
      this.go(arc.on(0.5), Math.tan(arc.turn / 8))
      this.go(to, Math.tan(arc.turn / 8))
      return
    }
    const steps = stepsFor(Math.max(arc.rx, arc.ry) * this.scale, arc.turn, CHORD_ERROR)
    for (let i = 1; i <= steps; i++) this.go(i === steps ? to : arc.on(i / steps))
  }
}

/** The ellipse of an arc told by its ends (SVG 1.1, F.6.5 and F.6.6). */
function arcOf(from: Spot, to: Spot, radii: readonly [number, number], tilt: number, large: boolean, sweep: boolean) {
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)]
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2]
  const [x, y] = [cos * hx + sin * hy, cos * hy - sin * hx]
  const grow = Math.max(1, Math.sqrt((x / radii[0]) ** 2 + (y / radii[1]) ** 2))
  const [rx, ry] = [radii[0] * grow, radii[1] * grow]
  const over = (rx * ry) ** 2 / ((rx * y) ** 2 + (ry * x) ** 2) - 1
  const root = Math.sqrt(Math.max(0, over)) * (large === sweep ? -1 : 1)
  const [cx, cy] = [(root * rx * y) / ry, (-root * ry * x) / rx]
  const start = Math.atan2((y - cy) / ry, (x - cx) / rx)
  const end = Math.atan2((-y - cy) / ry, (-x - cx) / rx)
  const whole = 2 * Math.PI
  const turn = sweep ? (end - start + 2 * whole) % whole : -((start - end + 2 * whole) % whole)
  const [mx, my] = [(from.x + to.x) / 2 + cos * cx - sin * cy, (from.y + to.y) / 2 + sin * cx + cos * cy]
  const on = (share: number): Spot => {
    const [px, py] = [rx * Math.cos(start + turn * share), ry * Math.sin(start + turn * share)]
    return point(mx + cos * px - sin * py, my + sin * px + cos * py)
  }
  return { rx, ry, turn, on }
}
