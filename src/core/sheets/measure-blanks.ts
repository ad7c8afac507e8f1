import { frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import { point, type Point } from '../geometry/point'
import { bold, column } from './card'
import type { JudgedFace } from './judged-face'

const HEIGHT = 46
/** A seam farther from the centre than this is no centre seam. */
const NEAR = 1

export interface Blanks {
  readonly items: readonly Item[]
  readonly bottom: number
}

/**
 * The taped sheet with blanks for what is measured on it: from the centre seam to its edges at both ends, and with a
 * seam across it also to its ends at both sides. null where no seam lies near the centre.
 */
export function measureBlanks({ part, centre }: JudgedFace, at: Point<'sheet'>, width: number): Blanks | null {
  // a sunburst is laid by where its seams cross, once it is pressed
  if (part.recipe.pattern === 'radial') return null
  if (centre.x === null || Math.abs(centre.x) > NEAR) return null
  const head = column(at, width, [bold('Centring as cut: measure the taped sheet', 4.2)])
  const top = head.bottom + 6
  const box = { min: point<'sheet'>(at.x, top), max: point<'sheet'>(at.x + width, top + HEIGHT) }
  const [x, y] = [(box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2]
  const hasCross = centre.y !== null
  const items: Item[] = [
    ...head.items,
    frame('trim', box, { pen: 0.4 }),
    line('seam', [point(x, box.min.y - 2), point(x, box.max.y + 2)], { pen: 0.5 }),
    ...[box.min.y + 8, box.max.y - 4].flatMap((level) => [
      ...blank(box.min.x + 3, x - 3, level, 'left'),
      ...blank(x + 3, box.max.x - 3, level, 'right'),
    ]),
    text(point(at.x, box.min.y - 1.2), 'top'),
    text(point(at.x, box.max.y + 4), 'foot'),
  ]
  if (hasCross)
    items.push(
      line('seam', [point(box.min.x - 2, y), point(box.max.x + 2, y)], { pen: 0.5 }),
      ...sideBlanks(box.min.x + 3, x - 3, y),
      ...sideBlanks(x + 3, box.max.x - 3, y),
    )
  return { items, bottom: box.max.y + 6 }
}

/** A word and a line to write on. */
const blank = (from: number, to: number, y: number, word: string): readonly Item[] => [
  text(point(from, y), word),
  line('mark', [point(from + 8.5, y + 0.5), point(to, y + 0.5)], { pen: 0.2 }),
]

const sideBlanks = (from: number, to: number, y: number): readonly Item[] => [
  text(point(from, y - 4), 'above'),
  line('mark', [point(from + 9.5, y - 3.5), point(to, y - 3.5)], { pen: 0.2 }),
  text(point(from, y + 4 + SMALLEST_TEXT), 'below'),
  line('mark', [point(from + 9.5, y + 4.5 + SMALLEST_TEXT), point(to, y + 4.5 + SMALLEST_TEXT)], { pen: 0.2 }),
]
