import type { Part } from '../job/job'
import type { FourWayRecipe, RadialRecipe, StripRecipe } from '../patterns/recipe'
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
  | 'startAt'
  | 'spine'
  | 'laying'
  | 'sideUp'
  | 'numberedEnds'
  | 'firstSeam'
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
    value('arrangement', recipe.pattern === 'strips' ? recipe.arrangement : recipe.pattern),
    text(', a '),
    ...(recipe.pattern === 'four-way' ? [text('book and end match')] : [value('match', recipe.match), text(' match')]),
    text(' of '),
    value('count', count),
    text(` ${count === 1 ? 'leaf' : 'leaves'} from leaf `),
    value('firstLeaf', recipe.firstLeaf),
    text(', '),
    ...layingPieces(recipe),
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

function layingPieces(recipe: Part['recipe']): readonly RecipePiece[] {
  switch (recipe.pattern) {
    case 'strips':
      return [...stripPieces(recipe), ...turnPieces(recipe)]
    case 'four-way':
      return [
        ...endPieces(recipe, 'at the cross seam', 'at the outer ends'),
        ...equalPieces(recipe),
        ...spinePieces(recipe),
      ]
    case 'radial':
      return [
        ...endPieces(recipe, 'at the centre', 'at the rim'),
        text('the first seam at '),
        value('firstSeam', showAngle(recipe.firstSeam)),
        text(', '),
        ...(recipe.match === 'book' ? spinePieces(recipe) : []),
      ]
  }
}

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

const equalPieces = ({ equal }: StripRecipe | FourWayRecipe): readonly RecipePiece[] => [
  text('equal '),
  value('equal', equal === 'before trimming' ? 'before' : 'after'),
  text(' trimming, '),
]

const spinePieces = (recipe: StripRecipe | FourWayRecipe | RadialRecipe): readonly RecipePiece[] => [
  text('opened on its '),
  value('spine', recipe.spine),
  text(' edge, '),
  ...(recipe.laying === 'by spine' || isRunning(recipe)
    ? []
    : [text('laid '), value('laying', recipe.laying), text(', ')]),
]

const isRunning = (recipe: Part['recipe']): boolean => recipe.pattern === 'strips' && recipe.arrangement === 'running'

const endPieces = (
  { numberedEnds }: FourWayRecipe | RadialRecipe,
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
