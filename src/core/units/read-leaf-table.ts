import { ok, refused, type Result } from '../result'
import { readCount, type CountTrouble } from './read-count'
import { readLength, type LengthLimits, type LengthTrouble } from './read-length'
import { tableLines, type TableLine } from './table-cells'
import {
  headColumns,
  isHead,
  usualColumns,
  type HeadTrouble,
  type LeafColumn,
  type TableColumns,
} from './table-columns'
import type { LengthUnit, UnitName } from './unit'

/** One leaf of a pasted table; lengths in mm. */
export interface LeafRow {
  readonly number: number
  readonly length: number
  readonly width: number
  readonly note: string
}

/** Where a pasted table was not understood: the line from 1, the column if it lies in one, and why. */
export interface TableTrouble {
  readonly line: number
  readonly column: LeafColumn | null
  readonly trouble: CellTrouble
}

export type CellTrouble =
  | { readonly about: 'length'; readonly trouble: LengthTrouble }
  | { readonly about: 'number'; readonly trouble: CountTrouble }
  | { readonly about: 'head'; readonly trouble: HeadTrouble }
  | { readonly about: 'repeat'; readonly number: number; readonly firstLine: number }
  | { readonly about: 'extra cell'; readonly text: string }
  | { readonly about: 'nothing' }
  | { readonly about: 'too many rows'; readonly max: number }

/** Leaf numbers, and the leaves of one flitch, end here. */
export const MOST_LEAVES = 999

/** A leaf is at least a millimetre and at most 20 m, which no slicer exceeds. */
export const LEAF_LIMITS: LengthLimits = { min: 1, max: 20_000 }

/**
 * The leaves in rows copied from a spreadsheet: number, length, width and note, or length and width alone, or in
 * the order that a head line names. Leaves without a number column are numbered from 1. The first trouble ends it.
 */
export function readLeafTable(text: string, unit: LengthUnit): Result<LeafRow[], TableTrouble> {
  const lines = tableLines(text)
  const first = lines[0]
  if (first === undefined) return refused({ line: 1, column: null, trouble: { about: 'nothing' } })
  const headed = isHead(first.cells)
  const columns = headed ? headColumns(first.cells, unit) : ok(usualColumns(widest(lines), unit))
  if (!columns.ok) {
    const { column, ...trouble } = columns.reason
    return refused({ line: first.line, column, trouble: { about: 'head', trouble } })
  }
  const body = headed ? lines.slice(1) : lines
  const beyond = body[MOST_LEAVES]
  if (beyond !== undefined)
    return refused({ line: beyond.line, column: null, trouble: { about: 'too many rows', max: MOST_LEAVES } })
  if (body.length === 0) return refused({ line: first.line, column: null, trouble: { about: 'nothing' } })
  return readRows(body, columns.value)
}

// a note may be missing in some rows, so the fullest row says how many columns there are
const widest = (lines: readonly TableLine[]): number =>
  Math.max(...lines.map(({ cells }) => cells.findLastIndex((cell) => cell !== '') + 1))

function readRows(body: readonly TableLine[], columns: TableColumns): Result<LeafRow[], TableTrouble> {
  const rows: LeafRow[] = []
  const lineOf = new Map<number, number>()
  for (const [at, { line, cells }] of body.entries()) {
    const row = readRow(cells, columns, at + 1)
    if (!row.ok) return refused({ line, ...row.reason })
    const firstLine = lineOf.get(row.value.number)
    if (firstLine !== undefined)
      return refused({ line, column: 'number', trouble: { about: 'repeat', number: row.value.number, firstLine } })
    lineOf.set(row.value.number, line)
    rows.push(row.value)
  }
  return ok(rows)
}

type RowTrouble = Omit<TableTrouble, 'line'>

/** One row; `place` is the number of a leaf in a table without a number column. */
function readRow(cells: readonly string[], columns: TableColumns, place: number): Result<LeafRow, RowTrouble> {
  const extra = cells.find((cell, at) => cell !== '' && (columns[at]?.column ?? null) === null)
  if (extra !== undefined) return refused({ column: null, trouble: { about: 'extra cell', text: extra } })
  const number = readNumber(cellOf('number', cells, columns), place)
  if (!number.ok) return number
  const length = readSize('length', cells, columns)
  if (!length.ok) return length
  const width = readSize('width', cells, columns)
  if (!width.ok) return width
  const note = cellOf('note', cells, columns)?.text ?? ''
  return ok({ number: number.value, length: length.value, width: width.value, note })
}

/** A cell and the unit of its column; null when the table has no such column. */
function cellOf(
  wanted: LeafColumn,
  cells: readonly string[],
  columns: TableColumns,
): { text: string; unit: UnitName } | null {
  const at = columns.findIndex(({ column }) => column === wanted)
  const column = columns[at]
  return column === undefined ? null : { text: cells[at] ?? '', unit: column.unit }
}

function readNumber(cell: { readonly text: string } | null, place: number): Result<number, RowTrouble> {
  if (cell === null) return ok(place)
  const number = readCount(cell.text, { min: 1, max: MOST_LEAVES })
  return number.ok ? number : refused({ column: 'number', trouble: { about: 'number', trouble: number.reason } })
}

function readSize(
  column: 'length' | 'width',
  cells: readonly string[],
  columns: TableColumns,
): Result<number, RowTrouble> {
  const cell = cellOf(column, cells, columns)
  const size = cell === null ? refused({ trouble: 'empty' } as const) : readLength(cell.text, cell.unit, LEAF_LIMITS)
  return size.ok ? size : refused({ column, trouble: { about: 'length', trouble: size.reason } })
}
