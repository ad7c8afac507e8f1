import { frame, line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import type { Piece } from '../fit/lay-face'
import { point } from '../geometry/point'
import { leafPlace } from '../templates/leaf-place'
import { roughSize, windowTemplates, type WindowTemplate } from '../templates/window-template'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { CUTTING_CAUTIONS } from './cautions'
import type { JudgedFace } from './judged-face'
import { turnInWords } from './leaf-words'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { recipeSentence } from './recipe-sentence'

const ROW = 11
const FIGURES = 5.6
const BOXES = ['cut', 'jointed', 'laid'] as const

/** Where the template lies on each leaf, in figures to be read at arm's length, with boxes to tick. */
export function drawLeafPlaces(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const head = pageHead(page, face.part.name, `Where to cut, ${unit}`, recipeSentence(face.part, face.count, unit))
  const foot = pageFoot(page, CUTTING_CAUTIONS)
  const pages: Item[][] = []
  let items: Item[] = [...head.items, ...foot.items]
  let y = head.bottom + 4
  const turnPage = () => {
    pages.push(items)
    items = [...head.items, ...foot.items]
    y = head.bottom + 4
  }
  for (const template of windowTemplates(face)) {
    if (y + 22 + ROW > foot.bottom) turnPage()
    const title = templateTitle(template, unit, page, y)
    items.push(...title.items)
    y = title.bottom
    for (const piece of template.pieces) {
      if (y + ROW > foot.bottom) turnPage()
      items.push(...pieceRow(face, piece, unit, page, y))
      y += ROW
    }
    y += 5
  }
  return [...pages, items]
}

interface Column {
  readonly at: number
  readonly name: string
}

/** Shares of the width; the last column holds the boxes. */
const COLUMNS: readonly Column[] = [
  { at: 0, name: 'Leaf' },
  { at: 0.1, name: 'Place' },
  { at: 0.2, name: 'From numbered end' },
  { at: 0.46, name: 'There: from left, right' },
  { at: 0.66, name: 'Far: from left, right' },
  { at: 0.855, name: BOXES.join('  ') },
]

function templateTitle(template: WindowTemplate, unit: LengthUnit, page: PageSize, y: number) {
  const size = roughSize(template)
  const width = page.width - 2 * PAGE_ROOM
  const words = `Template ${template.name}: ${showLength(size.width, unit, 'seam')} × ${showLength(size.length, unit, 'seam')}`
  const how = template.straight ? 'rip and crosscut' : 'cut by the paper'
  return {
    items: [
      text(point(PAGE_ROOM, y + 6), words, { size: 6, weight: 'bold' }),
      text(point(page.width - PAGE_ROOM, y + 6), how, {
        size: 4,
        anchor: 'end',
      }),
      ...COLUMNS.map(({ at, name }) => text(point(PAGE_ROOM + at * width, y + 13), name, { size: 3.4 })),
      line('mark', [point(PAGE_ROOM, y + 15), point(page.width - PAGE_ROOM, y + 15)], { pen: 0.25 }),
    ],
    bottom: y + 15.5,
  }
}

function pieceRow(face: JudgedFace, piece: Piece, unit: LengthUnit, page: PageSize, y: number): readonly Item[] {
  const width = page.width - 2 * PAGE_ROOM
  const at = (share: number) => PAGE_ROOM + share * width
  const base = y + 7.6
  const rule = line('mark', [point(PAGE_ROOM, y + ROW - 0.6), point(page.width - PAGE_ROOM, y + ROW - 0.6)], {
    pen: 0.1,
  })
  const name = text(point(at(0.1), y + 4.6), piece.cell.id, { size: 4.4, weight: 'bold' })
  const turn = text(point(at(0.1), y + 9), turnInWords(piece), { size: 3.2 })
  if (!piece.leaf) return [text(point(at(0), base), '–', { size: FIGURES }), name, rule]
  const place = leafPlace(face.flitch, piece)
  const say = (length: number) => bareLength(length, unit, 'place')
  const figures = (share: number, words: string) => text(point(at(share), base), words, { size: FIGURES })
  return [
    text(point(at(0), base + 0.4), String(piece.leaf.number), { size: 7.5, weight: 'bold' }),
    name,
    turn,
    figures(0.2, `${say(place.near)} to ${say(place.far)}`),
    figures(0.46, `${say(place.atNear.fromLeft)}, ${say(place.atNear.fromRight)}`),
    figures(0.66, `${say(place.atFar.fromLeft)}, ${say(place.atFar.fromRight)}`),
    ...BOXES.map((_, i) => tickBox(at(0.865) + i * width * 0.05, y + 3)),
    rule,
  ]
}

const tickBox = (x: number, y: number): Item =>
  frame('mark', { min: point(x, y), max: point(x + 4.6, y + 4.6) }, { pen: 0.25 })
