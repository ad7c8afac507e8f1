import type { Part } from '../job/job'
import { leavesEach } from '../patterns/jointed-sheet'
import type {
  BoxRecipe,
  DiamondRecipe,
  EndMatchRecipe,
  FourWayRecipe,
  HerringboneRecipe,
  ParquetRecipe,
  PlanksRecipe,
  RadialRecipe,
  StripRecipe,
} from '../patterns/recipe'
import { showAngle } from '../units/read-angle'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** Which decision a value in the sentence stands for. */
export type RecipeField =
  | 'name'
  | 'arrangement'
  | 'match'
  | 'count'
  | 'firstLeaf'
  | 'equal'
  | 'centreOn'
  | 'order'
  | 'rows'
  | 'angle'
  | 'stripWidth'
  | 'columns'
  | 'points'
  | 'strips'
  | 'firstBlock'
  | 'widths'
  | 'seed'
  | 'unevenness'
  | 'shuffle'
  | 'ends alike'
  | 'startAt'
  | 'spine'
  | 'laying'
  | 'sideUp'
  | 'numberedEnds'
  | 'firstSeam'
  | 'eachFrom'
  | 'sheetOf'
  | 'windowTurn'
  | 'centre'
  | 'cutFull'
  | 'sides'
  | 'left'
  | 'right'
  | 'ends'
  | 'top'
  | 'bottom'
  | 'allowance'
  | 'jointing'

/** Words between the values, or a value as it is read, with the decision it stands for. */
export type RecipePiece = { readonly text: string } | { readonly value: string; readonly field: RecipeField }

const text = (words: string): RecipePiece => ({ text: words })
const value = (field: RecipeField, words: string | number): RecipePiece => ({ value: String(words), field })

/** What has been decided about a face as one sentence, in pieces: joined they read as `recipeSentence`. */
export function recipePieces(part: Part, count: number, unit: LengthUnit): readonly RecipePiece[] {
  const { recipe } = part
  return [
    value('name', part.name),
    text(' is faced in '),
    value('arrangement', faceName(recipe)),
    text(', a '),
    ...('match' in recipe ? [value('match', recipe.match), text(' match')] : [text(FIXED_MATCH[recipe.pattern])]),
    text(' of '),
    value('count', count),
    text(` ${countedWord(recipe, count)} from leaf `),
    value('firstLeaf', recipe.firstLeaf),
    text(', '),
    ...layingPieces(recipe, unit),
    ...(part.windowTurn === 0
      ? []
      : [text('the window turned by '), value('windowTurn', showAngle(part.windowTurn)), text(' on every leaf, ')]),
    text('with '),
    ...overhangPieces(part, unit),
    text('and '),
    value('allowance', showLength(part.allowance, unit, 'seam')),
    text(' an edge for jointing '),
    value('jointing', JOINTING[part.jointing]),
    text('.'),
  ]
}

/** The same sentence as plain text: it heads the sheets. */
export const recipeSentence = (part: Part, count: number, unit: LengthUnit): string =>
  recipePieces(part, count, unit)
    .map((piece) => ('text' in piece ? piece.text : piece.value))
    .join('')

const JOINTING: Readonly<Record<Part['jointing'], string>> = {
  packet: 'in a packet',
  pair: 'in pairs',
  overlap: 'overlapped and cut through both',
}

/** What is counted in the sentence: leaves, or the pieces that are cut from sheets of several. */
export const countedWord = (recipe: Part['recipe'], count: number): string =>
  leavesEach(recipe) > 1 ? (recipe.pattern === 'radial' ? 'wedges' : 'pieces') : count === 1 ? 'leaf' : 'leaves'

/** Of what a wedge is cut. */
export const EACH_FROM: Readonly<Record<RadialRecipe['eachFrom'], string>> = {
  'one leaf': 'one leaf',
  'booked pair': 'a booked pair',
}

/** Of what a piece of a diamond or a box is cut. */
export const SHEET_FROM = { leaf: 'one leaf', sheet: 'a slipped sheet' } as const

/** The order of the leaves round a sunburst, in words. */
export const RING_ORDERS: Readonly<Record<RadialRecipe['order'], string>> = {
  'in a circle': 'in a circle',
  'both ways': 'both ways from the first',
}

/** The match of the patterns that leave no choice of it. */
export const FIXED_MATCH = {
  'four-way': 'book and end match',
  'end match': 'book and end match',
  diamond: 'match in both centre lines',
  box: 'mitred match',
  herringbone: 'V match',
  parquet: 'quarter-turned match',
  planks: 'face without match',
} as const

/** What a face is called in one word or two: its arrangement, or the set piece that it is. */
export function faceName(recipe: Part['recipe']): string {
  switch (recipe.pattern) {
    case 'strips':
      return recipe.arrangement
    case 'diamond':
      return recipe.runs === 'round' ? 'diamond' : 'reverse diamond'
    case 'box':
      return recipe.grain === 'along the edges' ? 'box' : 'reverse box'
    case 'parquet':
      return recipe.strips === 1 ? 'parquet' : 'basket'
    case 'planks':
      return recipe.look
    default:
      return recipe.pattern
  }
}

function layingPieces(recipe: Part['recipe'], unit: LengthUnit): readonly RecipePiece[] {
  switch (recipe.pattern) {
    case 'strips':
      return [...stripPieces(recipe), ...turnPieces(recipe)]
    case 'four-way':
      return [
        ...endPieces(recipe, 'at the cross seam', 'at the outer ends'),
        ...equalPieces(recipe),
        ...spinePieces(recipe),
      ]
    case 'end match':
      return [
        text('in '),
        value('rows', recipe.rows),
        text(' rows, run '),
        value('order', ORDERS[recipe.order]),
        text(', '),
        ...endPieces(recipe, 'below in the top row', 'at the top'),
        ...equalPieces(recipe),
        ...spinePieces(recipe),
      ]
    case 'diamond':
      return [
        ...slippedPieces(recipe),
        text('the grain at '),
        value('angle', recipe.angle === 'mid-sides' ? 'the slant from mid-side to mid-side' : showAngle(recipe.angle)),
        text(', '),
        ...endPieces(recipe, ...DIAMOND_ENDS[recipe.runs]),
        ...firstSidePieces(recipe),
      ]
    case 'box':
      return [
        ...slippedPieces(recipe),
        ...(recipe.grain === 'along the edges' ? [] : endPieces(recipe, 'inside', 'at the edges')),
        ...firstSidePieces(recipe),
      ]
    case 'herringbone':
      return herringbonePieces(recipe, unit)
    case 'parquet':
      return parquetWords(recipe)
    case 'planks':
      return plankPieces(recipe, unit)
    case 'radial':
      return [
        ...(recipe.eachFrom === 'one leaf'
          ? []
          : [text('each cut from '), value('eachFrom', EACH_FROM[recipe.eachFrom]), text(', ')]),
        ...endPieces(recipe, 'at the centre', 'at the rim'),
        text('the first seam at '),
        value('firstSeam', showAngle(recipe.firstSeam)),
        text(', '),
        ...centrePieces(recipe, unit),
        text(recipe.eachFrom === 'one leaf' ? 'the leaves ' : 'the pairs '),
        value('order', RING_ORDERS[recipe.order]),
        text(', each wedge cut '),
        value('cutFull', showAngle(recipe.cutFull)),
        text(' full, '),
        ...(recipe.match === 'book' || recipe.eachFrom === 'booked pair' ? spinePieces(recipe) : []),
      ]
  }
}

const slippedPieces = ({ sheetOf }: DiamondRecipe | BoxRecipe): readonly RecipePiece[] =>
  sheetOf === 1
    ? []
    : [
        text('each cut from '),
        value('eachFrom', SHEET_FROM.sheet),
        text(' of '),
        value('sheetOf', sheetOf),
        text(' leaves, '),
      ]

const herringbonePieces = (recipe: HerringboneRecipe, unit: LengthUnit): readonly RecipePiece[] => [
  text('in '),
  value('columns', recipe.columns),
  text(' columns of strips '),
  value('stripWidth', showLength(recipe.stripWidth, unit, 'seam')),
  text(' wide at '),
  value('angle', showAngle(recipe.angle)),
  text(', pointing '),
  value('points', recipe.points),
  text(', '),
  ...endPieces(recipe, 'at the seam of the middle pair', 'away from the seam of the middle pair'),
  ...firstSidePieces(recipe),
]

const parquetWords = (recipe: ParquetRecipe): readonly RecipePiece[] => [
  text('in '),
  value('columns', recipe.columns),
  text(' columns and '),
  value('rows', recipe.rows),
  text(' rows of blocks'),
  ...(recipe.strips === 1 ? [] : [text(' of '), value('strips', recipe.strips), text(' strips')]),
  text(', the upper left one '),
  value('firstBlock', recipe.firstBlock),
  text(', the '),
  value('sideUp', recipe.sideUp),
  text(' side up, '),
]

const plankPieces = (recipe: PlanksRecipe, unit: LengthUnit): readonly RecipePiece[] => [
  ...(recipe.widths === 'seeded'
    ? [
        value('widths', 'widths'),
        text(' unlike by up to '),
        value('unevenness', `${recipe.unevenness} %`),
        text(' (draw '),
        value('seed', recipe.seed),
        text('), '),
      ]
    : [text('from the left '), value('widths', plankWidths(recipe.widths, unit)), text(' wide, ')]),
  text('the leaves '),
  value('shuffle', recipe.order),
  text(', numbered ends '),
  value('ends alike', PLANK_ENDS[recipe.ends]),
  text(', the '),
  value('sideUp', recipe.sideUp),
  text(' side up, '),
]

/** The widths as they are typed, and that the last strip is what is left. */
const plankWidths = (widths: readonly number[], unit: LengthUnit): string =>
  [...widths.map((width) => showLength(width, unit, 'seam')), 'the rest'].join(', ')

export const PLANK_ENDS: Readonly<Record<PlanksRecipe['ends'], string>> = {
  alike: 'all at the top',
  mixed: 'at either end',
}

/** Where the seams of a sunburst meet, if not in the middle. */
const centrePieces = ({ centre }: RadialRecipe, unit: LengthUnit): readonly RecipePiece[] =>
  centre.x === 0 && centre.y === 0
    ? []
    : [
        text('its centre '),
        value('centre', showLength(centre.x, unit, 'seam')),
        text(' to the right and '),
        value('centre', showLength(centre.y, unit, 'seam')),
        text(' down from the middle, '),
      ]

/** How the run goes through the rows. */
export const ORDERS: Readonly<Record<EndMatchRecipe['order'], string>> = {
  'column by column': 'down each column',
  'down and up': 'down one column and up the next',
  panel: 'along one row and back along the next',
}

/** Where the numbered ends lie: inside, and outside. */
export const DIAMOND_ENDS: Readonly<Record<DiamondRecipe['runs'], readonly [string, string]>> = {
  round: ['at the upright seam', 'at the level seam'],
  'to the centre': ['at the centre', 'at the corners'],
}

const firstSidePieces = ({ sideUp }: DiamondRecipe | BoxRecipe | HerringboneRecipe): readonly RecipePiece[] => [
  text('the first leaf with its '),
  value('sideUp', sideUp),
  text(' side up, '),
]

function stripPieces(recipe: StripRecipe): readonly RecipePiece[] {
  if (recipe.arrangement === 'running')
    return [text('each as wide as it goes, laid from the '), value('startAt', recipe.startAt), text(' edge, ')]
  if (recipe.arrangement !== 'balance' || recipe.centreOn === 'either') return equalPieces(recipe)
  return [...equalPieces(recipe), text('with '), value('centreOn', `a ${recipe.centreOn}`), text(' on the centre, ')]
}

const turnPieces = (recipe: StripRecipe): readonly RecipePiece[] =>
  recipe.match === 'book' || recipe.match === 'slip-centre-book'
    ? spinePieces(recipe)
    : [
        text(recipe.match === 'reverse slip' ? 'every other one spun, the ' : 'the '),
        value('sideUp', recipe.sideUp),
        text(' side up, '),
      ]

const equalPieces = ({ equal }: StripRecipe | FourWayRecipe | EndMatchRecipe): readonly RecipePiece[] => [
  text('equal '),
  value('equal', equal === 'before trimming' ? 'before' : 'after'),
  text(' trimming, '),
]

const spinePieces = (recipe: StripRecipe | FourWayRecipe | EndMatchRecipe | RadialRecipe): readonly RecipePiece[] => [
  text('opened on its '),
  value('spine', recipe.spine),
  text(' edge, '),
  ...(recipe.laying === 'by spine' || isRunning(recipe)
    ? []
    : [text('laid '), value('laying', recipe.laying), text(', ')]),
]

const isRunning = (recipe: Part['recipe']): boolean => recipe.pattern === 'strips' && recipe.arrangement === 'running'

const endPieces = (
  { numberedEnds }: Exclude<Part['recipe'], StripRecipe | ParquetRecipe | PlanksRecipe>,
  inside: string,
  outside: string,
): readonly RecipePiece[] => [
  text('numbered ends '),
  value('numberedEnds', numberedEnds === 'inside' ? inside : outside),
  text(', '),
]

function overhangPieces({ overhang }: Part, unit: LengthUnit): readonly RecipePiece[] {
  const { top, right, bottom, left } = overhang
  const say = (length: number) => showLength(length, unit, 'seam')
  const sides =
    left === right
      ? [value('sides', say(left)), text(' over at the sides, ')]
      : [value('left', say(left)), text(' over at the left, '), value('right', say(right)), text(' at the right, ')]
  const ends =
    top === bottom
      ? [value('ends', say(top)), text(' at the ends, ')]
      : [value('top', say(top)), text(' at the top, '), value('bottom', say(bottom)), text(' at the bottom, ')]
  return [...sides, ...ends]
}
