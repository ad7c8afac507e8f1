import { arrow, circle, closedLine, crossMark, fill, line, type Stroke } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { Piece } from '../fit/lay-face'
import { boxAround, boxHeight, boxWidth, type Box } from '../geometry/box'
import { add, between, point, type Point } from '../geometry/point'
import { originOnLeaf } from '../fit/placement'
import type { ChalkMark } from '../templates/chalk-mark'
import { pieceOutline } from '../templates/leaf-place'
import { numberTag } from './number-tag'

/**
 * A leaf with the cuts of its piece, numbered end up, numbered side seen; drawn out in width so that it can be read, and
 * therefore not to scale. Cuts carry the tags of `cutFigures`.
 */
export function leafPicture(
  piece: Piece,
  { min, max }: Box<'sheet'>,
  about: { readonly straight: boolean; readonly pins: readonly Point<'leaf'>[]; readonly chalk: ChalkMark | null },
): readonly Item[] {
  if (!piece.leaf) return []
  const outline = pieceOutline(piece)
  const box = boxAround([...outline, ...piece.roughOnLeaf])
  const [across, along] = [(max.x - min.x) / boxWidth(box), (max.y - min.y) / boxHeight(box)]
  const at = (p: Point<'leaf'>): Point<'sheet'> =>
    point(min.x + (p.x - box.min.x) * across, min.y + (p.y - box.min.y) * along)
  const rough = boxAround(piece.roughOnLeaf.map(at))
  return [
    closedLine('wood', outline.map(at), { pen: 0.3 }),
    fill('wood', piece.roughOnLeaf.map(at), '#eeeeee'),
    closedLine('cut', piece.roughOnLeaf.map(at), { pen: 0.5 }),
    ...numberedEnd(rough),
    ...(about.straight ? straightCuts(rough, { min, max }) : freeCuts(rough, { min, max })),
    ...about.pins.flatMap((pin) => pinMark(at(pin))),
    ...(about.chalk ? chalkSpot(piece, about.chalk, at, rough) : []),
  ]
}

/** How far a crosscut runs past the leaf, and the radius of a tag. */
const PAST = 5
const TAG = 2.6

function straightCuts(rough: Box<'sheet'>, leaf: Box<'sheet'>): readonly Item[] {
  const quarter = rough.min.y + (rough.max.y - rough.min.y) * 0.25
  const [left, right] = spread(rough.min.x, rough.max.x)
  return [
    ...endLines(rough, leaf, 'cut', { dash: [3, 1.5], pen: 0.3 }),
    ...tagAt(point(left, quarter), '3'),
    ...tagAt(point(right, quarter), '4'),
  ]
}

const freeCuts = (rough: Box<'sheet'>, leaf: Box<'sheet'>): readonly Item[] =>
  endLines(rough, leaf, 'mark', { dash: [1, 1.5], pen: 0.2 })

/** Lines through both ends of a piece, from beyond the leaf to their tags. */
function endLines(
  rough: Box<'sheet'>,
  { min, max }: Box<'sheet'>,
  layer: 'cut' | 'mark',
  stroke: Stroke,
): readonly Item[] {
  const tags = spread(rough.min.y, rough.max.y)
  return [rough.min.y, rough.max.y].flatMap((y, i) => {
    const end = point<'sheet'>(max.x + PAST, tags[i]!)
    // of a short piece the tags stand apart, and the lines bend to them
    const bend = end.y === y ? [] : [point<'sheet'>(max.x + PAST - 2, y)]
    return [
      line(layer, [point(min.x - PAST, y), ...bend, end], stroke),
      ...tagAt(point(end.x + TAG, end.y), String(i + 1)),
    ]
  })
}

/** Where two tags stand that belong to two places in one line: there, or as far apart as tags must be. */
function spread(from: number, to: number): readonly [number, number] {
  const least = 2 * TAG + 0.5
  if (to - from >= least) return [from, to]
  const middle = (from + to) / 2
  return [middle - least / 2, middle + least / 2]
}

const tagAt = (at: Point<'sheet'>, words: string): readonly Item[] =>
  numberTag(at, words, { radius: TAG, size: 4, pen: 0.3 })

const numberedEnd = ({ min, max }: Box<'sheet'>): readonly Item[] => {
  const [x, y] = [(min.x + max.x) / 2, (min.y + max.y) / 2]
  return arrow('mark', point(x, y + 9), point(x, y - 9), { head: 5, pen: 0.6 })
}

const pinMark = (at: Point<'sheet'>): readonly Item[] => [
  circle('mark', at, 1.5, { pen: 0.4 }),
  ...crossMark('mark', at, 5, { pen: 0.25 }),
]

/** A wavy stroke of chalk where the mark goes, at the inside of the edge. */
function chalkSpot(
  { cell, place }: Piece,
  { edge, at: side }: ChalkMark,
  at: (p: Point<'leaf'>) => Point<'sheet'>,
  rough: Box<'sheet'>,
): readonly Item[] {
  const origin = originOnLeaf(place)
  const onSheet = (p: Point<'window'>) => at(add(point<'leaf'>(p.x, p.y), origin))
  const [from, to] = [onSheet(between(edge.a, edge.b, 0.3)), onSheet(between(edge.a, edge.b, 0.7))]
  const isEnd = side === 'numbered end' || side === 'far end'
  const inward = isEnd
    ? point<'sheet'>(0, side === 'numbered end' ? 2 : -2)
    : point<'sheet'>(side === 'left edge' ? 2 : -2, 0)
  const wave = Array.from({ length: 13 }, (_, i) => {
    const p = between(from, to, i / 12)
    const out = i % 2 === 0 ? 0.6 : -0.6
    return point<'sheet'>(p.x + inward.x + (isEnd ? 0 : out), p.y + inward.y + (isEnd ? out : 0))
  })
  return cell.face.ring.length > 0 && boxWidth(rough) > 6 ? [line('mark', wave, { pen: 0.6 })] : []
}
