import { frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item, type Text } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import type { Piece } from '../fit/lay-face'
import { point } from '../geometry/point'
import type { Flitch } from '../leaves/flitch'
import { leafPlace, type EndPlace, type LeafPlace } from '../templates/leaf-place'
import type { LengthUnit } from '../units/unit'
import { placeFigure } from './figures'
import { turnInWords } from './leaf-words'
import { PAGE_ROOM } from './page-head'

export const ROW = 12

const FIGURES = 5.4

interface Column {
  /** Share of the width between the margins. */
  readonly at: number
  readonly head: readonly string[]
  readonly anchor: Text['anchor']
}

const LEAF: Column = { at: 0, head: ['', 'Leaf'], anchor: 'start' }
const PIECE: Column = { at: 0.09, head: ['Piece,', 'how laid'], anchor: 'start' }
const ALONG: Column = { at: 0.245, head: ['Along, from the', 'numbered end'], anchor: 'start' }
const NEAR: Column = { at: 0.49, head: ['Near end: from the', 'left, right wild edge'], anchor: 'start' }
const FAR: Column = { at: 0.675, head: ['Far end: from the', 'left, right wild edge'], anchor: 'start' }
const BOXES: readonly Column[] = [
  { at: 0.865, head: ['', 'cut'], anchor: 'middle' },
  { at: 0.925, head: ['joint-', 'ed'], anchor: 'middle' },
  { at: 0.98, head: ['', 'laid'], anchor: 'middle' },
]

export const COLUMNS: readonly Column[] = [LEAF, PIECE, ALONG, NEAR, FAR, ...BOXES]

export const columnAt = (page: PageSize, { at }: Column): number => PAGE_ROOM + at * (page.width - 2 * PAGE_ROOM)

/** One leaf: its number, how the piece is laid afterwards, where it is cut, and boxes to tick. */
export function placeRow(flitch: Flitch, piece: Piece, unit: LengthUnit, page: PageSize, y: number): readonly Item[] {
  const put = (column: Column, below: number, words: string, size: number, weight: Text['weight'] = 'regular') =>
    text(point(columnAt(page, column), y + below), words, { size, weight })
  const items = [
    put(PIECE, 4, piece.cell.id, 4.6, 'bold'),
    put(PIECE, 8.6, turnInWords(piece), SMALLEST_TEXT),
    ...BOXES.map((column) => tickBox(columnAt(page, column), y + 5)),
    line('mark', [point(PAGE_ROOM, y + ROW - 2), point(page.width - PAGE_ROOM, y + ROW - 2)], { pen: 0.1 }),
  ]
  if (!piece.leaf) return [put(LEAF, 7, '–', 7.5, 'bold'), put(ALONG, 7, 'no leaf is left', FIGURES), ...items]
  const place = leafPlace(flitch, piece)
  return [
    put(LEAF, 7.4, String(piece.leaf.number), 7.5, 'bold'),
    ...alongWords(place, unit).map((words, i, all) =>
      put(ALONG, all.length === 1 ? 7 : 3.8 + i * 4.8, words, all.length === 1 ? FIGURES : 4.2),
    ),
    put(NEAR, 7, acrossWords(place.near, unit), FIGURES),
    put(FAR, 7, acrossWords(place.far, unit), FIGURES),
    ...items,
  ]
}

/** From the near to the far end; on both sides where a slanted end of the leaf makes them differ. */
function alongWords({ near, far }: LeafPlace, unit: LengthUnit): readonly string[] {
  const onSide = (side: 'left' | 'right') =>
    `${placeFigure(near[side].along, unit)} to ${placeFigure(far[side].along, unit)}`
  const [left, right] = [onSide('left'), onSide('right')]
  return left === right ? [left] : [`left ${left}`, `right ${right}`]
}

const acrossWords = ({ left, right }: EndPlace, unit: LengthUnit): string =>
  `${placeFigure(left.across, unit)}, ${placeFigure(right.across, unit)}`

const tickBox = (x: number, y: number): Item =>
  frame('mark', { min: point(x - 2.3, y - 2.3), max: point(x + 2.3, y + 2.3) }, { pen: 0.25 })
