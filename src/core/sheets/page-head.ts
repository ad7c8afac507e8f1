import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textCutTo, textLines } from '../drawing/text-width'
import { point } from '../geometry/point'

/** White on every side of a page that is laid out to fit. */
export const PAGE_ROOM = 13

export interface PageHead {
  readonly items: readonly Item[]
  /** Where the page goes on below it. */
  readonly bottom: number
}

/** What stands on top of every page: the part, what the page is for, and how the face is made. */
export function pageHead({ width }: PageSize, name: string, purpose: string, sentence: string): PageHead {
  const room = width - 2 * PAGE_ROOM
  const lines = textLines(sentence, room, 4.2)
  const top = PAGE_ROOM + 6
  return {
    items: [
      text(point(PAGE_ROOM, top), textCutTo(name, room * 0.55, 8, 'bold'), { size: 8, weight: 'bold' }),
      text(point(width - PAGE_ROOM, top), purpose, { size: 5, anchor: 'end' }),
      line('mark', [point(PAGE_ROOM, top + 3), point(width - PAGE_ROOM, top + 3)], { pen: 0.4 }),
      ...lines.map((words, i) => text(point(PAGE_ROOM, top + 9 + i * 5.4), words, { size: 4.2 })),
    ],
    bottom: top + 9 + lines.length * 5.4 + 1,
  }
}

/** Lines at the foot of a page, from the bottom up. */
export function pageFoot({ width, height }: PageSize, words: readonly string[]): PageHead {
  const room = width - 2 * PAGE_ROOM
  const lines = words.flatMap((sentence) => textLines(sentence, room, 3.5))
  const top = height - PAGE_ROOM - lines.length * 4.5
  return {
    items: [
      line('mark', [point(PAGE_ROOM, top), point(width - PAGE_ROOM, top)], { pen: 0.18 }),
      ...lines.map((line, i) => text(point(PAGE_ROOM, top + 4.2 + i * 4.5), line, { size: 3.5 })),
    ],
    bottom: top - 2,
  }
}
