import { frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item, type Text } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textWidth } from '../drawing/text-width'
import type { Piece } from '../fit/lay-face'
import { point } from '../geometry/point'
import { leafPlace, type EndPlace } from '../templates/leaf-place'
import type { LengthUnit } from '../units/unit'
import { checkMark } from './check-mark'
import { placeFigure } from './figures'
import { turnInWords } from './leaf-words'
import { PAGE_ROOM } from './page-head'

export const ROW = 11

/** Figures that stand alone, and those of which two stand over each other. */
const FIGURES = 5.4
const PAIR = 4.1

interface Column {
  /** Share of the width between the margins. */
  readonly at: number
  readonly head: readonly string[]
  readonly anchor: Text['anchor']
}

const LEAF: Column = { at: 0, head: ['', 'Leaf'], anchor: 'start' }
const PIECE: Column = { at: 0.085, head: ['Piece,', 'how laid'], anchor: 'start' }
const ALONG: Column = { at: 0.225, head: ['Along, from', 'the numbered end'], anchor: 'start' }
const NEAR: Column = { at: 0.485, head: ['Near end: from left,', 'right wild edge'], anchor: 'start' }
const FAR: Column = { at: 0.67, head: ['Far end: from left,', 'right wild edge'], anchor: 'start' }
const CUT: Column = { at: 0.87, head: ['', 'cut'], anchor: 'middle' }
const BOXES: readonly Column[] = [
  CUT,
  { at: 0.928, head: ['', 'joint'], anchor: 'middle' },
  { at: 0.98, head: ['', 'laid'], anchor: 'middle' },
]

export const COLUMNS: readonly Column[] = [LEAF, PIECE, ALONG, NEAR, FAR, ...BOXES]

export const columnAt = (page: PageSize, { at }: Column): number => PAGE_ROOM + at * (page.width - 2 * PAGE_ROOM)

/** One leaf: its number, how the piece is laid afterwards, where it is cut, and boxes to tick. */
export function placeRow(piece: Piece, unit: LengthUnit, page: PageSize, y: number): readonly Item[] {
  const put = (column: Column, below: number, words: string, size: number, weight: Text['weight'] = 'regular') =>
    text(point(columnAt(page, column), y + below), words, { size, weight })
  const figures = (column: Column, next: Column, alone: string, pair: readonly string[]) => {
    const room = columnAt(page, next) - columnAt(page, column) - 3
    if (textWidth(alone, FIGURES) <= room) return [put(column, 6.6, alone, FIGURES)]
    return pair.map((words, i) => put(column, 3.6 + i * 4.6, words, PAIR))
  }
  const items = [
    put(PIECE, 3.8, piece.cell.id, 4.4, 'bold'),
    put(PIECE, 8, turnInWords(piece), SMALLEST_TEXT),
    ...BOXES.map((column) => tickBox(columnAt(page, column), y + 4.7)),
    ...(piece.cut ? [checkMark(columnAt(page, CUT), y + 4.7, 2.3)] : []),
    line('mark', [point(PAGE_ROOM, y + ROW - 1.6), point(page.width - PAGE_ROOM, y + ROW - 1.6)], { pen: 0.1 }),
  ]
  if (!piece.leaf) return [put(LEAF, 7, '–', 7.5, 'bold'), put(ALONG, 6.6, 'no leaf is left', FIGURES), ...items]
  const { near, far } = leafPlace(piece)
  const along = (['left', 'right'] as const).map(
    (side) => `${placeFigure(near[side].along, unit)} to ${placeFigure(far[side].along, unit)}`,
  )
  const across = (column: Column, next: Column, { left, right }: EndPlace) => {
    const pair = [placeFigure(left.across, unit), placeFigure(right.across, unit)]
    return figures(column, next, pair.join(', '), [`left ${pair[0]}`, `right ${pair[1]}`])
  }
  return [
    put(LEAF, 7, String(piece.leaf.number), 7.5, 'bold'),
    // a slanted end of the leaf makes the two sides differ
    ...(along[0] === along[1]
      ? figures(ALONG, NEAR, along[0]!, [along[0]!])
      : along.map((words, i) => put(ALONG, 3.6 + i * 4.6, `${i === 0 ? 'left' : 'right'} ${words}`, PAIR))),
    ...across(NEAR, FAR, near),
    ...across(FAR, BOXES[0]!, far),
    ...items,
  ]
}

const tickBox = (x: number, y: number): Item =>
  frame('mark', { min: point(x - 2.3, y - 2.3), max: point(x + 2.3, y + 2.3) }, { pen: 0.25 })
