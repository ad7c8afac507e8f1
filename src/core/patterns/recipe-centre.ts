import { point, type Point } from '../geometry/point'
import type { Recipe } from './recipe'

/** Where the seams of a face are to meet: the middle of the panel, unless a sunburst has its centre elsewhere. */
export const centreOfRecipe = (recipe: Recipe): Point<'panel'> =>
  recipe.pattern === 'radial' ? recipe.centre : point(0, 0)
