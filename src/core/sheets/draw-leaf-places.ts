import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { otherFlitch } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'
import { point } from '../geometry/point'
import { roughSize, windowTemplates, type WindowTemplate } from '../templates/window-template'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { CUTTING_CAUTIONS } from './cautions'
import { placeGrain } from './figures'
import type { JudgedFace } from './judged-face'
import { COLUMNS, columnAt, placeRow, ROW } from './leaf-place-row'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { faceSentence } from './border-sentence'

/** Height of a template's title with the heads of its columns. */
const TITLE = 20.5

/** Where each template lies on each leaf, in figures to be read at arm's length, with boxes to tick. */
export function drawLeafPlaces(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const sentence = faceSentence(face, unit)
  const head = pageHead(page, face.part.name, `Where to cut, ${placeGrain(unit)}`, sentence)
  const foot = pageFoot(page, CUTTING_CAUTIONS)
  const pages: Item[][] = [[]]
  let y = head.bottom + 4
  const add = (items: readonly Item[], height: number) => {
    pages.at(-1)!.push(...items)
    y += height
  }
  const turnPage = () => {
    pages.push([])
    y = head.bottom + 4
  }
  for (const template of windowTemplates(face)) {
    if (y + TITLE + ROW > foot.bottom) turnPage()
    add(templateTitle(face, template, unit, page, y), TITLE)
    for (const piece of template.pieces) {
      if (y + ROW > foot.bottom) {
        turnPage()
        add(templateTitle(face, template, unit, page, y), TITLE)
      }
      add(placeRow(piece, unit, page, y), ROW)
    }
    y += 5
  }
  return pages.map((items) => [...head.items, ...items, ...foot.items])
}

function templateTitle(
  face: JudgedFace,
  template: WindowTemplate,
  unit: LengthUnit,
  page: PageSize,
  y: number,
): readonly Item[] {
  const other = template.pieces[0] ? otherFlitch(face, template.pieces[0]) : null
  const size = roughSize(template)
  const [across, along] = [size.width, size.length].map((length) => showLength(length, unit, 'seam'))
  const right = page.width - PAGE_ROOM
  const how = template.straight ? `rip ${across}, crosscut ${along}` : `${across} × ${along} over all, cut by the paper`
  return [
    text(point(PAGE_ROOM, y + 6), `Template ${template.name}${ofFlitch(other)}`, { size: 6, weight: 'bold' }),
    text(point(right, y + 6), how, { size: 5.6, weight: 'bold', anchor: 'end' }),
    ...COLUMNS.flatMap((column) =>
      column.head.flatMap((words, i) =>
        words === '' ? [] : [text(point(columnAt(page, column), y + 12.6 + i * 4.2), words, { anchor: column.anchor })],
      ),
    ),
    line('mark', [point(PAGE_ROOM, y + TITLE - 3), point(right, y + TITLE - 3)], { pen: 0.25 }),
  ]
}
