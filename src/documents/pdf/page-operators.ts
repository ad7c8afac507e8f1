import { boxRing, type Box } from '../../core/geometry/box'
import type { AffineMap, Arc, Fill, Line } from '../../core/drawing/drawing'
import type { Point } from '../../core/geometry/point'
import { numeral } from '../numerals'

/**
 * Drawings as operators of a PDF page (ISO 32000-1, 8.5). `toPoints` takes the sheet, mm and y down, to the
 * page's points, y up; it may stretch the axes differently and must not turn them. Coordinates are written to
 * 0.0001 point, 0.00004 mm.
 */
export type ToPoints = AffineMap

/** How far a Bézier curve may run beside its circle, mm. */
const ARC_ERROR = 0.001

const n = (value: number): string => numeral(value, 4)

/** Paths and strokes of one page. It knows what pen the page has at hand, and asks for another only when needed. */
export class Operators {
  private pen = ''
  private readonly out: string[] = []

  constructor(private readonly toPoints: ToPoints) {}

  /** What has been drawn since the last call. */
  take(): string {
    return this.out.splice(0).join('\n')
  }

  /** Goes on with nothing but the box to be seen, until `endClip`. */
  beginClip(box: Box<'sheet'>): void {
    this.out.push('q', this.path(boxRing(box)), 'h W n')
  }

  endClip(): void {
    this.out.push('Q')
    this.pen = ''
  }

  line(line: Line): void {
    this.usePen(line.pen, line.colour, line.dash, line.dashFrom ?? 0)
    this.out.push(this.path(line.points), line.closed ? 's' : 'S')
  }

  fill({ points, colour }: Fill): void {
    this.out.push(`${rgb(colour)} rg`, this.path(points), 'f')
  }

  arc({ centre, radius, from, to, pen, colour }: Arc): void {
    this.usePen(pen, colour, null, 0)
    const pieces = arcPieces(radius, to - from)
    const step = (to - from) / pieces
    // length of the control arms of a cubic that follows the circle over one step
    const arm = (radius * 4 * Math.tan(step / 4)) / 3
    const onCircle = (angle: number, forward: number): Point<'sheet'> => ({
      x: centre.x + radius * Math.cos(angle) - forward * Math.sin(angle),
      y: centre.y + radius * Math.sin(angle) + forward * Math.cos(angle),
    })
    this.out.push(`${this.at(onCircle(from, 0))} m`)
    for (let i = 0; i < pieces; i++) {
      const [a, b] = [from + i * step, from + (i + 1) * step]
      this.out.push(`${this.at(onCircle(a, arm))} ${this.at(onCircle(b, -arm))} ${this.at(onCircle(b, 0))} c`)
    }
    this.out.push(to - from >= 2 * Math.PI - 1e-9 ? 's' : 'S')
  }

  /** Opens a picture: until `endPicture` the unit square is where its map puts it, less what the clip leaves out. */
  beginPicture(unitToSheet: AffineMap, clip: readonly Point<'sheet'>[] | null): void {
    this.out.push('q')
    if (clip) this.out.push(this.path(clip), 'h W n')
    const { a, b, c, d, e, f } = composed(this.toPoints, unitToSheet)
    this.out.push(`${[a, b, c, d, e, f].map(n).join(' ')} cm`)
  }

  endPicture(): void {
    this.out.push('Q')
    this.pen = ''
  }

  private path(points: readonly Point<'sheet'>[]): string {
    return points.map((p, i) => `${this.at(p)} ${i === 0 ? 'm' : 'l'}`).join('\n')
  }

  private at(p: Point<'sheet'>): string {
    const { a, b, c, d, e, f } = this.toPoints
    return `${n(a * p.x + c * p.y + e)} ${n(b * p.x + d * p.y + f)}`
  }

  private usePen(width: number, colour: string | null, dash: readonly number[] | null, dashFrom: number): void {
    const point = 72 / 25.4
    const dashes = (dash ?? []).map((length) => n(length * point)).join(' ')
    const pen = `${n(width * point)} w ${rgb(colour)} RG [${dashes}] ${n(dashFrom * point)} d`
    if (pen !== this.pen) this.out.push(pen)
    this.pen = pen
  }
}

/** Cubics that a stretch of a circle needs to stay within the error: theirs falls with the sixth power of the step. */
function arcPieces(radius: number, sweep: number): number {
  // a cubic over 90° is 2.73e-4 of the radius off its circle
  const quarters = Math.abs(sweep) / (Math.PI / 2)
  return Math.max(1, Math.ceil(quarters * Math.max(1, (radius * 2.73e-4) / ARC_ERROR) ** (1 / 6)))
}

/** `#rrggbb` as three shares of 1; black if null. */
function rgb(colour: string | null): string {
  const value = Number.parseInt((colour ?? '#000000').slice(1), 16)
  return [value >> 16, (value >> 8) & 255, value & 255].map((part) => numeral(part / 255, 3)).join(' ')
}

/** First `inner`, then `outer`. */
export const composed = (outer: AffineMap, inner: AffineMap): AffineMap => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
})
