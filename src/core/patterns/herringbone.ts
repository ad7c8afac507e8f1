import { point } from '../geometry/point'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { columnBounds, columnId, equalColumns } from './columns'
import { layAt, type Bound, type Plan, type PlannedCell, type Sizes } from './pattern'
import type { HerringboneRecipe } from './recipe'
import { fartherAlong, leavesByLength, shareOf } from './shared-leaves'

export const USUAL_HERRINGBONE: HerringboneRecipe = {
  pattern: 'herringbone',
  angle: 45,
  stripWidth: 100,
  columns: 2,
  points: 'up',
  count: 'fewest',
  firstLeaf: 1,
  sideUp: 'numbered',
  numberedEnds: 'outside',
}

/**
 * Columns of strips at an angle to the width, the strips of neighbours mirrored in the seam between them. The columns
 * are equal in the finished face. In each the strips are counted from the one that crosses the middle of the column at
 * half the length, so that names stay when the panel grows: `L1+0`, below it `L1+1`, above it `L1-1`.
 *
 * Strips of one height come from neighbouring leaves, each a column: cut at one place and turned over in turn, so every
 * column seam is a mirror. `count` is a multiple of the columns; a leaf gives several strips, one behind the other.
 */
export function planHerringbone(recipe: HerringboneRecipe, sizes: Sizes, count: number): Plan {
  const { columns } = recipe
  const borders = equalColumns(sizes, columns, 'after trimming', false)
  const { first, last } = stripsOf(recipe, sizes)
  const rows = last - first + 1
  const cell = (column: number, strip: number): PlannedCell => {
    const { leaf, before } = shareOf(strip - first, rows, Math.min(rows, count / columns))
    const isOver = (recipe.sideUp === 'other') !== (column % 2 === 1)
    const lay = layStrip(recipe, sizes, column, strip, isOver)
    return {
      id: `${columnId(column, columns)}${strip < 0 ? '-' : '+'}${Math.abs(strip)}`,
      rank: leaf * columns + column,
      bounds: [
        ...columnBounds(borders, column).map(({ edge }): Bound => ({ edge, joint: 'mitre' })),
        ...stripBounds(recipe, sizes, column, strip),
      ],
      lay: fartherAlong(lay, before * pitchOnLeaf(recipe, sizes)),
      turn: { turnedOver: isOver, spun: null },
    }
  }
  const eachStrip = Array.from({ length: rows }, (_, i) => first + i)
  return {
    cells: eachStrip.flatMap((strip) => Array.from({ length: columns }, (_, column) => cell(column, strip))),
    outerJointed: [],
    columns: null,
  }
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** From strip to strip down a column. */
const rise = ({ stripWidth, angle }: HerringboneRecipe): number => stripWidth / Math.cos(radians(angle))

const middleOf = ({ columns }: HerringboneRecipe, { width }: Sizes, column: number): number =>
  -width / 2 + ((column + 0.5) * width) / columns

/** Whether a column lies left of the seam of its pair; the pair at the centre, or right of the column there, is one. */
function isLeftOfPair({ columns }: HerringboneRecipe, column: number): boolean {
  const hinge = Math.floor((columns + 1) / 2)
  return (hinge - 1 - column) % 2 === 0
}

/** The slant of a column's strips, from +x towards +y. */
const slantOf = (recipe: HerringboneRecipe, column: number): number =>
  radians(recipe.angle) * (isLeftOfPair(recipe, column) === (recipe.points === 'up') ? -1 : 1)

/** The first and the last strip that any column shows. */
function stripsOf(recipe: HerringboneRecipe, sizes: Sizes): { readonly first: number; readonly last: number } {
  const half = widestColumn(recipe, sizes) - sizes.width / recipe.columns / 2
  const reach = half * Math.tan(radians(recipe.angle))
  const step = rise(recipe)
  const [top, bottom] = [-sizes.length / 2 - sizes.beyond.top, sizes.length / 2 + sizes.beyond.bottom]
  return {
    first: Math.floor((top - reach) / step - 0.5 + 1e-9) + 1,
    last: Math.ceil((bottom + reach) / step + 0.5 - 1e-9) - 1,
  }
}

/** How many strips lie in a column, the cut ones at its ends included. */
export function stripsInColumn(recipe: HerringboneRecipe, sizes: Sizes): number {
  const { first, last } = stripsOf(recipe, sizes)
  return last - first + 1
}

const widestColumn = ({ columns }: HerringboneRecipe, { width, beyond }: Sizes): number =>
  width / columns + Math.max(0, beyond.left, beyond.right)

/** From strip to strip on a leaf: their ends are parallel, so one lies close behind the other. */
function pitchOnLeaf(recipe: HerringboneRecipe, sizes: Sizes): number {
  return (widestColumn(recipe, sizes) + 2 * sizes.lost.first) / Math.cos(radians(recipe.angle)) + sizes.between
}

/** The fewest leaves by length alone, a multiple of the columns. */
export const leastHerringboneLeaves = (recipe: HerringboneRecipe, sizes: Sizes, longest: number): number =>
  recipe.columns * leavesByLength(stripsInColumn(recipe, sizes), pitchOnLeaf(recipe, sizes), longest + sizes.between)

function layStrip(
  recipe: HerringboneRecipe,
  sizes: Sizes,
  column: number,
  strip: number,
  isOver: boolean,
): Transform<'window', 'panel'> {
  // along the slant to the right; away from the seam of the pair it is to the left in the column on its left
  const awayFromSeam = slantOf(recipe, column) + (isLeftOfPair(recipe, column) ? Math.PI : 0)
  const grain = recipe.numberedEnds === 'inside' ? awayFromSeam : awayFromSeam + Math.PI
  return compose(
    translation<'panel'>(middleOf(recipe, sizes, column), strip * rise(recipe)),
    compose(rotation<'panel'>(grain - Math.PI / 2), layAt(point(0, 0), isOver, false)),
  )
}

function stripBounds(recipe: HerringboneRecipe, sizes: Sizes, column: number, strip: number): readonly Bound[] {
  const slant = slantOf(recipe, column)
  const x = middleOf(recipe, sizes, column)
  const at = (y: number, way: number) => point<'panel'>(x + way * Math.cos(slant), y + way * Math.sin(slant))
  const [upper, lower] = [(strip - 0.5) * rise(recipe), (strip + 0.5) * rise(recipe)]
  return [
    { edge: { a: at(upper, -1), b: at(upper, 1) }, joint: 'side' },
    { edge: { a: at(lower, 1), b: at(lower, -1) }, joint: 'side' },
  ]
}
