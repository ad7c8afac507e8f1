import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { boxHeight, boxWidth } from '../geometry/box'
import { point } from '../geometry/point'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { SeamReport } from '../seams/seam-report'
import { faceDimensions } from './draw-face'
import { faceItems } from './face-items'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageHead } from './page-head'
import { recipeSentence } from './recipe-sentence'

const LETTER = 4.6
const ROW = 6.6
/** Seams in one column of the table; the rest go beside them. */
const MOST_ROWS = 10

/** The face on one page, as large as it goes, seen from the show side, with a table of its seams. */
export function drawSeamMap(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const head = pageHead(page, face.part.name, 'Seam map, show side', recipeSentence(face.part, face.count, unit))
  const tableTop = page.height - PAGE_ROOM - (Math.min(MOST_ROWS, face.seams.length) + 1) * ROW - 6
  const panelToSheet = fitted(face, page, head.bottom + 24, tableTop - 16)
  return [
    [
      ...head.items,
      ...faceItems(face, { panelToSheet, size: LETTER }),
      ...faceDimensions(face, panelToSheet, unit, 4.2),
      ...seamTable(face, unit, page, tableTop),
      ...tagKey(page),
    ],
  ]
}

function fitted(face: JudgedFace, page: PageSize, top: number, bottom: number): Transform<'panel', 'sheet'> {
  const { sheet } = face.sizes
  const turned = face.part.lying
  const [across, along] = turned ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  const scale = Math.min((page.width - 2 * PAGE_ROOM - 44) / across, (bottom - top) / along)
  const centre = point<'panel'>((sheet.min.x + sheet.max.x) / 2, (sheet.min.y + sheet.max.y) / 2)
  const turn = rotation<'panel', 'sheet'>(turned ? -Math.PI / 2 : 0)
  const scaled: Transform<'sheet', 'sheet'> = {
    a: scale,
    b: 0,
    c: 0,
    d: scale,
    e: page.width / 2,
    f: (top + bottom) / 2,
  }
  return compose(compose(scaled, turn), translation<'panel'>(-centre.x, -centre.y))
}

function seamTable(face: JudgedFace, unit: LengthUnit, page: PageSize, top: number): readonly Item[] {
  const halves = Math.ceil(face.seams.length / MOST_ROWS)
  const width = (page.width - 2 * PAGE_ROOM) / Math.max(1, halves)
  return Array.from({ length: halves }, (_, half) =>
    tableOf(
      face,
      face.seams.slice(half * MOST_ROWS, (half + 1) * MOST_ROWS),
      unit,
      PAGE_ROOM + half * width,
      width - 4,
      top,
    ),
  ).flat()
}

function tableOf(
  face: JudgedFace,
  seams: readonly SeamReport[],
  unit: LengthUnit,
  left: number,
  width: number,
  top: number,
): readonly Item[] {
  const isNarrow = width < 120
  const columns = isNarrow
    ? [
        { at: 0, name: 'Seam' },
        { at: 0.18, name: 'Where' },
        { at: 0.5, name: `Length` },
        { at: 0.75, name: 'Figure' },
      ]
    : [
        { at: 0, name: 'Seam' },
        { at: 0.12, name: `From left / centre, ${unit}` },
        { at: 0.5, name: `Length, ${unit}` },
        { at: 0.7, name: 'Figure, apart in the log' },
      ]
  const row = (cells: readonly string[], y: number, bold: boolean): readonly Item[] =>
    cells.map((words, i) =>
      text(point(left + columns[i]!.at * width, y), words, { size: 3.8, weight: bold || i === 0 ? 'bold' : 'regular' }),
    )
  return [
    ...row(
      columns.map(({ name }) => name),
      top + 4,
      true,
    ),
    line('mark', [point(left, top + 5.6), point(left + width, top + 5.6)], { pen: 0.25 }),
    ...seams.flatMap((seam, i) => row(seamCells(face, seam, unit, isNarrow), top + 4 + (i + 1) * ROW, false)),
  ]
}

function seamCells({ part }: JudgedFace, seam: SeamReport, unit: LengthUnit, isNarrow: boolean): readonly string[] {
  const { a, b } = seam.edge
  const length = bareLength(Math.hypot(b.x - a.x, b.y - a.y), unit, 'seam')
  const apart = seam.depthOffset === null ? '' : `, ${seam.depthOffset.toFixed(1)} mm`
  return [seam.letter, seamPlace(part.width, a, b, unit), length, isNarrow ? seam.meets : seam.meets + apart]
}

function seamPlace(width: number, a: { x: number; y: number }, b: { x: number; y: number }, unit: LengthUnit): string {
  const isRound = Math.hypot(a.x, a.y) < 0.01
  if (Math.abs(a.x - b.x) < 0.01 && !isRound)
    return `${bareLength(a.x + width / 2, unit, 'seam')} / ${bareLength(Math.abs(a.x), unit, 'seam')}${a.x < -0.25 ? ' left' : a.x > 0.25 ? ' right' : ''}`
  if (Math.abs(a.y - b.y) < 0.01 && !isRound) return `across, ${showLength(Math.abs(a.y), unit, 'seam')} off`
  const degrees = ((Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI + 360) % 360
  return `${Math.round(degrees * 10) / 10}°`
}

const tagKey = (page: PageSize): readonly Item[] => [
  text(
    point(PAGE_ROOM, page.height - PAGE_ROOM + 3),
    'White number: numbered side up. Black number with an arrow: turned over. Dashes: sheet as taped. Full: finished.',
    { size: 3.4 },
  ),
]
