import { RING_MARK } from '../figure/photo/ring-marks'
import { fill, frame, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize, SheetSet } from '../drawing/sheet-set'
import { point, type Point } from '../geometry/point'
import { pageFoot, pageHead } from './page-head'

/** A card is cut out square. */
const CARD = 78
const FACETS = 180

const HOW =
  'Cut out the four cards and lay them flat as a rectangle round the leaf, the one with the dot on the left of the numbered end, as you look with that end away from you. Measure from middle to middle: both sides and one diagonal.'
const MIND =
  'Print at actual size: the bar must measure 100 mm both ways. Weigh the leaf down flat, on a plain cloth darker than the wood or of another colour, and photograph from straight above with the main lens.'

/** The four cards that a photograph is straightened by, on one page. */
export const ringMarkSheets: SheetSet = {
  title: 'Ring marks',
  sheets: [{ kind: 'page', title: 'Ring marks', draw: (page) => [drawRingMarks(page)] }],
}

function drawRingMarks(page: PageSize): readonly Item[] {
  const head = pageHead(page, 'Ring marks', 'For photographs of leaves', HOW)
  const foot = pageFoot(page, [MIND])
  const [left, top] = [page.width / 2 - CARD - 2, (head.bottom + foot.bottom) / 2 - CARD - 2]
  const places = [0, 1, 2, 3].map((i) =>
    point<'sheet'>(left + (i % 2) * (CARD + 4), top + Math.floor(i / 2) * (CARD + 4)),
  )
  return [...head.items, ...places.flatMap((at, i) => card(at, i === 0)), ...foot.items]
}

function card(at: Point<'sheet'>, isDotted: boolean): readonly Item[] {
  const middle = point<'sheet'>(at.x + CARD / 2, at.y + CARD / 2)
  const words = isDotted ? 'numbered end, left' : 'middle to middle'
  return [
    frame('trim', { min: at, max: point(at.x + CARD, at.y + CARD) }),
    fill('mark', round(middle, RING_MARK.ring)),
    fill('mark', round(middle, RING_MARK.hole), '#ffffff'),
    ...(isDotted ? [fill('mark', round(middle, RING_MARK.dot))] : []),
    // a point to measure by, too small to be taken for the dot
    fill('mark', round(middle, 0.4), isDotted ? '#ffffff' : '#000000'),
    text(point(middle.x, at.y + CARD - 4), words, { anchor: 'middle', size: 4 }),
  ]
}

const round = (middle: Point<'sheet'>, radius: number): readonly Point<'sheet'>[] =>
  Array.from({ length: FACETS }, (_, i) =>
    point(
      middle.x + radius * Math.cos((2 * Math.PI * i) / FACETS),
      middle.y + radius * Math.sin((2 * Math.PI * i) / FACETS),
    ),
  )
