import { line, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import { distance, point } from '../geometry/point'
import type { SeamReport } from '../seams/seam-report'
import { bareLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { depthsApart } from './depths-apart'
import { bandWords, isCurved } from './band-words'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM } from './page-head'

const SIZE = 4
const ROW = 6.4
/** Seams that stand in one column of the table before a second is begun. */
const MOST_ROWS = 9

/** Room for the table, its head included. */
export const seamTableHeight = (face: JudgedFace): number => (rowsOf(seamRows(face.seams)) + 1) * ROW + 2

const columnsOf = (rows: readonly SeamRow[]): number => (rows.length > MOST_ROWS ? 2 : 1)
const rowsOf = (rows: readonly SeamRow[]): number => Math.ceil(rows.length / columnsOf(rows))

/** One seam, or all from piece to piece along one band of a border. */
type SeamRow = readonly [SeamReport, ...SeamReport[]]

function seamRows(seams: readonly SeamReport[]): readonly SeamRow[] {
  const rows: [SeamReport, ...SeamReport[]][] = []
  seams.forEach((seam, i) => {
    if (seam.kind === 'segment' && seams[i - 1]?.kind === 'segment') rows.at(-1)!.push(seam)
    else rows.push([seam])
  })
  return rows
}

interface Column {
  /** Share of the width of the table. */
  readonly at: number
  readonly head: string
  readonly words: (row: SeamRow) => string
}

/** The seams in letters' order: where they lie, how long they are, and how the figure meets there. */
export function seamTable(face: JudgedFace, unit: LengthUnit, page: PageSize, top: number): readonly Item[] {
  const all = seamRows(face.seams)
  return columnsFrom(face, all, unit, page, top, columnsOf(all))
}

/** The same on pages of its own, between two levels of each. */
export function seamTablePages(
  face: JudgedFace,
  unit: LengthUnit,
  page: PageSize,
  { top, bottom }: { readonly top: number; readonly bottom: number },
): readonly (readonly Item[])[] {
  const all = seamRows(face.seams)
  const onOne = 2 * Math.max(1, Math.floor((bottom - top - 2) / ROW) - 1)
  return Array.from({ length: Math.ceil(all.length / onOne) }, (_, i) =>
    columnsFrom(face, all.slice(i * onOne, (i + 1) * onOne), unit, page, top, 2),
  )
}

/** Rows in one column, or side by side in two. */
function columnsFrom(
  face: JudgedFace,
  all: readonly SeamRow[],
  unit: LengthUnit,
  page: PageSize,
  top: number,
  columns: number,
): readonly Item[] {
  const rows = Math.ceil(all.length / columns)
  const room = page.width - 2 * PAGE_ROOM
  const width = columns === 1 ? room : room / 2 - 4
  return Array.from({ length: columns }, (_, i) =>
    tableAt(
      face,
      all.slice(i * rows, (i + 1) * rows),
      unit,
      point(PAGE_ROOM + i * (room / 2 + 4), top),
      width,
      columns === 1,
    ),
  ).flat()
}

function tableAt(
  face: JudgedFace,
  rows: readonly SeamRow[],
  unit: LengthUnit,
  { x, y }: { readonly x: number; readonly y: number },
  width: number,
  isWhole: boolean,
): readonly Item[] {
  const columns = isWhole ? wideColumns(face, unit) : narrowColumns(face, unit)
  const row = (words: (column: Column) => string, down: number, isHead: boolean) =>
    columns.map((column, i) =>
      text(point(x + column.at * width, y + down), words(column), {
        size: SIZE,
        weight: isHead || i === 0 ? 'bold' : 'regular',
      }),
    )
  return [
    ...row(({ head }) => head, 4, true),
    line('mark', [point(x, y + 5.8), point(x + width, y + 5.8)], { pen: 0.25 }),
    ...rows.flatMap((seams, i) => row(({ words }) => words(seams), 4 + (i + 1) * ROW, false)),
  ]
}

const wideColumns = (face: JudgedFace, unit: LengthUnit): readonly Column[] => [
  { at: 0, head: 'Seam', words: letters },
  { at: 0.11, head: `From the edge, ${unit}`, words: (row) => where(face, row, unit) },
  { at: 0.37, head: 'From the centre', words: ([seam]) => fromCentre(seam, unit) },
  { at: 0.58, head: 'Length', words: (row) => lengths(row, unit) },
  { at: 0.74, head: 'Figure there', words: ([seam]) => bandWords(face, seam) ?? figureWords(seam, unit) },
]

const narrowColumns = (face: JudgedFace, unit: LengthUnit): readonly Column[] => [
  { at: 0, head: 'Seam', words: letters },
  { at: 0.14, head: `Where, ${unit}`, words: (row) => where(face, row, unit) },
  { at: 0.57, head: 'Length', words: (row) => lengths(row, unit) },
  { at: 0.77, head: 'Figure', words: ([seam]) => bandWords(face, seam) ?? seam.meets },
]

/** `B`, or `C to F`. */
const letters = (row: SeamRow): string => (row.length > 1 ? `${row[0].letter} to ${row.at(-1)!.letter}` : row[0].letter)

/** Seams along a band are told by how many there are; each stands square to the edge. */
const where = (face: JudgedFace, row: SeamRow, unit: LengthUnit): string =>
  row.length > 1 ? `${row.length} in its band` : fromEdge(face, row[0], unit)

/** One length, or from the shortest to the longest. */
function lengths(row: SeamRow, unit: LengthUnit): string {
  const each = row.map(({ length }) => length)
  const [least, most] = [Math.min(...each), Math.max(...each)].map((length) => bareLength(length, unit, 'seam'))
  return least === most ? least! : `${least} to ${most}`
}

const isUpright = ({ edge: { a, b } }: SeamReport): boolean => Math.abs(a.x - b.x) < 0.01
const isLevel = ({ edge: { a, b } }: SeamReport): boolean => Math.abs(a.y - b.y) < 0.01
const isSlanted = (seam: SeamReport): boolean => !isUpright(seam) && !isLevel(seam)

/** From the finished panel's left edge, its upper edge, or where neither can be told the angle from +x clockwise. */
function fromEdge({ part }: JudgedFace, seam: SeamReport, unit: LengthUnit): string {
  const { a, b } = seam.edge
  if (isCurved(seam)) return 'round the field'
  if (seam.round || isSlanted(seam)) {
    const degrees = ((Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI + 360) % 360
    const angle = `${Math.round(degrees * 100) / 100}°`
    return seam.kind === 'sheet' ? `${angle}, in sheet` : `at ${angle}`
  }
  const far = isUpright(seam)
    ? `left ${bareLength(a.x + part.width / 2, unit, 'seam')}`
    : `top ${bareLength(a.y + part.length / 2, unit, 'seam')}`
  return seam.kind === 'sheet' ? `${far}, in sheet` : far
}

function fromCentre(seam: SeamReport, unit: LengthUnit): string {
  if (isCurved(seam) || seam.kind === 'corner') return '–'
  if (seam.round) return 'through it'
  if (isSlanted(seam)) {
    const past = distanceToLine(seam.edge)
    return past < 0.01 ? 'through it' : `${bareLength(past, unit, 'seam')} past it`
  }
  const off = isUpright(seam) ? seam.edge.a.x : seam.edge.a.y
  if (Math.abs(off) < 0.01) return 'on it'
  const [before, after] = isUpright(seam) ? ['left', 'right'] : ['above', 'below']
  return `${bareLength(Math.abs(off), unit, 'seam')} ${off < 0 ? before : after}`
}

/** From the panel's centre, square to the line of the edge. */
const distanceToLine = ({ a, b }: SeamReport['edge']): number => Math.abs(a.x * b.y - a.y * b.x) / distance(a, b)

/** Whether the figure mirrors or repeats, and how far apart in the log the faces lie that meet there. */
function figureWords({ meets, depthOffset, sides }: SeamReport, unit: LengthUnit): string {
  if (depthOffset === null) return meets
  return depthOffset < 0.01 ? `${meets}, one cut` : `${meets}, ${depthsApart(sides, unit)} ${unit} deeper`
}
