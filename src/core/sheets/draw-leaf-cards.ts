import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textCutTo } from '../drawing/text-width'
import type { Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { present } from '../invariant'
import { otherFlitch, type Piece } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'
import { chalkMark } from '../templates/chalk-mark'
import type { LoneLeaf } from '../templates/packets'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { bold, cardPage, column, onCard, plain } from './card'
import { checkMark } from './check-mark'
import { CHALK, chalkItems, chalkSentence } from './chalk-words'
import { cutFigures } from './cut-figures'
import { figureRows, tickBox } from './draw-packet-card'
import type { JudgedFace } from './judged-face'
import { leafPicture } from './leaf-picture'
import { turnInWords } from './leaf-words'

const ON_ONE = 4

/** Cards for leaves that are cut alone, four to a page, cut or folded apart. */
export function drawLeafCards(
  face: JudgedFace,
  alone: readonly LoneLeaf[],
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const card = cardPage(page)
  return Array.from({ length: Math.ceil(alone.length / ON_ONE) }, (_, i) => {
    const items = alone
      .slice(i * ON_ONE, (i + 1) * ON_ONE)
      .flatMap((one, k) => leafCard(face, one, unit, present(card.quarters[k], 'a page has four quarters')))
    return onCard(card, items, 'Cut or fold here')
  })
}

/** The picture stands to the right of the words. */
const PICTURE = 14

function leafCard(face: JudgedFace, lone: LoneLeaf, unit: LengthUnit, box: Box<'sheet'>): readonly Item[] {
  const { piece, template } = lone
  const { min, max } = box
  const mark = chalkMark(face, piece)
  const left = max.x - min.x - PICTURE - 18
  const head = column(min, left, [
    bold(`Leaf ${piece.leaf?.number ?? '–'}, ${piece.cell.id}`, 8),
    plain(textCutTo(`${face.part.name}, ${turnInWords(piece)}`, left, 3.8), 3.8),
    plain(
      `${whoseLeaf(face, piece)}${piece.cut ? 'Cut already: joint and lay it.' : `Numbered side up. ${whyWords(lone, unit)}`}`,
      3.5,
    ),
  ])
  const figures = { min, max: point<'sheet'>(min.x + left, max.y) }
  const rows = figureRows(cutFigures(piece, template, unit), figures, head.bottom + 0.5, 5.5)
  const end = max.y - CHALK.height - CHALK_WORDS
  return [
    ...head.items,
    ...rows,
    ...leafPicture(
      piece,
      { min: point(max.x - PICTURE - 10, min.y + 8), max: point(max.x - 10, end - 3) },
      { straight: template.straight, pins: [], chalk: mark },
    ),
    text(point(max.x, min.y + 3.5), 'numbered end', { anchor: 'end' }),
    line('mark', [point(min.x, end), point(max.x, end)], { pen: 0.2 }),
    ...column(point(min.x, end), max.x - min.x, [plain(chalkSentence(mark, unit), 3.3)]).items,
    ...chalkItems(String(piece.leaf?.number ?? ''), piece, point(min.x, max.y - CHALK.height)),
    ...ticks(point(min.x + CHALK.width + 6, max.y - CHALK.height), piece.cut),
  ]
}

/** Which flitch the leaf is of, where it is not the field's. */
function whoseLeaf(face: JudgedFace, piece: Piece): string {
  const name = otherFlitch(face, piece)
  return name === null ? '' : `Leaf${ofFlitch(name)}. `
}

/** Room for the sentence over the chalk mark. */
const CHALK_WORDS = 9.6

const ticks = ({ x, y }: Point<'sheet'>, isCut: boolean): readonly Item[] =>
  ['numbered', 'cut', 'jointed', 'laid'].flatMap((words, i) => {
    const at = point<'sheet'>(x + (i % 2) * 22, y + (i < 2 ? 4 : 13))
    const done = words === 'cut' && isCut ? [checkMark(at.x, at.y, 2.6)] : []
    return [tickBox(at.x, at.y), ...done, text(point(at.x + 3.8, at.y + 1.2), words, { size: 3.3 })]
  })

function whyWords({ piece: { place }, why, template }: LoneLeaf, unit: LengthUnit): string {
  if (why === 'chosen') return 'Chosen by hand: cut alone.'
  if (why === 'only one')
    return template.pieces.length === 1 ? 'The only piece of its shape.' : 'No other of its shape lies at this place.'
  const { x, y } = place.nudge
  const by = [
    x === 0 ? '' : `${showLength(Math.abs(x), unit, 'seam')} to the ${x < 0 ? 'left' : 'right'}`,
    y === 0 ? '' : `${showLength(Math.abs(y), unit, 'seam')} towards the ${y < 0 ? 'numbered' : 'far'} end`,
  ]
  return `Shifted by ${by.filter(Boolean).join(' and ')}: cut alone.`
}
