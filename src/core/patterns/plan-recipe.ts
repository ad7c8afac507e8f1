import { planBox } from './box'
import type { Band } from './columns'
import { planDiamond } from './diamond'
import { planEndMatch } from './end-match'
import { planFourWay } from './four-way'
import { planHerringbone } from './herringbone'
import { fromBookedPairs, fromSlippedSheets } from './jointed-sheet'
import { planParquet } from './parquet'
import type { Bundle, Plan, Sizes } from './pattern'
import { planPlanks } from './planks'
import { planRadial } from './radial'
import type { Recipe } from './recipe'
import { planStrips } from './strips'

/** The cells of any recipe, once its count (and for a running match its bands) is known. */
export function planRecipe(
  recipe: Recipe,
  sizes: Sizes,
  count: number,
  bundle: Bundle,
  bands: readonly Band[] | null,
): Plan {
  switch (recipe.pattern) {
    case 'strips':
      return planStrips(recipe, sizes, count, bundle, bands)
    case 'four-way':
      return planFourWay(recipe, sizes, count, bundle)
    case 'end match':
      return planEndMatch(recipe, sizes, count, bundle)
    case 'diamond':
      return inSheets(planDiamond(recipe, sizes), sizes, recipe.sheetOf)
    case 'box':
      return inSheets(planBox(recipe, sizes), sizes, recipe.sheetOf)
    case 'herringbone':
      return planHerringbone(recipe, sizes, count)
    case 'parquet':
      return planParquet(recipe, sizes, count)
    case 'planks':
      return planPlanks(recipe, sizes, count)
    case 'radial': {
      const plan = planRadial(recipe, sizes, count, bundle)
      return recipe.eachFrom === 'one leaf' ? plan : fromBookedPairs(plan, recipe.spine, bundle)
    }
  }
}

const inSheets = (plan: Plan, sizes: Sizes, leaves: number): Plan =>
  leaves === 1 ? plan : fromSlippedSheets(plan, sizes, leaves)
