import { fill, line } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { between, distance, point, type Point } from '../geometry/point'
import type { Outline } from '../geometry/panel-outline'
import type { JudgedFace } from './judged-face'

/** Strips across a seam: one at each end and the rest no farther apart than this; how long each is. Common practice. */
export const STRIP_EVERY = 150
export const STRIP_LONG = 80

/** Kept between the first strip and the end of the seam. */
const FROM_END = 20

/** Round a centre the strips begin farther out, and one patch lies over all points. */
const FROM_CENTRE = 70

/** Where along a seam of that length the strips lie, mm from its beginning; `round`: it begins at a centre. */
export function stripPlaces(length: number, round: boolean): readonly number[] {
  const from = round ? FROM_CENTRE : FROM_END
  const room = length - from - FROM_END
  if (room <= 10) return [length / 2]
  const count = Math.ceil(room / STRIP_EVERY) + 1
  return Array.from({ length: count }, (_, i) => from + (i * room) / (count - 1))
}

const PAPER = '#d9d9d9'

/** What is taped: a seam, or a string along one edge of the field. */
export interface Taped {
  readonly line: readonly Point<'panel'>[]
  readonly length: number
  readonly round: boolean
}

/** The tape of the seams and the string on a view: across each, and along it where `along` says so. Widths in mm on the sheet. */
export function tapeItems(
  { seams, border }: Pick<JudgedFace, 'seams' | 'border'>,
  onSheet: (p: Point<'panel'>) => Point<'sheet'>,
  along: boolean,
): readonly Item[] {
  const taped = [
    ...seams.map(({ line: on, length, round }): Taped => ({ line: on, length, round })),
    ...(border?.string ? stringRuns(border.string.outside) : []),
  ]
  return taped.flatMap(({ line: on, length, round }) => {
    const points = on.map(onSheet)
    const scale = distance(points[0]!, points[1]!) / distance(on[0]!, on[1]!)
    const strips = stripPlaces(length, round).flatMap((from) => {
      const { a, b, at } = placeOn(points, from * scale)
      return across(a, b, at, STRIP_LONG * scale)
    })
    return along ? [...points.slice(1).flatMap((b, i) => band(points[i]!, b, 2.6)), ...strips] : strips
  })
}

/** A string from corner to corner; all round where there are none. */
export function stringRuns({ ring, edges }: Outline<'panel'>): readonly Taped[] {
  const count = ring.length
  const begins = ring.flatMap((_, i) => (edges[i]!.source === edges[(i + count - 1) % count]!.source ? [] : [i]))
  const ends = begins.length > 0 ? begins : [0]
  return ends.map((from, k) => {
    const to = ends[k + 1] ?? ends[0]! + count
    const line = Array.from({ length: to - from + 1 }, (_, i) => ring[(from + i) % count]!)
    return { line, length: line.slice(1).reduce((sum, p, i) => sum + distance(line[i]!, p), 0), round: false }
  })
}

/** The place so far along a line, and the straight bit of it on which it lies. */
function placeOn(points: readonly Point<'sheet'>[], far: number) {
  let left = far
  for (let i = 1; ; i++) {
    const [a, b] = [points[i - 1]!, points[i]!]
    const length = distance(a, b)
    if (left <= length || i === points.length - 1) return { a, b, at: between(a, b, left / length) }
    left -= length
  }
}

function across(a: Point<'sheet'>, b: Point<'sheet'>, at: Point<'sheet'>, long: number): readonly Item[] {
  const length = distance(a, b)
  const [x, y] = [((b.y - a.y) / length) * (long / 2), ((a.x - b.x) / length) * (long / 2)]
  return band(point(at.x - x, at.y - y), point(at.x + x, at.y + y), 2.2)
}

function band(a: Point<'sheet'>, b: Point<'sheet'>, width: number): readonly Item[] {
  const length = distance(a, b)
  const [x, y] = [((b.y - a.y) / length) * (width / 2), ((a.x - b.x) / length) * (width / 2)]
  const ring = [
    point<'sheet'>(a.x + x, a.y + y),
    point<'sheet'>(b.x + x, b.y + y),
    point<'sheet'>(b.x - x, b.y - y),
    point<'sheet'>(a.x - x, a.y - y),
  ]
  return [fill('wood', ring, PAPER), line('wood', [...ring, ring[0]!], { pen: 0.1 })]
}
