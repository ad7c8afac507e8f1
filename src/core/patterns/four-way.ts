import { point } from '../geometry/point'
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
import type { FourWayRecipe } from './recipe'

export const USUAL_FOUR_WAY: FourWayRecipe = {
  pattern: 'four-way',
  count: 'fewest',
  firstLeaf: 1,
  equal: 'after trimming',
  spine: 'right',
  laying: 'by spine',
  numberedEnds: 'outside',
}

/** Two rows of an even number of columns. */
export const FOUR_WAY_COUNTS = { min: 4, max: 64, step: 4 }

/**
 * Two rows booked side to side and end to end about the centre. The run goes round: along the top row and back along
 * the bottom one, 1 2 / 4 3 for four leaves. `count` is a multiple of 4.
 */
export function planFourWay(recipe: FourWayRecipe, sizes: Sizes, count: number, bundle: Bundle): Plan {
  const columns = count / 2
  const borders = equalColumns(sizes, columns, recipe.equal, true)
  const overs = bookTurns(columns, columns / 2, recipe.spine)
  const topIsSpun = recipe.numberedEnds === 'inside'
  const leftOfHinge = turnOf(overs[columns / 2 - 1]!, topIsSpun).turnedOver
  const laying = recipe.laying === 'by spine' ? layingBySpine(leftOfHinge, bundle.numberFacesNext) : recipe.laying
  const along = (i: number) => (laying === 'left to right' ? i : columns - 1 - i)
  const middles = mirroredMiddles(recipe, sizes, borders)
  const cell = (i: number, row: 'T' | 'B'): PlannedCell => {
    const overY = (row === 'B') !== topIsSpun
    const rowBound: Bound = { edge: row === 'T' ? above(0) : below(0), joint: 'cross' }
    return {
      id: `${row}${columnId(i, columns)}`,
      rank: row === 'T' ? along(i) : 2 * columns - 1 - along(i),
      bounds: [...columnBounds(borders, i), rowBound],
      lay: layAt(point(middles[i]!, ((row === 'T' ? -1 : 1) * sizes.length) / 4), overs[i]!, overY),
      turn: turnOf(overs[i]!, overY),
    }
  }
  const eachColumn = overs.map((_, i) => i)
  return {
    cells: [...eachColumn.map((i) => cell(i, 'T')), ...eachColumn.map((i) => cell(i, 'B'))],
    outerJointed: ['left', 'right'],
    columns: eachColumn.map((i) => finishedColumn(sizes, borders, i)),
  }
}

/** Origins mirrored from seam to seam outwards, starting in the middle of the finished column right of the centre. */
function mirroredMiddles(recipe: FourWayRecipe, sizes: Sizes, borders: readonly number[]): readonly number[] {
  const count = borders.length - 1
  const first = count / 2
  const { from, to } = finishedColumn(sizes, borders, first)
  const middles = Array.from({ length: count }, () => 0)
  middles[first] = recipe.equal === 'after trimming' ? sizes.width / count / 2 : (from + to) / 2
  for (let i = first + 1; i < count; i++) middles[i] = 2 * borders[i]! - middles[i - 1]!
  for (let i = first - 1; i >= 0; i--) middles[i] = 2 * borders[i + 1]! - middles[i + 1]!
  return middles
}
