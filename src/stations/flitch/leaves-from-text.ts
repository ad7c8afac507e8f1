import { addFlitch, setCommonOutline, setLeaves } from '../../core/commands/flitch-commands'
import type { Next } from '../../core/commands/change-within'
import { setLeafNote, setLeafOutline } from '../../core/commands/leaf-commands'
import type { FlitchId } from '../../core/ids'
import type { Job } from '../../core/job/job'
import { blankLeaf, rectangle, usualFlitch } from '../../core/job/usual'
import type { Flitch } from '../../core/leaves/flitch'
import type { Leaf } from '../../core/leaves/leaf'
import { ok, refused, type Result } from '../../core/result'
import { bulkSentence, readBulk } from '../../core/units/read-bulk'
import { readLeafTable, type LeafRow } from '../../core/units/read-leaf-table'
import { tableSentence } from '../../core/units/table-sentence'
import type { LengthUnit } from '../../core/units/unit'
import { rectangleSize } from './leaf-order'

/**
 * The leaves that a text tells of: one line such as `24 leaves, 2440 x 200`, or rows copied from a spreadsheet. Else
 * a sentence that says what was not understood, in a table with its line.
 */
export function readLeaves(text: string, unit: LengthUnit): Result<readonly LeafRow[], string> {
  if (/[\n\t]/.test(text.trim())) {
    const table = readLeafTable(text, unit)
    return table.ok ? table : refused(tableSentence(table.reason, unit))
  }
  const bulk = readBulk(text, unit)
  if (!bulk.ok) return refused(bulkSentence(bulk.reason, unit))
  const { count, first, length, width } = bulk.value
  return ok(Array.from({ length: count }, (_, i) => ({ number: first + i, length, width, note: '' })))
}

/** The size that most leaves have, which becomes the common outline; of equally many the one that came first. */
export function commonSize(rows: readonly LeafRow[]): { readonly width: number; readonly length: number } {
  const counts = new Map<string, { width: number; length: number; count: number }>()
  for (const { width, length } of rows) {
    const key = `${width} ${length}`
    const known = counts.get(key)
    counts.set(key, { width, length, count: (known?.count ?? 0) + 1 })
  }
  const [first, ...others] = [...counts.values()]
  const most = others.reduce((best, size) => (best && best.count >= size.count ? best : size), first)
  return { width: most?.width ?? 0, length: most?.length ?? 0 }
}

/** The job with a new flitch of these leaves behind the others. */
export function addFlitchOf(
  job: Job,
  { id, name, species }: Pick<Flitch, 'id' | 'name' | 'species'>,
  rows: readonly LeafRow[],
): Next {
  const { width, length } = commonSize(rows)
  const outline = rectangle(width, length)
  const leaves = rows.map((row): Leaf => ({
    ...blankLeaf(row.number),
    note: row.note,
    outline: isRectangle(outline, row) ? null : rectangle(row.width, row.length),
  }))
  return addFlitch(job, { ...usualFlitch(id, name, outline, leaves), species })
}

/**
 * These leaves in place of those that the flitch has. A leaf whose number stays keeps its defects, state and drift, and
 * its note unless there is a new one; its size is the new one.
 */
export function putLeavesInstead(job: Job, id: FlitchId, rows: readonly LeafRow[]): Next {
  const { width, length } = commonSize(rows)
  const listed = setLeaves(
    job,
    id,
    rows.map(({ number }) => number),
  )
  const shared = listed.ok ? setCommonOutline(listed.value, id, rectangle(width, length)) : listed
  return shared.ok ? sized(shared.value, id, rows) : shared
}

/**
 * These leaves behind those that the flitch has. Rows that only count from 1 are numbered on from the highest; numbers
 * that were given and are taken are refused.
 */
export function putLeavesAfter(job: Job, id: FlitchId, rows: readonly LeafRow[]): Next {
  const leaves = job.flitches.find((flitch) => flitch.id === id)?.leaves ?? []
  const taken = new Set(leaves.map(({ number }) => number))
  const isCounted = rows.every(({ number }, i) => number === i + 1)
  const clash = rows.find(({ number }) => taken.has(number))
  if (clash && !isCounted) return refused({ trouble: 'leaf already there', leaf: clash.number })
  const on = clash ? Math.max(...taken) : 0
  const added = rows.map((row) => ({ ...row, number: row.number + on }))
  const listed = setLeaves(job, id, [...taken, ...added.map(({ number }) => number)])
  return listed.ok ? sized(listed.value, id, added) : listed
}

/** Gives the leaves the sizes and notes of their rows: the common outline to those that have its size. */
function sized(job: Job, id: FlitchId, rows: readonly LeafRow[]): Next {
  const outline = job.flitches.find((flitch) => flitch.id === id)?.outline ?? []
  let next: Next = ok(job)
  for (const row of rows) {
    const ref = { flitch: id, leaf: row.number }
    const own = isRectangle(outline, row) ? null : rectangle(row.width, row.length)
    if (next.ok) next = setLeafOutline(next.value, ref, own)
    if (next.ok && row.note !== '') next = setLeafNote(next.value, ref, row.note)
  }
  return next
}

/** Whether an outline is nothing but a rectangle of this size from the origin. */
function isRectangle(outline: Flitch['outline'], { width, length }: Pick<LeafRow, 'width' | 'length'>): boolean {
  const size = rectangleSize(outline)
  return size?.width === width && size.length === length
}
