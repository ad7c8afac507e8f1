import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { textCutTo } from '../drawing/text-width'
import { point } from '../geometry/point'
import { jointsInOrder, orderOfJointing, type JoinedPieces, type JoinedSeam } from '../seams/assembly'
import { sheetTemplates } from '../templates/sheet-template'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { plain, column, bold } from './card'
import { joinedWords } from './jointing-words'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { faceSentence, hasCorners } from './border-sentence'
import { alongString, stringPieces, type StringPiece } from './string-rows'
import { STRIP_LONG, stripPlaces } from './tape'
import { treeItems, treeHeight } from './jointing-tree'
import { tickBox } from './draw-packet-card'

const ROW = 7.6
const HEAD = 9

const FOOT = [
  'Test every open pair against the light before it is glued: the light shows where the plane has to go again. Seam glue: PVA glue, a thin line in the open joint, wiped when closed; gummed tape alone where the veneer is hammered down or the joint is cut through both.',
  'Plane or knife: hands behind the edge, thin stock held down over its whole length between two boards. Saw: guard on. Dust: extraction and a mask. The glue’s data sheet and local rules come first.',
]

/** In which order the pieces are shot, glued and taped: the tree, and one line for each joint with what it takes. */
export function drawJointingOrder(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const tree = orderOfJointing(
    face.pieces.map(({ cell }) => cell),
    face.seams,
  )
  const joints = jointsInOrder(tree)
  // the string comes between the whole field and the first of the border that is brought to it
  const stringFrom = joints.findIndex(({ seams }) => seams.length === 0)
  const head = pageHead(page, face.part.name, 'Order of jointing and taping', faceSentence(face, unit))
  const foot = pageFoot(page, FOOT)
  const width = page.width - 2 * PAGE_ROOM
  const lead = column(point(PAGE_ROOM, head.bottom), width, [
    bold('Pairs are shot together, then pairs of pairs.', 5.4),
    plain(
      `${stageWords(joints)} ${borderWords(face)} Strips of tape across a seam are about ${showLength(STRIP_LONG, unit, 'whole').replace('≈ ', '')} long; then tape along all of it.`,
      4,
    ),
  ])
  const drawn = tree && treeItems(face, tree, { left: PAGE_ROOM, top: lead.bottom + 3, width })
  const listTop = lead.bottom + 3 + (drawn ? treeHeight(tree) + 6 : 0)
  const pages: Item[][] = []
  let y = Infinity
  for (const [i, joint] of joints.entries()) {
    const cutsFirst = joint.joint !== 'sheet' && joints[i - 1]?.joint === 'sheet'
    const string = i === stringFrom ? stringPieces(face) : []
    if (y + (1 + (cutsFirst ? 1 : 0) + string.length) * ROW > foot.bottom) {
      const isFirst = pages.length === 0
      pages.push([...head.items, ...(isFirst ? [...lead.items, ...(drawn ?? [])] : []), ...foot.items])
      y = isFirst ? listTop : head.bottom + 2
      pages.at(-1)!.push(...listHead(y, page, unit))
      y += HEAD
    }
    if (cutsFirst) {
      pages.at(-1)!.push(...cutRow(face, page, y))
      y += ROW
    }
    for (const piece of string) {
      pages.at(-1)!.push(...stringRow(piece, joint.stage, unit, page, y))
      y += ROW
    }
    pages.at(-1)!.push(...jointRow(face, joint, unit, page, y))
    y += ROW
  }
  return pages
}

/** How a border is laid round a field that is whole. */
function borderWords({ border, part }: JudgedFace): string {
  if (!border || !part.border) return ''
  const { string, corners } = part.border
  const bands = hasCorners(part)
    ? `Each band is joined to its length and fitted to the next, ${corners === 'mitred' ? 'its mitres cut through both bands at once' : 'the corners cut square'}.`
    : 'The segments are joined and fitted to the rim one half after the other.'
  const laid = string
    ? 'When the field is whole it is trued all round and the string is glued to its edge, mitred at the corners; the border comes after that.'
    : 'The border comes last, when the field is whole and trued all round.'
  return `${laid} ${bands}`
}

function stageWords(joints: readonly JoinedPieces[]): string {
  const last = joints.at(-1)
  const fitted = joints.filter(({ straight }) => !straight).length
  return [
    'Both edges of a seam are shot in one setting, laid together like a closed book, so that an edge out of square cancels.',
    joints.some(({ joint }) => joint === 'sheet')
      ? 'Joint the sheets first, then cut the pieces from them by the sheet templates, the joint of the paper on that of the wood; only then are the pieces joined.'
      : '',
    last?.joint === 'diameter' || (last?.joint === 'radial' && last.straight)
      ? 'The halves are made a little over half a turn; then the diameter of each is trued in one line, and they are joined.'
      : '',
    last?.joint === 'cross' ? 'Rows are whole before their cross seam is trued.' : '',
    fitted > 0
      ? 'Where it says “fit”, no straight line goes through: the piece is offered up and trued seam by seam.'
      : '',
  ]
    .filter(Boolean)
    .join(' ')
}

/** Shares of the width. */
const AT = { stage: 0, what: 0.075, seam: 0.46, length: 0.62, across: 0.79, shot: 0.9, taped: 0.975 }

const placeAt = (page: PageSize, share: number): number => PAGE_ROOM + share * (page.width - 2 * PAGE_ROOM)

function listHead(y: number, page: PageSize, unit: LengthUnit): readonly Item[] {
  const put = (share: number, words: string, anchor: 'start' | 'middle' = 'start') =>
    text(point(placeAt(page, share), y + 5.4), words, { size: 3.6, weight: 'bold', anchor })
  return [
    put(AT.stage, 'Stage'),
    put(AT.what, 'Leaves'),
    put(AT.seam, 'Seam'),
    put(AT.length, `Length, ${unit}`),
    put(AT.across, 'Strips'),
    put(AT.shot, 'shot', 'middle'),
    put(AT.taped, 'taped', 'middle'),
    line('mark', [point(PAGE_ROOM, y + 7), point(page.width - PAGE_ROOM, y + 7)], { pen: 0.3 }),
  ]
}

/** Between the joints of the sheets and those of the pieces: what is cut there. */
function cutRow(face: JudgedFace, page: PageSize, y: number): readonly Item[] {
  const names = sheetTemplates(face).map(({ name }) => name)
  const which = `sheet template${names.length === 1 ? '' : 's'} ${names.join(', ')}`
  const words = `Now cut the pieces from their sheets by ${which}.`
  return [
    text(point(placeAt(page, AT.what), y + 4.6), textCutTo(words, 0.8 * page.width, 4.2, 'bold'), {
      size: 4.2,
      weight: 'bold',
    }),
    line('mark', [point(PAGE_ROOM, y + ROW - 0.8), point(page.width - PAGE_ROOM, y + ROW - 0.8)], { pen: 0.3 }),
  ]
}

const isRound = ({ seams }: JudgedFace, seam: JoinedSeam): boolean =>
  seams.some(({ letter, round }) => round && letter === seam.letter)

function jointRow(face: JudgedFace, joint: JoinedPieces, unit: LengthUnit, page: PageSize, y: number): readonly Item[] {
  // with a string between them border and field share no seam
  const string = alongString(face, joint)
  const letters = [...joint.seams.map(({ letter }) => letter), ...(string > 0 ? ['string'] : [])].join(' ')
  const taped = [
    ...joint.seams.map((seam) => ({ length: seam.length, round: isRound(face, seam) })),
    ...(string > 0 ? [{ length: string, round: false }] : []),
  ]
  return row(page, y, {
    stage: joint.stage,
    what: joinedWords(face, joint),
    seam: joint.straight ? letters : `${letters} fit`,
    lengths: lengthWords(taped.map(({ length }) => bareLength(length, unit, 'seam'))),
    strips: taped.reduce((sum, { length, round }) => sum + stripPlaces(length, round).length, 0),
  })
}

/** `100.5, 380`; equal ones as `2 × 100.5`. */
function lengthWords(lengths: readonly string[]): string {
  const alike = [...new Set(lengths)].map((one) => ({ one, count: lengths.filter((other) => other === one).length }))
  return alike.map(({ one, count }) => (count > 1 ? `${count} × ${one}` : one)).join(', ')
}

/** A piece of string: glued to the field, before the border is brought to it. */
const stringRow = (
  { where, length }: StringPiece,
  stage: number,
  unit: LengthUnit,
  page: PageSize,
  y: number,
): readonly Item[] =>
  row(page, y, {
    stage,
    what: `string, ${where}`,
    seam: 'string',
    lengths: bareLength(length, unit, 'seam'),
    strips: stripPlaces(length, false).length,
  })

interface Row {
  readonly stage: number
  readonly what: string
  readonly seam: string
  readonly lengths: string
  readonly strips: number
}

function row(page: PageSize, y: number, { stage, what, seam, lengths, strips }: Row): readonly Item[] {
  const put = (share: number, words: string, room: number, isBold = false) => {
    const weight = isBold ? 'bold' : 'regular'
    return text(
      point(placeAt(page, share), y + 4.6),
      textCutTo(words, room * (page.width - 2 * PAGE_ROOM) - 2, 4.2, weight),
      { size: 4.2, weight },
    )
  }
  return [
    put(AT.stage, String(stage), AT.what - AT.stage, true),
    put(AT.what, what, AT.seam - AT.what),
    put(AT.seam, seam, AT.length - AT.seam, true),
    put(AT.length, lengths, AT.across - AT.length),
    put(AT.across, String(strips), AT.shot - AT.across),
    tickBox(placeAt(page, AT.shot), y + 3.2),
    tickBox(placeAt(page, AT.taped), y + 3.2),
    line('mark', [point(PAGE_ROOM, y + ROW - 0.8), point(page.width - PAGE_ROOM, y + ROW - 0.8)], { pen: 0.1 }),
  ]
}
