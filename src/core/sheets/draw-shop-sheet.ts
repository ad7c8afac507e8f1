import type { Flitch } from '../leaves/flitch'
import { line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { BORDER } from '../faces/window-group'
import { groupsOf, type Piece } from '../fit/lay-face'
import { boxAround, boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { cutFullSentence } from '../checks/closing-wording'
import { CAUTIONS, FIRST_OF_ALL } from '../press/cautions'
import { STEPS, type StepName } from '../press/steps'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { bold, column, plain } from './card'
import { tickBox } from './draw-packet-card'
import { faceItems } from './face-items'
import type { JudgedFace } from './judged-face'
import { measureBlanks } from './measure-blanks'
import { oneBoardWords, pairSentences, SAW_THROUGH } from './pair-words'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { howLeavesMove } from './how-leaves-move'
import { faceSentence } from './border-sentence'

/** The share of the width for the order of work; the rest holds the picture, the sizes and the measures. */
const WORK = 0.61
const GAP = 7

const GLUES =
  'Glues by their data sheets: formaldehyde, epoxy and isocyanates harm through air and skin: gloves, good air, no bare hands.'

/** One page for the shop's wall: what the part is, in which order it is made, and what to mind at each step. */
export function drawShopSheet(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const head = pageHead(
    page,
    face.part.name,
    'Shop sheet',
    [
      faceSentence(face, unit),
      howLeavesMove(face.part.recipe),
      ...closingWords(face, unit),
      ...pairWords(face, unit),
    ].join(' '),
  )
  const foot = pageFoot(page, [FIRST_OF_ALL])
  const width = page.width - 2 * PAGE_ROOM
  const split = PAGE_ROOM + width * WORK
  const right: Box<'sheet'> = {
    min: point(split + GAP, head.bottom + 2),
    max: point(page.width - PAGE_ROOM, foot.bottom),
  }
  return [
    [
      ...head.items,
      ...workItems(face, { x: PAGE_ROOM, top: head.bottom + 2, width: width * WORK }),
      ...aboutItems(face, unit, right),
      ...foot.items,
    ],
  ]
}

/** The steps of the job, each with a box to tick and what is to be minded there. */
function workItems(
  face: JudgedFace,
  { x, top, width }: { readonly x: number; readonly top: number; readonly width: number },
): readonly Item[] {
  const isSawn = face.pairs.some(({ pair, void: why }) => pair.pressed === 'one board' && why === null)
  let y = top
  const shown = new Set<string>()
  return STEPS.flatMap(({ step, words }, i) => {
    const cautions = firstTime(step, shown)
    const named = column(point(x + 13, y), width - 13, [
      bold(words, 3.7),
      ...(step === 'trim' && isSawn ? [plain(SAW_THROUGH, SMALLEST_TEXT)] : []),
      ...cautions.map((caution) => plain(caution, SMALLEST_TEXT)),
    ])
    const number = text(point(x + 7, y + 4.5), String(i + 1), { size: 3.7, anchor: 'start' })
    const items = [tickBox(x + 2.6, y + 3.2), number, ...named.items]
    y = Math.max(named.bottom, y + 6.5)
    return items
  })
}

/** Each caution stands at the first step to which it belongs; those of glues that are not chosen here in one sentence. */
function firstTime(step: StepName, shown: Set<string>): readonly string[] {
  const general = CAUTIONS.filter(({ steps, glues, onlyWhen }) => steps.includes(step) && !glues && !onlyWhen)
  const words = [...general.map((caution) => caution.words), ...(step === 'press' ? [GLUES] : [])]
  const fresh = words.filter((sentence) => !shown.has(sentence))
  for (const sentence of fresh) shown.add(sentence)
  return fresh
}

/** The picture, and below it what is to be known; where that takes more room, the picture is smaller. */
function aboutItems(face: JudgedFace, unit: LengthUnit, { min, max }: Box<'sheet'>): readonly Item[] {
  const width = max.x - min.x
  const needed = belowPicture(face, unit, point(min.x, 0), width).bottom
  const foot = Math.min(min.y + 6 + width * 0.95, max.y - needed - 4)
  return [
    ...pictureItems(face, { min: point(min.x, min.y + 6), max: point(max.x, foot) }),
    ...belowPicture(face, unit, point(min.x, foot + 4), width).items,
    line('mark', [point(min.x - GAP / 2, min.y), point(min.x - GAP / 2, max.y)], { pen: 0.15 }),
  ]
}

/** The sizes, the leaves, and the blanks for centring. */
function belowPicture(face: JudgedFace, unit: LengthUnit, at: Point<'sheet'>, width: number) {
  const sizes = column(at, width, [
    bold('Sizes, width × length', 4.2),
    ...sizeLines(face, unit).map((words) => plain(words, 3.8)),
    bold('Leaves', 4.2),
    plain(leafWords(face), 4.2),
    ...pairLines(face, unit),
  ])
  const blanks = measureBlanks(face, point(at.x, sizes.bottom + 3), width)
  if (!blanks) return sizes
  const notes = column(point(at.x, blanks.bottom), width, [plain(WHERE_TO_TYPE, SMALLEST_TEXT)])
  return { items: [...sizes.items, ...blanks.items, ...notes.items], bottom: notes.bottom }
}

const WHERE_TO_TYPE =
  'Type the measures at the Face station: it says how to shift and turn the sheet, and what comes off each side.'

/** With which other parts it is read as one. */
const pairWords = ({ pairs, part }: JudgedFace, unit: LengthUnit): readonly string[] =>
  pairs.flatMap((report) => pairSentences(report, part, unit).slice(0, 1))

/** What the figure does between the two, what is lost, and how they are pressed. */
function pairLines({ pairs, part }: JudgedFace, unit: LengthUnit) {
  const told = pairs
    .filter((report) => report.void === null)
    .flatMap((report) => [...pairSentences(report, part, unit).slice(1), ...oneBoardWords(report, unit)])
  return told.length > 0 ? [bold('Pair', 4.2), plain(told.join(' '), SMALLEST_TEXT)] : []
}

/** How full the wedges of a sunburst are cut, and how its halves are brought together; nothing for other faces. */
function closingWords({ part, count }: JudgedFace, unit: LengthUnit): readonly string[] {
  const { recipe } = part
  if (recipe.pattern !== 'radial') return []
  return [cutFullSentence({ count, radius: Math.min(part.width, part.length) / 2 }, recipe.cutFull, unit)]
}

function sizeLines({ sizes }: JudgedFace, unit: LengthUnit): readonly string[] {
  const say = (box: Box<'panel'>) =>
    `${showLength(boxWidth(box), unit, 'seam')} × ${showLength(boxHeight(box), unit, 'seam')}`
  return [`Finished ${say(sizes.finished)}`, `Core as pressed ${say(sizes.core)}`, `Taped sheet ${say(sizes.sheet)}`]
}

/** Of the field, then of the border; the flitch once where both come from it. */
function leafWords(face: JudgedFace): string {
  const told = groupsOf(face).map(({ group, flitch, pieces }) => ({
    flitch,
    words: `${group === BORDER ? 'border ' : ''}${runWords(pieces)}`,
  }))
  return told
    .map(({ words, flitch }, i) =>
      told[i + 1]?.flitch.id === flitch.id ? words : `${words} of ${flitchWords(flitch)}`,
    )
    .join('; ')
}

const flitchWords = ({ name, species }: Flitch): string => `${name}${species === '' ? '' : `, ${species}`}`

/** In the order of the run, each leaf once however many pieces it gives; a long run as its first and last leaves. */
function runWords(pieces: readonly Piece[]): string {
  const inRun = [...pieces].sort((p, q) => p.cell.rank - q.cell.rank)
  const numbers = [...new Set(inRun.map(({ leaf }) => leaf?.number ?? 'none left'))]
  const told = numbers.length > 24 ? [...numbers.slice(0, 12), '…', ...numbers.slice(-3)] : numbers
  return told.join(', ')
}

function pictureItems(face: JudgedFace, { min, max }: Box<'sheet'>): readonly Item[] {
  const { sheet } = face.sizes
  const turned = face.part.lying
  const [across, along] = turned ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  const size = 3.175
  const room = size * 3
  const scale = Math.min((max.x - min.x - 2 * room) / across, (max.y - min.y - 2 * room) / along)
  const middle: Point<'panel'> = boxCentre(sheet)
  const placed: Transform<'sheet', 'sheet'> = {
    a: scale,
    b: 0,
    c: 0,
    d: scale,
    e: (min.x + max.x) / 2,
    f: (min.y + max.y) / 2,
  }
  const turn = rotation<'panel', 'sheet'>(turned ? -Math.PI / 2 : 0)
  const panelToSheet = compose(compose(placed, turn), translation<'panel'>(-middle.x, -middle.y))
  // pieces that are too narrow for their numbers are drawn without, field and border each by itself; the seam map has them
  const numbered = groupsOf(face).flatMap(({ group, pieces }) => {
    const least = Math.min(...pieces.map(({ cell }) => narrower(boxAround(cell.face.ring))))
    const wide = group === BORDER ? Math.min(least, face.part.border?.width ?? least) : least
    return wide * scale < NUMBERED ? [] : pieces
  })
  return faceItems({ ...face, pieces: numbered }, { panelToSheet, size, unlettered: 'segment' })
}

/** A piece narrower than this on the page carries no number. */
const NUMBERED = 8

const narrower = (box: Box<'panel'>): number => Math.min(boxWidth(box), boxHeight(box))
