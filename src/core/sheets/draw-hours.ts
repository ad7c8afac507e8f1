import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize, SheetSet } from '../drawing/sheet-set'
import { textLines } from '../drawing/text-width'
import { point } from '../geometry/point'
import { showHours } from '../press/measures'
import { pressLoadSentence, type JobTimeline } from '../press/of-job/job-timeline'
import { bold, column, plain } from './card'
import { tickBox } from './draw-packet-card'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'

const SIZE = 4.2
const STEP = 5.4

const GUESS =
  'Hours by common practice: a first guess, to be corrected after the first job. While one thing dries another can be done.'

/** What is pinned to the wall for the whole job: the loads of the press, and the steps with their hours. */
export const hoursSheets = (job: string, time: JobTimeline): SheetSet => ({
  title: job,
  sheets: [{ kind: 'page', title: 'Hours of the job', draw: (page) => drawHours(job, time, page) }],
})

/** Loads first, then a line for each step with a box to tick; as many pages as it takes. */
export function drawHours(job: string, time: JobTimeline, page: PageSize): readonly (readonly Item[])[] {
  const days = `${time.days} ${time.days === 1 ? 'day' : 'days'}`
  const sum = `About ${showHours(time.hands)} of hands within ${days}, at 8 hours a day.`
  const head = pageHead(page, job || 'The whole job', 'Hours of the job', sum)
  const foot = pageFoot(page, [GUESS])
  const width = page.width - 2 * PAGE_ROOM
  const loads = column(point(PAGE_ROOM, head.bottom + 2), width, [
    bold('Loads of the press', 5),
    ...time.loads.map((load, i) => plain(pressLoadSentence(load, i + 1), SIZE)),
    ...(time.tooLarge.length > 0 ? [bold(`Too large for the platen: ${time.tooLarge.join('; ')}.`, SIZE)] : []),
  ])
  const pages: Item[][] = [[...head.items, ...loads.items, ...foot.items]]
  let y = loads.bottom + 4
  for (const step of time.steps) {
    const words = textLines(step.words, width * 0.62, SIZE)
    const height = words.length * STEP + 2.6
    if (y + height > foot.bottom) {
      pages.push([...head.items, ...foot.items])
      y = head.bottom + 2
    }
    pages.at(-1)!.push(...rowItems(words, step, page, y, height))
    y += height
  }
  return pages
}

function rowItems(
  words: readonly string[],
  { hands, waits }: { readonly hands: number; readonly waits: number },
  page: PageSize,
  y: number,
  height: number,
): readonly Item[] {
  const right = page.width - PAGE_ROOM
  const end = (x: number, words: string): Item => text(point(x, y + 5.4), words, { size: SIZE, anchor: 'end' })
  return [
    tickBox(PAGE_ROOM + 2.6, y + 4),
    ...words.map((each, i) => text(point(PAGE_ROOM + 9, y + 5.4 + i * STEP), each, { size: SIZE })),
    ...(hands > 0 ? [end(right - 34, `${showHours(hands)} of hands`)] : []),
    ...(waits > 0 ? [end(right, `waits ${showHours(waits)}`)] : []),
    line('mark', [point(PAGE_ROOM, y + height - 0.4), point(right, y + height - 0.4)], { pen: 0.1 }),
  ]
}
