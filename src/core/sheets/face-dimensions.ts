import { line, text } from '../drawing/build'
import { dimensionLine } from '../drawing/dimension'
import type { Item } from '../drawing/drawing'
import { CAP_HEIGHT, textWidth } from '../drawing/text-width'
import { point, type Point } from '../geometry/point'
import { transformPoint, type Transform } from '../geometry/transform'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { JudgedFace } from './judged-face'

/** How far from the taped sheet the dimensions lie, in ems: the finished size outside the seam letters. */
const OVERALL = 4
const CHAIN = 2.2
const BEYOND_LETTERS = 4.3

type ToSheet = (x: number, y: number) => Point<'sheet'>

/** Finished width and length outside the seam letters, and the finished widths of the columns on the other side. */
export function faceDimensions(
  face: JudgedFace,
  panelToSheet: Transform<'panel', 'sheet'>,
  unit: LengthUnit,
  size: number,
): readonly Item[] {
  const at: ToSheet = (x, y) => transformPoint(panelToSheet, point<'panel'>(x, y))
  const { finished, sheet } = face.sizes
  return [
    ...dimensionLine({
      size,
      from: at(finished.min.x, sheet.min.y),
      to: at(finished.max.x, sheet.min.y),
      words: showLength(face.part.width, unit, 'seam'),
      offset: -size * OVERALL,
    }),
    ...dimensionLine({
      size,
      from: at(sheet.min.x, finished.min.y),
      to: at(sheet.min.x, finished.max.y),
      words: showLength(face.part.length, unit, 'seam'),
      offset: size * OVERALL,
    }),
    ...columnChain(face, at, unit, size * 0.85),
  ]
}

/** The columns from border to border along one line; upright numbers where they are too narrow for level ones. */
function columnChain(face: JudgedFace, at: ToSheet, unit: LengthUnit, size: number): readonly Item[] {
  const { sizes } = face
  const columns = columnsAcross(face)
  if (columns.length < 2) return []
  const [start, end] = [at(columns[0]!.from, sizes.sheet.max.y), at(columns.at(-1)!.to, sizes.sheet.max.y)]
  const length = Math.hypot(end.x - start.x, end.y - start.y)
  const along = point<'sheet'>((end.x - start.x) / length, (end.y - start.y) / length)
  // away from the sheet: to the right of one who walks along the lower edge from left to right
  const away = point<'sheet'>(-along.y, along.x)
  const beside = (p: Point<'sheet'>, by: number) => point<'sheet'>(p.x + away.x * by, p.y + away.y * by)
  const drawn = columns.map(({ from, to }) => {
    const [a, b] = [at(from, sizes.sheet.max.y), at(to, sizes.sheet.max.y)]
    return { a, b, width: Math.hypot(b.x - a.x, b.y - a.y), words: bareLength(to - from, unit, 'seam') }
  })
  const isTight = drawn.some(({ width, words }) => textWidth(words, size) + size > width)
  // letters of a border's seams stand between
  const depth = size * (face.border ? BEYOND_LETTERS : CHAIN)
  return [
    line('text', [beside(start, depth), beside(end, depth)]),
    ...[drawn[0]!.a, ...drawn.map(({ b }) => b)].map((p) =>
      line('text', [beside(p, 1), beside(p, depth + size * 0.5)]),
    ),
    ...drawn.flatMap(({ a, b, width, words }) => {
      const middle = beside(point((a.x + b.x) / 2, (a.y + b.y) / 2), depth)
      return columnNumber(words, middle, along, away, { isTight, size, width })
    }),
  ]
}

/** Those of the pattern; a border of a straight panel, its string included, is one more on each side. */
function columnsAcross({ plan, part, sizes: { finished } }: JudgedFace) {
  const columns = (plan.columns ?? []).filter(({ from, to }) => to > from)
  if (!part.border || part.outline.shape !== 'rectangle' || columns.length === 0) return columns
  const [from, to] = [columns[0]!.from, columns.at(-1)!.to]
  return [{ from: finished.min.x, to: from }, ...columns, { from: to, to: finished.max.x }]
}

/** Under the chain: along it, or where it is tight square to it, and not at all in a sliver. */
function columnNumber(
  words: string,
  middle: Point<'sheet'>,
  along: Point<'sheet'>,
  away: Point<'sheet'>,
  { isTight, size, width }: { readonly isTight: boolean; readonly size: number; readonly width: number },
): readonly Item[] {
  const lyingAlong = Math.abs(along.x) > Math.abs(along.y)
  const [level, upright] = [0, -Math.PI / 2]
  const isLevel = lyingAlong !== isTight
  if (isTight && width < size) return []
  const cap = size * CAP_HEIGHT
  const reach = isTight ? size * 0.5 + textWidth(words, size) / 2 : size * 0.5 + cap / 2
  const centre = point<'sheet'>(middle.x + away.x * reach, middle.y + away.y * reach)
  const baseline = isLevel ? point<'sheet'>(centre.x, centre.y + cap / 2) : point<'sheet'>(centre.x + cap / 2, centre.y)
  return [text(baseline, words, { size, anchor: 'middle', angle: isLevel ? level : upright })]
}
