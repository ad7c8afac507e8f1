import { text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { textLines, textWidth } from '../drawing/text-width'
import { boxAround } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { ringEdges, type Ring } from '../geometry/polygon'

/** Words set in lines of one width; the size is the em in mm. */
export interface Paragraph {
  readonly words: string
  readonly size: number
  readonly bold: boolean
}

export interface SetLine extends Omit<Paragraph, 'words'> {
  readonly words: string
  /** Of the baseline, below the top of the block. */
  readonly down: number
}

export interface TextBlock {
  readonly lines: readonly SetLine[]
  readonly width: number
  readonly height: number
}

/** The paragraphs in lines no wider than `width`; null if a single word is wider. */
export function setBlock(paragraphs: readonly Paragraph[], width: number): TextBlock | null {
  let down = 0
  const lines = paragraphs.flatMap(({ words, size, bold }) => {
    const set = textLines(words, width, size, bold ? 'bold' : 'regular').map((line): SetLine => {
      down += size * 1.22
      return { words: line, size, bold, down }
    })
    down += size * 0.35
    return set
  })
  const widest = Math.max(...lines.map(({ words, size, bold }) => textWidth(words, size, bold ? 'bold' : 'regular')))
  return widest > width ? null : { lines, width: widest, height: down }
}

/** The lines of a block whose top left corner is at a point. */
export const blockItems = ({ lines }: TextBlock, { x, y }: Point<'sheet'>): readonly Item[] =>
  lines.map(({ words, size, bold, down }) =>
    text(point(x, y + down), words, { size, weight: bold ? 'bold' : 'regular' }),
  )

/** Kept clear between the words and the ring, and the widest that a column of words is set. */
const CLEAR = 5
const WIDEST = 150
const NARROWEST = 30
const STEP = 10

/** Where a block goes: its top left corner. */
export interface BlockPlace {
  readonly block: TextBlock
  readonly at: Point<'sheet'>
}

/**
 * The place in a convex ring where the paragraphs stand in the fewest lines, and the highest of such: a column as wide
 * as the ring allows there, with `beside` kept free on its left and `over` above it. null if there is none.
 */
export function placeInRing(
  ring: Ring<'sheet'>,
  paragraphs: readonly Paragraph[],
  { beside, over }: { readonly beside: number; readonly over: number },
): BlockPlace | null {
  const box = boxAround(ring)
  const [from, to] = [box.min.y + CLEAR, box.max.y - CLEAR]
  const blockOf = rememberedBlocks(paragraphs)
  let best: BlockPlace | null = null
  for (let top = from; top < to; top += STEP)
    for (let bottom = top + STEP; bottom <= to; bottom += STEP) {
      const { low, high } = spanOver(ring, top, bottom)
      const room = high - low - 2 * CLEAR - beside
      const block = room < NARROWEST ? null : blockOf(Math.floor(Math.min(room, WIDEST)))
      if (!block || block.height + over > bottom - top) continue
      if (best && block.height > best.block.height - 1) continue
      // a wide piece has its words where the first page of a tiling begins, a narrow one in its middle
      const left = room > WIDEST ? low + CLEAR : (low + high - block.width - beside) / 2
      best = { block, at: point(left + beside, top + over) }
    }
  return best
}

/** Most of the widths that are tried come again and again. */
function rememberedBlocks(paragraphs: readonly Paragraph[]): (width: number) => TextBlock | null {
  const known = new Map<number, TextBlock | null>()
  return (width) => {
    if (!known.has(width)) known.set(width, setBlock(paragraphs, width))
    return known.get(width) ?? null
  }
}

/** What a convex ring has in common between two levels. */
function spanOver(ring: Ring<'sheet'>, top: number, bottom: number): { readonly low: number; readonly high: number } {
  const [one, other] = [spanAt(ring, top), spanAt(ring, bottom)]
  return { low: Math.max(one.low, other.low), high: Math.min(one.high, other.high) }
}

function spanAt(ring: Ring<'sheet'>, y: number): { readonly low: number; readonly high: number } {
  const xs = ringEdges(ring).flatMap(({ a, b }) =>
    a.y > y === b.y > y ? [] : [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)],
  )
  return { low: Math.min(...xs), high: Math.max(...xs) }
}
