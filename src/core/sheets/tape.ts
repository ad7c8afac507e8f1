import { fill, line } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { between, distance, point, type Point } from '../geometry/point'
import type { Joint } from '../patterns/pattern'
import type { SeamReport } from '../seams/seam-report'

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

export const isRound = (joint: Joint): boolean => joint === 'radial' || joint === 'diameter'

const PAPER = '#d9d9d9'

/** The tape of the seams on a view: across each, and along it where `along` says so. Widths in mm on the sheet. */
export function tapeItems(
  seams: readonly SeamReport[],
  onSheet: (p: Point<'panel'>) => Point<'sheet'>,
  along: boolean,
): readonly Item[] {
  return seams.flatMap(({ edge, kind }) => {
    const [a, b] = [onSheet(edge.a), onSheet(edge.b)]
    const scale = distance(a, b) / distance(edge.a, edge.b)
    const strips = stripPlaces(distance(edge.a, edge.b), isRound(kind)).flatMap((from) =>
      across(a, b, (from * scale) / distance(a, b), STRIP_LONG * scale),
    )
    return along ? [...band(a, b, 2.6), ...strips] : strips
  })
}

function across(a: Point<'sheet'>, b: Point<'sheet'>, share: number, long: number): readonly Item[] {
  const at = between(a, b, share)
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
