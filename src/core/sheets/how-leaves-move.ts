import type { BoxRecipe, DiamondRecipe, RadialRecipe, Recipe, StripRecipe } from '../patterns/recipe'

/** How the leaves of a pattern are moved from the bundle to the face, in one sentence: names differ from region to region. */
export function howLeavesMove(recipe: Recipe): string {
  switch (recipe.pattern) {
    case 'strips':
      return STRIPS[recipe.match]
    case 'four-way':
      return 'Four leaves are opened like two books, and the lower pair is turned end over end against the upper one.'
    case 'end match':
      return 'Every other leaf of a row is turned over like a page, and each row is turned end over end against the next.'
    case 'diamond':
      return slippedFirst(
        recipe,
        recipe.runs === 'round'
          ? 'Four pieces are cut with the grain on the slant and turned over across both centre lines, so that the grain closes round the centre in diamonds.'
          : 'Four pieces are cut with the grain on the slant and turned over across both centre lines, so that the grain runs from the corners to the centre.',
      )
    case 'box':
      return slippedFirst(
        recipe,
        recipe.grain === 'along the edges'
          ? 'Four pieces with the grain along the panel’s edges are mitred at 45°, every other one turned over.'
          : 'Four pieces with the grain across the panel’s edges are mitred at 45°, every other one turned over.',
      )
    case 'herringbone':
      return 'Strips are cut on the slant and laid in columns; each column is the one beside it turned over, so that the strips mirror at every column seam.'
    case 'parquet':
      return recipe.strips === 1
        ? 'Blocks are cut from the leaves one behind the other and laid in a grid, every other one turned by a quarter in its plane.'
        : 'Strips are cut from the leaves one behind the other and laid side by side into blocks, and every other block is turned by a quarter in its plane.'
    case 'planks':
      return recipe.look === 'random'
        ? `Leaves of unequal width are laid side by side ${recipe.order === 'shuffled' ? 'in a mixed order' : 'as they come'}; no match is wanted.`
        : 'Strips of unequal width are laid side by side like boards; no match is wanted, and their edges may be seen.'
    case 'radial':
      return recipe.eachFrom === 'one leaf'
        ? `${WEDGES[recipe.match]} ${RING[recipe.order]}`
        : `${PAIRS} ${PAIRS_LAID[recipe.match]} ${PAIRS_RING[recipe.order]}`
  }
}

/** The sheets are made before the pieces are cut. */
const slippedFirst = ({ sheetOf }: DiamondRecipe | BoxRecipe, moves: string): string =>
  sheetOf === 1
    ? moves
    : `For each piece ${NUMBERS[sheetOf] ?? sheetOf} leaves are slid beside each other as they lie and joined first. ${moves} What is turned over is the whole sheet, its leaves and their order.`

const NUMBERS: Readonly<Record<number, string>> = { 2: 'two', 3: 'three', 4: 'four', 5: 'five', 6: 'six' }

const WEDGES: Readonly<Record<RadialRecipe['match'], string>> = {
  book: 'Wedges with the grain on their middle line lie round a centre, every other one turned over.',
  slip: 'Wedges with the grain on their middle line lie round a centre, all the same side up.',
}

const PAIRS =
  'Two leaves are booked and joined first, and each wedge is then cut from such a sheet, the joint on its middle line.'

const PAIRS_LAID: Readonly<Record<RadialRecipe['match'], string>> = {
  book: 'The wedges lie round a centre, every other sheet turned over with both its leaves.',
  slip: 'The wedges lie round a centre, all as they were made; as both edges of a pair show the same wood, the figure mirrors from wedge to wedge all the same.',
}

const PAIRS_RING: Readonly<Record<RadialRecipe['order'], string>> = {
  'in a circle': 'The run goes round pair by pair, so that the last comes to lie beside the first.',
  'both ways': 'The run goes out from the first pair both ways, so that no neighbours are more than two pairs apart.',
}

const RING: Readonly<Record<RadialRecipe['order'], string>> = {
  'in a circle': 'The run goes round in a circle, so that the last leaf comes to lie beside the first.',
  'both ways':
    'The run goes out from the first leaf both ways, 1 2 4 6 … 5 3, so that no neighbours are more than two leaves apart.',
}

const STRIPS: Readonly<Record<StripRecipe['match'], string>> = {
  book: 'Every other leaf is turned over like a page, so that the figure mirrors at every seam.',
  slip: 'The leaves are slid beside each other as they lie, the same side and the same end up.',
  'reverse slip':
    'The leaves are slid beside each other, and every other one is spun by half a turn; the same side stays up. Some call it swing match.',
  'slip-centre-book':
    'The leaves of each half are slid beside each other; one half is turned over, so that the two are booked at the centre.',
}
