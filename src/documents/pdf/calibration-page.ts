import { line, text } from '../../core/drawing/build'
import { SMALLEST_TEXT, type Item } from '../../core/drawing/drawing'
import { placed } from '../../core/drawing/placed'
import { textLines } from '../../core/drawing/text-width'
import { point, type Point } from '../../core/geometry/point'
import { pageOn, type Paper } from '../paper'
import type { Correction } from './correction'
import type { PdfPage } from './pdf-document'

/** White round the page, where no printer reaches, and the steps in which the bars are as long as they can be, mm. */
const ROOM = 20
const STEP = 50
const TICK = 10

/** The page as it is fed: as wide as the paper or the roll, and no longer than is of use. */
const pageOf = (paper: Paper): { readonly width: number; readonly height: number } =>
  pageOn(paper, { width: 190, height: 277 }, 20)

/** How long the two bars of the page are, mm: the longer, the better a wrong scale shows. */
export function calibrationBars(paper: Paper): Correction {
  const { width, height } = pageOf(paper)
  const barOn = (side: number) => Math.min(1000, Math.floor((side - 2 * ROOM) / STEP) * STEP)
  return { across: barOn(width), along: barOn(height) }
}

/**
 * A page that tells how true a printer is: a bar across and one along, as long as the paper takes, ticked each
 * centimetre. It is never corrected itself.
 */
export function calibrationPage(paper: Paper): PdfPage {
  const { width, height } = pageOf(paper)
  const bars = calibrationBars(paper)
  const corner = point<'sheet'>(ROOM, ROOM + 4)
  const across = ruler(bars.across, `${bars.across} mm across`)
  const along = placed(ruler(bars.along, `${bars.along} mm along`), { a: 0, b: 1, c: -1, d: 0, e: 0, f: 0 })
  return {
    width,
    height,
    label: 'Bars to measure',
    bookmark: null,
    items: [
      ...placed([...across, ...along], { a: 1, b: 0, c: 0, d: 1, e: corner.x, f: corner.y }),
      ...words(paper, bars, point(ROOM + 24, ROOM + 40), width - 2 * ROOM - 24),
    ],
  }
}

/** A bar from 0 to the right, its ticks below, its name under them. */
function ruler(length: number, name: string): readonly Item[] {
  const ticks = Array.from({ length: length / TICK + 1 }, (_, i) => {
    const x = i * TICK
    const isEnd = x === 0 || x === length
    return line('mark', [point<'sheet'>(x, isEnd ? -4 : 0), point(x, isEnd ? 8 : x % STEP === 0 ? 5 : 3)], {
      pen: isEnd ? 0.25 : 0.18,
    })
  })
  return [
    line('mark', [point(0, 0), point(length, 0)], { pen: 0.25 }),
    ...ticks,
    text(point(length / 2, 12), name, { size: 4.5, weight: 'bold', anchor: 'middle' }),
  ]
}

function words(paper: Paper, bars: Correction, at: Point<'sheet'>, width: number): readonly Item[] {
  const sentences = [
    `Print this page on ${paper.name} at actual size (100 %), never fitted to the page.`,
    `Measure both bars with a steel rule, from the middle of one end line to the middle of the other, to a fifth of a millimetre.`,
    `Type what they measured, ${bars.across} mm across and ${bars.along} mm along, under the name of the printer. Every sheet is then drawn larger or smaller by just that.`,
    'Measure again when the paper, its tray or the weather changes.',
  ]
  const items: Item[] = [text(at, 'How true is this printer?', { size: 8, weight: 'bold' })]
  let y = at.y + 6
  for (const sentence of sentences) {
    for (const words of textLines(sentence, width, 4.5)) items.push(text(point(at.x, (y += 6.2)), words, { size: 4.5 }))
    y += 2
  }
  items.push(text(point(at.x, y + 10), 'Across measured ____________     Along measured ____________', { size: 5 }))
  return [
    ...items,
    text(point(at.x, y + 18), 'Printer ____________________     Date ____________', { size: SMALLEST_TEXT * 1.5 }),
  ]
}
