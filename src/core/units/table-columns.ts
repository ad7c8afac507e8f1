import { ok, refused, type Result } from '../result'
import { plainTyping } from './plain-typing'
import { unitNamed, type UnitName } from './unit'

/** What a column of a table of leaves may hold. */
export type LeafColumn = 'number' | 'length' | 'width' | 'note'

/** The columns as they stand from left to right; null is a column without a name. */
export type TableColumns = readonly { readonly column: LeafColumn | null; readonly unit: UnitName }[]

/** Why a head of a table cannot be used. */
export type HeadTrouble =
  | { readonly trouble: 'unknown column'; readonly text: string }
  | { readonly trouble: 'column twice' }
  | { readonly trouble: 'column missing' }

const NAMES: Readonly<Record<LeafColumn, readonly string[]>> = {
  number: ['number', 'leaf', 'leaf number', 'no', 'no.', 'nr', 'nr.', '#'],
  length: ['length', 'long'],
  width: ['width', 'wide'],
  note: ['note', 'notes', 'remark', 'remarks'],
}

const COLUMNS = Object.keys(NAMES) as LeafColumn[]

/** Whether the first line of a table names its columns: it does when a cell of it is called length or width. */
export const isHead = (cells: readonly string[]): boolean =>
  cells.some((cell) => ['length', 'width'].includes(nameAndUnit(cell).column ?? ''))

/** The columns that a head names; one without a unit of its own, such as `Length (cm)`, is in the job's. */
export function headColumns(
  cells: readonly string[],
  unit: UnitName,
): Result<TableColumns, HeadTrouble & { readonly column: LeafColumn | null }> {
  const columns = cells.map((cell) => ({ cell, ...nameAndUnit(cell) }))
  for (const [at, { cell, column }] of columns.entries()) {
    if (column === null && cell !== '') return refused({ trouble: 'unknown column', text: cell, column: null })
    const twice = column !== null && columns.findIndex((other) => other.column === column) < at
    if (twice) return refused({ trouble: 'column twice', column })
  }
  for (const needed of ['length', 'width'] as const)
    if (!columns.some(({ column }) => column === needed)) return refused({ trouble: 'column missing', column: needed })
  return ok(columns.map(({ column, unit: own }) => ({ column, unit: own ?? unit })))
}

/** The columns of a table without a head: length and width, or number, length, width and note. */
export function usualColumns(cellCount: number, unit: UnitName): TableColumns {
  const order: readonly LeafColumn[] = cellCount <= 2 ? ['length', 'width'] : ['number', 'length', 'width', 'note']
  return order.map((column) => ({ column, unit }))
}

function nameAndUnit(cell: string): { column: LeafColumn | null; unit: UnitName | null } {
  const plain = plainTyping(cell)
  const columnNamed = (name: string) => COLUMNS.find((column) => NAMES[column].includes(name)) ?? null
  const found = /^(.+?),? ?(?:\(([^)]+)\)|\[([^\]]+)\]|(?<=[ ,])([a-z]+))$/.exec(plain)
  const unit = unitNamed((found?.[2] ?? found?.[3] ?? found?.[4] ?? '').trim())
  const column = found?.[1] === undefined || unit === null ? null : columnNamed(found[1].trim())
  return column === null ? { column: columnNamed(plain), unit: null } : { column, unit }
}
