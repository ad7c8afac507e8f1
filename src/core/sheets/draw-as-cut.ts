import { asCutSentences, farOffSentence, sizeSentence } from '../checks/as-cut-wording'
import { line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import type { PageSize, SheetSet } from '../drawing/sheet-set'
import { point, type Point } from '../geometry/point'
import { CAUTIONS, FIRST_OF_ALL } from '../press/cautions'
import { answerAsCut, type SheetAnswer } from '../seams/sheet-measured'
import type { Shop } from '../shop'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { asCutItems } from './as-cut-items'
import { bold, column, plain } from './card'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'

const SIZE = 4.2
const ROW = 6.4

/** The page to take to the press for a sheet that was measured; no page where the face has no seam to be laid by. */
export function asCutSheets(face: JudgedFace, shop: Shop, unit: LengthUnit): SheetSet {
  const asked = answerAsCut(face, shop)
  return {
    title: face.part.name,
    sheets: asked
      ? [{ kind: 'page', title: 'As cut', draw: (page) => drawAsCut(face, asked, shop, { unit, page }) }]
      : [],
  }
}

/** What came out, then how the sheet is laid, sentence by sentence. */
export const howItLies = ({ places, answer }: SheetAnswer, shop: Shop, unit: LengthUnit): readonly string[] =>
  [sizeSentence(places, answer.keeps, unit), ...asCutSentences(answer, shop, unit)].filter((words) => words !== '')

interface Setting {
  readonly unit: LengthUnit
  readonly page: PageSize
}

/** How the sheet is laid on its core: in words, as a drawing, and edge by edge what is marked and what comes off. */
export function drawAsCut(
  face: JudgedFace,
  asked: SheetAnswer,
  shop: Shop,
  { unit, page }: Setting,
): readonly (readonly Item[])[] {
  const head = pageHead(page, face.part.name, 'As cut: to the press', measuredWords(asked, unit))
  const foot = pageFoot(page, [...cautions(), FIRST_OF_ALL])
  const width = page.width - 2 * PAGE_ROOM
  const doubt = farOffSentence(asked.places, unit)
  const farOff = doubt === '' ? [] : [bold(doubt, SIZE)]
  const words = column(point(PAGE_ROOM, head.bottom + 1), width, [
    ...farOff,
    bold('Lay the sheet like this', 5),
    ...howItLies(asked, shop, unit).map((sentence) => plain(sentence, SIZE)),
  ])
  const table = tableItems(face, asked, unit, point(PAGE_ROOM, 0), width)
  const top = foot.bottom - table.bottom - 2
  const caption = column(point(PAGE_ROOM, 0), width, [plain(captionOf(face), 3.6)])
  const drawing = {
    min: point<'sheet'>(PAGE_ROOM, words.bottom + 2),
    max: point<'sheet'>(page.width - PAGE_ROOM, top - caption.bottom - 3),
  }
  return [
    [
      ...head.items,
      ...words.items,
      ...asCutItems({ answer: asked.answer, sizes: face.sizes, hasCross: asked.hasCross, unit }, drawing),
      ...column(point(PAGE_ROOM, drawing.max.y + 1), width, [plain(captionOf(face), 3.6)]).items,
      ...tableItems(face, asked, unit, point(PAGE_ROOM, top), width).items,
      ...foot.items,
    ],
  ]
}

/** The picture of the page by itself, for the screen. */
export function asCutDrawing(face: JudgedFace, asked: SheetAnswer, unit: LengthUnit): Drawing {
  const extent = { min: point<'sheet'>(0, 0), max: point<'sheet'>(96, 116) }
  return {
    title: `${face.part.name}, as cut`,
    extent,
    items: asCutItems({ answer: asked.answer, sizes: face.sizes, hasCross: asked.hasCross, unit }, extent),
  }
}

const captionOf = ({ part }: JudgedFace): string =>
  `Show side, ${part.lying ? 'upright: the top is the end that the face shows at the left' : 'top up'}. Full line: the sheet. Dashed, with crosses: the core, to be pencilled on the sheet as far in from its edges as the numbers say. What stands over is drawn larger than life. On the glue side left and right change places.`

function measuredWords({ places }: SheetAnswer, unit: LengthUnit): string {
  const said = places.map(({ label, length }) => `${label.toLowerCase()} ${showLength(length, unit, 'seam')}`)
  return `Measured on the show side from the seam to the edge: ${said.join('; ')}.`
}

/** What can hurt when the waste comes off. */
const cautions = (): readonly string[] =>
  CAUTIONS.filter(({ steps, onlyWhen }) => steps.includes('trim') && !onlyWhen).map(({ words }) => words)

const COLUMNS = [0, 0.27, 0.45, 0.72] as const

/** A line for each end of each edge: where the core is pencilled on the sheet, and what is trimmed to the finished size. */
function tableItems(
  { sizes }: JudgedFace,
  { answer }: SheetAnswer,
  unit: LengthUnit,
  at: Point<'sheet'>,
  width: number,
) {
  const say = (length: number) => showLength(length, unit, 'seam')
  const { sheet, core, finished } = sizes
  const rows = [
    ...answer.edges.flatMap(({ side, ends, keeps }) =>
      ends.map((end) => [`${side}${keeps ? '' : ' (short)'}`, end.at, say(end.over), say(end.trim)]),
    ),
    ...(answer.edges.some(({ side }) => side === 'top')
      ? []
      : [
          ['top, as planned', '', say(core.min.y - sheet.min.y), say(finished.min.y - sheet.min.y)],
          ['bottom, as planned', '', say(sheet.max.y - core.max.y), say(sheet.max.y - finished.max.y)],
        ]),
  ]
  const put = (cells: readonly string[], y: number, weight: 'regular' | 'bold') =>
    cells.map((cell, i) => text(point(at.x + COLUMNS[i]! * width, y), cell, { size: SIZE, weight }))
  const head = ['Edge', 'At', 'Core’s pencil mark', 'Trimmed off in the end']
  const items: readonly Item[] = [
    ...put(head, at.y + 5, 'bold'),
    line('mark', [point(at.x, at.y + 7), point(at.x + width, at.y + 7)], { pen: 0.3 }),
    ...rows.flatMap((cells, i) => put(cells, at.y + 12 + i * ROW, 'regular')),
  ]
  return { items, bottom: at.y + 12 + (rows.length - 1) * ROW + 3 }
}
