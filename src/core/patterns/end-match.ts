import { point } from '../geometry/point'
import type { CellId } from '../ids'
import { bookTurns, columnBounds, columnId, equalColumns, finishedColumn, layingBySpine } from './columns'
import {
  above,
  below,
  layAt,
  turnOf,
  type Bound,
  type Bundle,
  type Plan,
  type PlannedCell,
  type Sizes,
} from './pattern'
import type { EndMatchRecipe, Laying } from './recipe'

export const USUAL_END_MATCH: EndMatchRecipe = {
  pattern: 'end match',
  order: 'column by column',
  rows: 2,
  count: 'fewest',
  firstLeaf: 1,
  equal: 'after trimming',
  spine: 'right',
  laying: 'by spine',
  numberedEnds: 'outside',
}

/** Two rows or more; the count of leaves is a multiple of the rows. */
export const END_MATCH_ROWS = { min: 2, max: 8 }
export const END_MATCH_COUNTS = { max: 64 }

/**
 * Rows of leaves booked side to side, each row turned end over end against the next, so that every seam is a mirror.
 * The rows are equal in the finished face. Cells are named by row and column, both counted out from the centre.
 * `count` is a multiple of the rows.
 */
export function planEndMatch(recipe: EndMatchRecipe, sizes: Sizes, count: number, bundle: Bundle): Plan {
  const { rows } = recipe
  const columns = count / rows
  const borders = equalColumns(sizes, columns, recipe.equal, columns % 2 === 0)
  const overs = columns === 1 ? [false] : bookTurns(columns, hingeSeam(columns), recipe.spine)
  const spunRow = (row: number) => (row % 2 === 1) !== (recipe.numberedEnds === 'inside')
  const laying = layingOf(recipe, overs, spunRow(0), bundle)
  const middles = mirroredMiddles(recipe, sizes, borders)
  const seamBelow = (row: number) => -sizes.length / 2 + ((row + 1) * sizes.length) / rows
  const cell = (row: number, i: number): PlannedCell => ({
    id: `${rowId(row, rows)}${columnId(i, columns)}`,
    rank: rankOf(recipe, row, laying === 'left to right' ? i : columns - 1 - i, columns),
    bounds: [...columnBounds(borders, i), ...rowBounds(row, rows, seamBelow)],
    lay: layAt(point(middles[i]!, seamBelow(row) - sizes.length / rows / 2), overs[i]!, spunRow(row)),
    turn: turnOf(overs[i]!, spunRow(row)),
  })
  return {
    cells: Array.from({ length: rows }, (_, row) => overs.map((_, i) => cell(row, i))).flat(),
    outerJointed: ['left', 'right'],
    columns: overs.map((_, i) => finishedColumn(sizes, borders, i)),
  }
}

/** The seam on the centre, or right of the leaf on it. */
const hingeSeam = (columns: number): number => Math.floor((columns + 1) / 2)

/** `T2 T1 B1 B2`, or `T1 M B1` for an odd number of rows. */
export function rowId(row: number, rows: number): CellId {
  const twiceOff = 2 * row + 1 - rows
  if (twiceOff === 0) return 'M'
  return `${twiceOff < 0 ? 'T' : 'B'}${Math.floor((Math.abs(twiceOff) + 1) / 2)}`
}

function rowBounds(row: number, rows: number, seamBelow: (row: number) => number): readonly Bound[] {
  const bounds: Bound[] = []
  if (row > 0) bounds.push({ edge: below(seamBelow(row - 1)), joint: 'cross' })
  if (row < rows - 1) bounds.push({ edge: above(seamBelow(row)), joint: 'cross' })
  return bounds
}

/**
 * Which leaf of the run lies in a row and in a column counted in the direction of laying. Source of the three orders:
 * Architectural Woodwork Standards, 1st edition 2009, section 4 and appendix B: architectural 1 3 5 7 / 2 4 6 8 and
 * 1 4 5 8 / 2 3 6 7, panel 1 2 3 4 / 8 7 6 5.
 */
function rankOf({ order, rows }: EndMatchRecipe, row: number, column: number, columns: number): number {
  switch (order) {
    case 'column by column':
      return column * rows + row
    case 'down and up':
      return column * rows + (column % 2 === 0 ? row : rows - 1 - row)
    case 'panel':
      return row * columns + (row % 2 === 0 ? column : columns - 1 - column)
  }
}

/**
 * By spine: row by row, so that the pair at the centre shares a knife cut; column by column, so that the first two
 * leaves do, for which the first must show the face that looks towards the second.
 */
function layingOf(
  recipe: EndMatchRecipe,
  overs: readonly boolean[],
  topIsSpun: boolean,
  bundle: Bundle,
): Exclude<Laying, 'by spine'> {
  if (recipe.laying !== 'by spine') return recipe.laying
  const turnedOver = (column: number) => turnOf(overs[column]!, topIsSpun).turnedOver
  if (recipe.order === 'panel' && overs.length > 1)
    return layingBySpine(turnedOver(hingeSeam(overs.length) - 1), bundle.numberFacesNext)
  const last = overs.length - 1
  return turnedOver(0) === bundle.numberFacesNext && turnedOver(last) !== bundle.numberFacesNext
    ? 'right to left'
    : 'left to right'
}

/** Origins mirrored from seam to seam outwards, starting in the middle of the finished column at the centre. */
function mirroredMiddles(recipe: EndMatchRecipe, sizes: Sizes, borders: readonly number[]): readonly number[] {
  const count = borders.length - 1
  const first = Math.floor(count / 2)
  const { from, to } = finishedColumn(sizes, borders, first)
  const equal = -sizes.width / 2 + ((first + 0.5) * sizes.width) / count
  const middles = Array.from({ length: count }, () => 0)
  middles[first] = recipe.equal === 'after trimming' ? equal : (from + to) / 2
  for (let i = first + 1; i < count; i++) middles[i] = 2 * borders[i]! - middles[i - 1]!
  for (let i = first - 1; i >= 0; i--) middles[i] = 2 * borders[i + 1]! - middles[i + 1]!
  return middles
}
