import { ok, refused, type Result } from '../result'
import { lengthSentence } from './length-sentence'
import { quoted } from './plain-typing'
import { countSentence, readCount, type CountTrouble } from './read-count'
import { LEAF_LIMITS, MOST_LEAVES } from './read-leaf-table'
import { readLength, type LengthTrouble } from './read-length'
import { tableLines } from './table-cells'
import type { LengthUnit } from './unit'

/** Where the lines struck across a bundle are found on one leaf, mm; `across: null` where only one line was measured. */
export interface MarkRow {
  readonly leaf: number
  readonly along: number
  readonly across: number | null
}

/** Why a list of marks was not understood, and in which line. */
export type MarksTrouble = { readonly line: number } & (
  | { readonly about: 'nothing' }
  | { readonly about: 'leaf'; readonly trouble: CountTrouble }
  | { readonly about: 'unknown leaf'; readonly leaf: number }
  | { readonly about: 'twice'; readonly leaf: number }
  | { readonly about: 'first leaf'; readonly leaf: number }
  | { readonly about: 'too many rows'; readonly most: number }
  | { readonly about: 'extra cell'; readonly text: string }
  | { readonly about: 'along' | 'across'; readonly trouble: LengthTrouble }
)

/**
 * A list of marks as typed or pasted, one leaf a line: number, from the numbered end, and from the left edge where a line
 * was struck on the end too; or only the first distance, for the leaves one after the other. `leaves` are the numbers in
 * sequence; the first of them is what drift is measured from and must be there.
 */
export function readMarks(
  text: string,
  unit: LengthUnit,
  leaves: readonly number[],
): Result<readonly MarkRow[], MarksTrouble> {
  const lines = tableLines(text)
  const rows: MarkRow[] = []
  for (const [i, { line, cells }] of lines.entries()) {
    const row = readRow(cells, i, unit, leaves)
    if (!row.ok) return refused({ line, ...row.reason })
    if (rows.some(({ leaf }) => leaf === row.value.leaf)) return refused({ line, about: 'twice', leaf: row.value.leaf })
    rows.push(row.value)
  }
  if (rows.length === 0) return refused({ line: 1, about: 'nothing' })
  const [first] = leaves
  if (first !== undefined && rows.every(({ leaf }) => leaf !== first))
    return refused({ line: 1, about: 'first leaf', leaf: first })
  return ok(rows)
}

type RowTrouble<T = MarksTrouble> = T extends unknown ? Omit<T, 'line'> : never

function readRow(
  cells: readonly string[],
  at: number,
  unit: LengthUnit,
  leaves: readonly number[],
): Result<MarkRow, RowTrouble> {
  const filled = cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1)
  const [numberText, alongText, acrossText, extra] = filled.length === 1 ? [null, filled[0]!] : filled
  if (typeof extra === 'string') return refused({ about: 'extra cell', text: extra })
  const leaf = numberText === null ? leafAt(leaves, at) : readLeaf(numberText ?? '', leaves)
  if (!leaf.ok) return leaf
  const along = readLength(alongText ?? '', unit, { max: LEAF_LIMITS.max })
  if (!along.ok) return refused({ about: 'along', trouble: along.reason })
  if (!acrossText) return ok({ leaf: leaf.value, along: along.value, across: null })
  const across = readLength(acrossText, unit, { max: LEAF_LIMITS.max })
  if (!across.ok) return refused({ about: 'across', trouble: across.reason })
  return ok({ leaf: leaf.value, along: along.value, across: across.value })
}

function leafAt(leaves: readonly number[], at: number): Result<number, RowTrouble> {
  const leaf = leaves[at]
  return leaf === undefined ? refused({ about: 'too many rows', most: leaves.length }) : ok(leaf)
}

function readLeaf(text: string, leaves: readonly number[]): Result<number, RowTrouble> {
  const number = readCount(text.replace(/^leaf +/i, ''), { min: 1, max: MOST_LEAVES })
  if (!number.ok) return refused({ about: 'leaf', trouble: number.reason })
  return leaves.includes(number.value) ? number : refused({ about: 'unknown leaf', leaf: number.value })
}

/** Why a list of marks was not understood, and what to type. */
export function marksSentence(trouble: MarksTrouble, unit: LengthUnit): string {
  const line = `Line ${trouble.line}`
  switch (trouble.about) {
    case 'nothing':
      return 'Marks: there are none yet. Type one leaf a line, its number and the distance from its numbered end.'
    case 'leaf':
      return countSentence(trouble.trouble, { name: `${line}, leaf`, min: 1, max: MOST_LEAVES })
    case 'unknown leaf':
      return `${line}: there is no leaf ${trouble.leaf} in this flitch. Leave the line out, or give the number that the leaf has.`
    case 'twice':
      return `${line}: leaf ${trouble.leaf} has a line before this one. Leave one of them out.`
    case 'first leaf':
      return `Marks: leaf ${trouble.leaf}, the first of the flitch, has no line. Drift is measured from it, so type its mark too.`
    case 'too many rows':
      return `${line}: the flitch has only ${trouble.most} leaves. Leave out what is too many, or type the leaves’ numbers.`
    case 'extra cell':
      return `${line}: ${quoted(trouble.text)} is one entry too many. A line holds the leaf, the distance from its numbered end, and the one from its left edge.`
    case 'along':
      return lengthSentence(trouble.trouble, { name: `${line}, from the numbered end`, unit })
    case 'across':
      return lengthSentence(trouble.trouble, { name: `${line}, from the left edge`, unit })
  }
}
