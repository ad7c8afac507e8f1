import { point } from '../geometry/point'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { columnBounds, columnId, equalColumns } from './columns'
import { rowId } from './end-match'
import {
  above,
  below,
  layAt,
  leftOf,
  rightOf,
  turnOf,
  type Bound,
  type Plan,
  type PlannedCell,
  type Sizes,
} from './pattern'
import type { ParquetRecipe } from './recipe'
import { fartherAlong, leavesByLength, shareOf } from './shared-leaves'

export const USUAL_PARQUET: ParquetRecipe = {
  pattern: 'parquet',
  columns: 4,
  rows: 4,
  strips: 1,
  firstBlock: 'upright',
  count: 'fewest',
  firstLeaf: 1,
  sideUp: 'numbered',
}

/** A block of the finished face: where it lies, its sizes, and whether its grain is upright. */
interface Block {
  readonly column: number
  readonly row: number
  readonly centre: { readonly x: number; readonly y: number }
  readonly isUpright: boolean
}

/**
 * A grid of equal finished blocks, the grain of neighbours square to each other; each block of one piece, or of several
 * strips along its grain. Blocks are named by row and column, both counted out from the centre, strips from the left or
 * from above: `T1L1`, `T1L1.2`. Lying blocks have their numbered ends at the left, upright ones at the top.
 *
 * The run goes along the rows; each of the `count` leaves gives several pieces, one behind the other.
 */
export function planParquet(recipe: ParquetRecipe, sizes: Sizes, count: number): Plan {
  const { strips } = recipe
  const pieces = parquetPieces(recipe)
  const pitch = pitchOnLeaf(recipe, sizes)
  const cells = blocksOf(recipe, sizes).flatMap((block, b) =>
    Array.from({ length: strips }, (_, s): PlannedCell => {
      const { leaf, before } = shareOf(b * strips + s, pieces, Math.min(pieces, count))
      return {
        id: blockId(recipe, block) + (strips > 1 ? `.${s + 1}` : ''),
        rank: leaf,
        bounds: [...blockBounds(recipe, sizes, block), ...stripBounds(recipe, sizes, block, s)],
        lay: fartherAlong(layStrip(recipe, sizes, block, s), before * pitch),
        turn: block.isUpright ? turnOf(isOver(recipe), false) : { turnedOver: isOver(recipe), spun: null },
      }
    }),
  )
  return { cells, outerJointed: [], columns: null }
}

/** All blocks with all their strips. */
export const parquetPieces = ({ columns, rows, strips }: ParquetRecipe): number => columns * rows * strips

const isOver = ({ sideUp }: ParquetRecipe): boolean => sideUp === 'other'

const blockSize = ({ columns, rows }: ParquetRecipe, { width, length }: Sizes) => ({
  across: width / columns,
  down: length / rows,
})

const blockId = ({ columns, rows }: ParquetRecipe, { column, row }: Block): string =>
  `${rowId(row, rows)}${columnId(column, columns)}`

function blocksOf(recipe: ParquetRecipe, sizes: Sizes): readonly Block[] {
  const { columns, rows, firstBlock } = recipe
  const { across, down } = blockSize(recipe, sizes)
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns]
    return {
      row,
      column,
      centre: { x: -sizes.width / 2 + (column + 0.5) * across, y: -sizes.length / 2 + (row + 0.5) * down },
      isUpright: ((row + column) % 2 === 0) === (firstBlock === 'upright'),
    }
  })
}

/** Blocks are squared when they are put together, a stage after their strips. */
function blockBounds(recipe: ParquetRecipe, sizes: Sizes, { column, row }: Block): readonly Bound[] {
  const borders = equalColumns(sizes, recipe.columns, 'after trimming', false)
  const seamAt = (i: number) => -sizes.length / 2 + (i * sizes.length) / recipe.rows
  const bounds = columnBounds(borders, column).map(({ edge }): Bound => ({ edge, joint: 'cross' }))
  if (row > 0) bounds.push({ edge: below(seamAt(row)), joint: 'cross' })
  if (row < recipe.rows - 1) bounds.push({ edge: above(seamAt(row + 1)), joint: 'cross' })
  return bounds
}

/** Where strip s of a block begins across its grain, from the block's middle; equal in the finished block. */
function stripBorder(recipe: ParquetRecipe, sizes: Sizes, { isUpright }: Block, s: number): number {
  const { across, down } = blockSize(recipe, sizes)
  return (s / recipe.strips - 0.5) * (isUpright ? across : down)
}

function stripBounds(recipe: ParquetRecipe, sizes: Sizes, block: Block, s: number): readonly Bound[] {
  const at = (i: number) => (block.isUpright ? block.centre.x : block.centre.y) + stripBorder(recipe, sizes, block, i)
  const bounds: Bound[] = []
  if (s > 0) bounds.push({ edge: block.isUpright ? rightOf(at(s)) : below(at(s)), joint: 'side' })
  if (s < recipe.strips - 1)
    bounds.push({ edge: block.isUpright ? leftOf(at(s + 1)) : above(at(s + 1)), joint: 'side' })
  return bounds
}

function layStrip(recipe: ParquetRecipe, sizes: Sizes, block: Block, s: number): Transform<'window', 'panel'> {
  const off = stripBorder(recipe, sizes, block, s + 0.5)
  const { x, y } = block.centre
  if (block.isUpright) return layAt(point(x + off, y), isOver(recipe), false)
  const quarter = compose(rotation<'panel'>(-Math.PI / 2), layAt(point(0, 0), isOver(recipe), false))
  return compose(translation<'panel'>(x, y + off), quarter)
}

/** From piece to piece on a leaf: the longest, as taped, with what its ends lose. */
function pitchOnLeaf(recipe: ParquetRecipe, sizes: Sizes): number {
  const { across, down } = blockSize(recipe, sizes)
  const { top, right, bottom, left } = sizes.beyond
  const over = (one: number, other: number) => Math.max(0, one) + Math.max(0, other)
  return Math.max(down + over(top, bottom), across + over(left, right)) + 2 * sizes.lost.later + sizes.between
}

/** The fewest leaves by length alone. */
export const leastParquetLeaves = (recipe: ParquetRecipe, sizes: Sizes, longest: number): number =>
  leavesByLength(parquetPieces(recipe), pitchOnLeaf(recipe, sizes), longest + sizes.between)
