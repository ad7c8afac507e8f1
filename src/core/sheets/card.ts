import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { placed } from '../drawing/placed'
import type { PageSize } from '../drawing/sheet-set'
import type { Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { present } from '../invariant'
import { PAGE_ROOM } from './page-head'
import { blockItems, setBlock, type Paragraph } from './text-block'

/** The least page that a card is laid out for; on a larger one everything is larger. */
const LEAST: PageSize = { width: 210, height: 279 }
/** Kept clear of a fold on both sides. */
const FROM_FOLD = 6

/** A page that folds twice to hand size: its four quarters, and how much larger than drawn it is printed. */
export interface CardPage {
  readonly size: PageSize
  readonly larger: number
  /** Top left, top right, bottom left, bottom right; white and folds taken off. */
  readonly quarters: readonly [Box<'sheet'>, Box<'sheet'>, Box<'sheet'>, Box<'sheet'>]
}

export function cardPage(page: PageSize): CardPage {
  const larger = Math.max(1, Math.min(page.width / LEAST.width, page.height / LEAST.height))
  const size = { width: page.width / larger, height: page.height / larger }
  const [x, y] = [size.width / 2, size.height / 2]
  const quarter = (left: boolean, top: boolean): Box<'sheet'> => ({
    min: point(left ? PAGE_ROOM : x + FROM_FOLD, top ? PAGE_ROOM : y + FROM_FOLD),
    max: point(left ? x - FROM_FOLD : size.width - PAGE_ROOM, top ? y - FROM_FOLD : size.height - PAGE_ROOM),
  })
  return {
    size,
    larger,
    quarters: [quarter(true, true), quarter(false, true), quarter(true, false), quarter(false, false)],
  }
}

/** The items as they are printed, with the lines to fold along. */
export function onCard({ size, larger }: CardPage, items: readonly Item[], fold: string): readonly Item[] {
  const [x, y] = [size.width / 2, size.height / 2]
  const dash = { dash: [6, 4], pen: 0.15 }
  const all: readonly Item[] = [
    ...items,
    line('mark', [point(x, PAGE_ROOM), point(x, size.height - PAGE_ROOM)], dash),
    line('mark', [point(PAGE_ROOM, y), point(size.width - PAGE_ROOM, y)], dash),
    text(point(PAGE_ROOM, y - 1.2), fold),
  ]
  return placed(all, { a: larger, b: 0, c: 0, d: larger, e: 0, f: 0 })
}

/** Paragraphs from a point on, in lines of a width, and where they end. */
export function column(
  at: Point<'sheet'>,
  width: number,
  paragraphs: readonly Paragraph[],
): { readonly items: readonly Item[]; readonly bottom: number } {
  const block = setBlock(paragraphs, width) ?? present(setBlock(paragraphs, Infinity), 'words can be set')
  return { items: blockItems(block, at), bottom: at.y + block.height }
}

export const plain = (words: string, size: number): Paragraph => ({ words, size, bold: false })
export const bold = (words: string, size: number): Paragraph => ({ words, size, bold: true })
