import { ofFlitch } from '../leaves/flitch-words'
import { frame, line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textLines } from '../drawing/text-width'
import { point } from '../geometry/point'
import { mendingWords, repairHead, sparedWords, spotWords } from '../repairs/repair-wording'
import type { Repair } from '../repairs/repairs'
import type { LengthUnit } from '../units/unit'
import { REPAIR_CAUTIONS } from './cautions'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'

/** Size of the text, and from line to line. */
const SIZE = 4.4
const STEP = 5.8
/** Where the words of a repair begin: behind the box to tick and the leaf's number. */
const INDENT = 34

interface Row {
  readonly height: number
  readonly items: (y: number) => readonly Item[]
}

/**
 * What is mended before the leaves of a part are joined, in working order, with boxes to tick; then what need not be,
 * because it falls in the waste. No page where a part has neither.
 */
export function drawRepairs(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const { repairs, spared } = face.repairs
  const rows = [
    ...repairs.map((repair) => repairRow(repair, unit, page)),
    ...(spared.length > 0 ? [heading('No repair: these fall in the waste')] : []),
    ...spared.map((one) => plainRow(sparedWords(one, unit), page)),
  ]
  const head = pageHead(page, face.part.name, 'Repairs, in working order', leafHint(repairs.length))
  const foot = pageFoot(page, REPAIR_CAUTIONS)
  return pagesOf(rows, head.bottom + 3, foot.bottom).map((items) => [...head.items, ...items, ...foot.items])
}

const leafHint = (count: number): string =>
  count === 0
    ? 'Nothing in the pieces of this face needs mending.'
    : 'Places are told with the numbered side up, whatever face is taped: find the place, mark it, then turn the leaf.'

/** Rows set one below another, on as many pages as they need. */
function pagesOf(rows: readonly Row[], top: number, bottom: number): readonly (readonly Item[])[] {
  const pages: Item[][] = []
  let y = Infinity
  for (const { height, items } of rows) {
    if (y + height > bottom) {
      pages.push([])
      y = top
    }
    pages.at(-1)!.push(...items(y))
    y += height
  }
  return pages
}

function repairRow(repair: Repair, unit: LengthUnit, page: PageSize): Row {
  const room = page.width - 2 * PAGE_ROOM - INDENT
  const head = textLines(`${repairHead(repair, unit)}; piece ${repair.cell}${inOther(repair)}`, room, SIZE, 'bold')
  const more = textLines(
    `Its middle is ${spotWords(repair.spot, unit)}. ${mendingWords(repair.mending, unit)}`,
    room,
    SIZE,
  )
  const height = Math.max(16, (head.length + more.length) * STEP + 6)
  return {
    height,
    items: (y) => [
      frame('mark', { min: point(PAGE_ROOM, y + 3), max: point(PAGE_ROOM + 6, y + 9) }),
      text(point(PAGE_ROOM + 10, y + 9), String(repair.leaf), { size: 8, weight: 'bold' }),
      ...[...head, ...more].map((words, i) =>
        text(point(PAGE_ROOM + INDENT, y + 6.5 + i * STEP), words, {
          size: SIZE,
          weight: i < head.length ? 'bold' : 'regular',
        }),
      ),
      line('mark', [point(PAGE_ROOM, y + height - 1), point(page.width - PAGE_ROOM, y + height - 1)], { pen: 0.18 }),
    ],
  }
}

const inOther = ({ ofFlitch: of }: Repair): string => (of === null ? '' : `, leaf${ofFlitch(of)}`)

const heading = (words: string): Row => ({
  height: 13,
  items: (y) => [text(point(PAGE_ROOM, y + 9), words, { size: 5, weight: 'bold' })],
})

function plainRow(words: string, page: PageSize): Row {
  const lines = textLines(words, page.width - 2 * PAGE_ROOM, SIZE)
  return {
    height: lines.length * STEP + 1,
    items: (y) => lines.map((each, i) => text(point(PAGE_ROOM, y + 5 + i * STEP), each, { size: SIZE })),
  }
}
