import { frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textCutTo, textWidth } from '../drawing/text-width'
import { otherFlitch, type Piece } from '../fit/lay-face'
import type { Box } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { present } from '../invariant'
import { ofFlitch } from '../leaves/flitch-words'
import { chalkMark } from '../templates/chalk-mark'
import { spotPlace } from '../templates/leaf-place'
import type { Packet } from '../templates/packets'
import { registerPins } from '../templates/register-pins'
import type { LengthUnit } from '../units/unit'
import { bold, cardPage, column, onCard, plain } from './card'
import { CARD_CAUTIONS } from './cautions'
import { checkMark } from './check-mark'
import { CHALK, chalkItems, chalkSentence } from './chalk-words'
import { cutFigures, type CutFigure } from './cut-figures'
import { placeFigure } from './figures'
import type { JudgedFace } from './judged-face'
import { leafPicture } from './leaf-picture'
import { leavesInWords, turnInWords } from './leaf-words'

/** Leaves that stand on one card; a larger packet goes on on the next. */
const ON_ONE = 13

/** The card of a packet, folded to hand size: what is cut at once, where, and what is ticked on the way. */
export function drawPacketCard(
  face: JudgedFace,
  packet: Packet,
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const card = cardPage(page)
  const [front, picture, table, notes] = card.quarters
  const parts = Math.ceil(packet.pieces.length / ON_ONE)
  return Array.from({ length: parts }, (_, i) => {
    const pieces = packet.pieces.slice(i * ON_ONE, (i + 1) * ON_ONE)
    const items = [
      ...frontItems(face, packet, unit, front),
      ...pictureItems(face, packet, picture),
      ...tableItems(pieces, table),
      ...noteItems(face, packet, unit, notes),
    ]
    return onCard(card, items, parts > 1 ? `Fold here. Part ${i + 1} of ${parts}` : 'Fold here')
  })
}

/** What is cut and at which figures, to be read at arm's length. */
function frontItems(face: JudgedFace, packet: Packet, unit: LengthUnit, { min, max }: Box<'sheet'>): readonly Item[] {
  const lead = leadOf(packet)
  const width = max.x - min.x
  const head = column(min, width, [
    bold(`Packet ${packet.name}`, 11),
    plain(textCutTo(`${face.part.name}, template ${packet.template.name}`, width, 4.4), 4.4),
    bold(toCutWords(packet), 6),
    plain(
      `Numbered side up. Measured on the top one, leaf ${present(lead.leaf, 'a packet has leaves').number}${ofFlitch(otherFlitch(face, lead))}.`,
      4.2,
    ),
  ])
  return [...head.items, ...figureRows(cutFigures(lead, packet.template, unit), { min, max }, head.bottom + 2, 9.5)]
}

const stillToCut = ({ pieces }: Packet): readonly Piece[] => pieces.filter(({ cut }) => !cut)

/** The leaf that lies on top of those that are still to be cut: what is cut already has left the stack. */
const leadOf = (packet: Packet): Piece => stillToCut(packet)[0] ?? present(packet.pieces[0], 'a packet has pieces')

function toCutWords(packet: Packet): string {
  const [open, all] = [stillToCut(packet).length, packet.pieces.length]
  if (open === all) return `${all} leaves, one cut for all`
  return open === 0 ? `All ${all} leaves are cut` : `${open} of ${all} leaves still to cut`
}

/** Each cut with its tag, its figure as large as goes, and from where it is measured. */
export function figureRows(
  figures: readonly CutFigure[],
  { min, max }: Box<'sheet'>,
  top: number,
  size: number,
): readonly Item[] {
  let y = top
  return figures.flatMap((cut) => {
    const row = figureRow(cut, point(min.x, y), max.x - min.x, size)
    y = row.bottom
    return row.items
  })
}

/** The em of a cut's name, and the least one of a figure beside it; a longer figure stands below it. */
const NAME = 4.6
const LEAST_BESIDE = 5.4

function figureRow({ tag, what, figure, from }: CutFigure, { x, y }: Point<'sheet'>, width: number, most: number) {
  const name = `${tag}  ${what}`
  const fitting = (room: number) => Math.min(most, room / textWidth(figure, 1, 'bold'))
  const beside = fitting(width - textWidth(name, NAME) - 4)
  const isBeside = beside >= LEAST_BESIDE
  const size = isBeside ? beside : Math.max(SMALLEST_TEXT, fitting(width))
  const baseline = y + (isBeside ? Math.max(size, NAME + 0.6) : NAME + 1.4 + size)
  const note = column(point(x, baseline + 0.8), width, [plain(from, 3.5)])
  const items: readonly Item[] = [
    line('mark', [point(x, y), point(x + width, y)], { pen: 0.2 }),
    text(point(x, y + 5), name, { size: NAME }),
    text(point(x + width, baseline), figure, { size, weight: 'bold', anchor: 'end' }),
    ...note.items,
  ]
  return { items, bottom: note.bottom + 1 }
}

/** The leaf with its cuts and pins. */
function pictureItems(face: JudgedFace, packet: Packet, { min, max }: Box<'sheet'>): readonly Item[] {
  const lead = leadOf(packet)
  const pins = registerPins(stillToCut(packet)) ?? []
  const box: Box<'sheet'> = { min: point(min.x + 18, min.y + 8), max: point(max.x - 18, max.y - 8) }
  const middle = (min.x + max.x) / 2
  return [
    text(point(middle, min.y + 4), 'numbered end', { size: 4.4, weight: 'bold', anchor: 'middle' }),
    ...leafPicture(lead, box, { straight: packet.template.straight, pins, chalk: chalkMark(face, lead) }),
    text(point(middle, max.y - 1), 'numbered side up; not to scale', { anchor: 'middle' }),
  ]
}

const TICKS = ['numbered', 'cut', 'jointed', 'laid'] as const
const TICK_STEP = 9.5
const TABLE_ROW = 7.4
const TABLE_HEAD = 17

function tableItems(pieces: readonly Piece[], { min, max }: Box<'sheet'>): readonly Item[] {
  const tickAt = (i: number) => max.x - 4 - (TICKS.length - 1 - i) * TICK_STEP
  const head = [
    text(point(min.x, min.y + TABLE_HEAD - 2), 'Leaf', { size: 4.2, weight: 'bold' }),
    text(point(min.x + 16, min.y + TABLE_HEAD - 2), 'Piece', { size: 4.2, weight: 'bold' }),
    ...TICKS.map((words, i) =>
      text(point(tickAt(i) + 1.2, min.y + TABLE_HEAD - 2), words, { size: 3.6, angle: -Math.PI / 2 }),
    ),
  ]
  const rows = pieces.flatMap((piece, i) => {
    const y = min.y + TABLE_HEAD + i * TABLE_ROW
    return [
      line('mark', [point(min.x, y), point(max.x, y)], { pen: 0.15 }),
      text(point(min.x, y + 5.8), String(piece.leaf?.number ?? '–'), { size: 6.4, weight: 'bold' }),
      text(point(min.x + 16, y + 3.4), piece.cell.id, { size: 3.6, weight: 'bold' }),
      text(point(min.x + 16, y + 6.7), turnInWords(piece), { size: 3.2 }),
      ...TICKS.map((_, k) => tickBox(tickAt(k), y + TABLE_ROW / 2)),
      ...(piece.cut ? [checkMark(tickAt(TICKS.indexOf('cut')), y + TABLE_ROW / 2, 2.6)] : []),
    ]
  })
  return [...head, ...rows]
}

/** A box to tick, its middle at a place. */
export const tickBox = (x: number, y: number): Item =>
  frame('mark', { min: point(x - 2.6, y - 2.6), max: point(x + 2.6, y + 2.6) }, { pen: 0.3 })

function noteItems(face: JudgedFace, packet: Packet, unit: LengthUnit, { min, max }: Box<'sheet'>): readonly Item[] {
  const lead = leadOf(packet)
  const open = stillToCut(packet)
  const pins = open.length > 0 ? registerPins(open) : null
  const mark = chalkMark(face, lead)
  const words = column(point(min.x, min.y), max.x - min.x, [
    bold('Chalk every leaf first', 5.4),
    plain(chalkSentence(mark, unit), 3.9),
  ])
  const below = column(point(min.x, words.bottom + CHALK.height + 4), max.x - min.x, [
    ...(open.length > 0
      ? [
          bold(`Stack ${leavesInWords(face, open)}`, 4.4),
          plain('By the register lines across the bundle’s edge, numbered ends together, numbered side up.', 3.9),
          plain(pins ? pinSentence(lead, pins, unit) : NO_PINS, 3.9),
        ]
      : []),
    bold(lead.cell.sheet ? STRIPS : 'Dry-lay before you cut the next run.', 5),
    ...CARD_CAUTIONS.map((caution) => plain(caution, 3.3)),
  ])
  return [
    ...words.items,
    ...chalkItems(String(lead.leaf?.number ?? ''), lead, point(min.x, words.bottom + 1)),
    ...below.items,
  ]
}

const STRIPS = 'These are strips: joint the sheets first, then cut the pieces from them.'

const NO_PINS = 'No waste is left for pins: hold the packet between two boards while it is cut.'

function pinSentence(lead: Piece, pins: NonNullable<ReturnType<typeof registerPins>>, unit: LengthUnit): string {
  const told = pins.map((pin) => {
    const { along, across } = spotPlace(lead, pin)
    return `${placeFigure(along, unit)} ${unit} from the numbered end and ${placeFigure(across, unit)} ${unit} from the left wild edge`
  })
  return `Pins through the waste: ${told.join('; ')}. See first that no other part takes the wood there.`
}
