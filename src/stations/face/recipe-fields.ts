import { changeRecipe } from '../../core/commands/face-commands'
import { changePart, type PartPatch } from '../../core/commands/part-commands'
import type { RecipePatch } from '../../core/commands/face-commands'
import type { Part } from '../../core/job/job'
import type { Recipe } from '../../core/patterns/recipe'
import { faceName } from '../../core/sheets/recipe-sentence'
import type { Workshop } from '../../store/workshop.svelte'

/** How a face is made, as one choice: the pattern, and for leaves side by side the arrangement. */
export type Arrangement =
  | 'running'
  | 'balance'
  | 'centre balance'
  | 'four-way'
  | 'end match'
  | 'radial'
  | 'diamond'
  | 'reverse diamond'
  | 'box'
  | 'reverse box'
  | 'herringbone'
  | 'parquet'
  | 'basket'
  | 'random'
  | 'planked'

export const ARRANGEMENTS: readonly { readonly value: Arrangement; readonly name: string }[] = [
  { value: 'centre balance', name: 'centre balance' },
  { value: 'balance', name: 'balance' },
  { value: 'running', name: 'running' },
  { value: 'four-way', name: 'four-way' },
  { value: 'end match', name: 'end match' },
  { value: 'radial', name: 'radial' },
  { value: 'diamond', name: 'diamond' },
  { value: 'reverse diamond', name: 'reverse diamond' },
  { value: 'box', name: 'box' },
  { value: 'reverse box', name: 'reverse box' },
  { value: 'herringbone', name: 'herringbone' },
  { value: 'parquet', name: 'parquet' },
  { value: 'basket', name: 'basket' },
  { value: 'random', name: 'random' },
  { value: 'planked', name: 'planked' },
]

type Match = 'book' | 'slip' | 'reverse slip' | 'slip-centre-book'

const BOOK_OR_SLIP: readonly { readonly value: Match; readonly name: string }[] = [
  { value: 'book', name: 'book' },
  { value: 'slip', name: 'slip' },
]

/** The matches that a pattern can be laid in. */
export const matchesOf = ({ pattern }: Recipe) =>
  pattern === 'strips'
    ? ([
        ...BOOK_OR_SLIP,
        { value: 'reverse slip', name: 'reverse slip' },
        { value: 'slip-centre-book', name: 'slip-centre-book' },
      ] as const)
    : BOOK_OR_SLIP

export const arrangementOf = ({ recipe }: Part): Arrangement => faceName(recipe) as Arrangement

/** Four pieces, whatever else is decided, or as many as the widths that were typed make. */
export const hasFixedCount = (recipe: Recipe): boolean =>
  recipe.pattern === 'diamond' ||
  recipe.pattern === 'box' ||
  (recipe.pattern === 'planks' && recipe.widths !== 'seeded')

export function arrangementPatch(arrangement: Arrangement): RecipePatch {
  switch (arrangement) {
    case 'four-way':
    case 'end match':
    case 'radial':
    case 'herringbone':
      return { pattern: arrangement }
    case 'parquet':
      return { pattern: 'parquet', strips: 1 }
    case 'basket':
      return { pattern: 'parquet', strips: 3 }
    case 'random':
    case 'planked':
      return { pattern: 'planks', look: arrangement }
    case 'diamond':
      return { pattern: 'diamond', runs: 'round' }
    case 'reverse diamond':
      return { pattern: 'diamond', runs: 'to the centre' }
    case 'box':
      return { pattern: 'box', grain: 'along the edges' }
    case 'reverse box':
      return { pattern: 'box', grain: 'across the edges' }
    default:
      return { pattern: 'strips', arrangement }
  }
}

/** What choosing a pattern decides: the pattern, and what tells it from others of its kind; the rest stays, or is usual. */
export const patternPatch = (recipe: Recipe): RecipePatch =>
  recipe.pattern === 'strips'
    ? { pattern: 'strips', match: recipe.match }
    : arrangementPatch(faceName(recipe) as Arrangement)

/** Puts a change of the recipe through the door, with a label that says what it was. */
export const decideRecipe = (workshop: Workshop, part: Part, label: string, patch: RecipePatch): boolean =>
  workshop.act(`${part.name}: ${label}`, changeRecipe(workshop.job, part.id, patch))

export const decidePart = (workshop: Workshop, part: Part, label: string, patch: PartPatch): boolean =>
  workshop.act(`${part.name}: ${label}`, changePart(workshop.job, part.id, patch))
