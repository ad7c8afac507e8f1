import { BOX_COUNT } from './box'
import { DIAMOND_COUNT } from './diamond'
import { END_MATCH_COUNTS } from './end-match'
import { FOUR_WAY_COUNTS } from './four-way'
import { parquetPieces } from './parquet'
import { PLANK_COUNTS } from './planks'
import { RADIAL_COUNTS } from './radial'
import type { Recipe } from './recipe'
import { CENTRE_BOOK_COUNTS, STRIP_COUNTS } from './strips'

/** The numbers of leaves that a recipe can be laid with: from `min` to `max`, a multiple of `step`. */
export interface CountTaken {
  readonly min: number
  readonly max: number
  readonly step: number
}

/** Whether a count is a good one is said by the findings; this is what can be laid at all. */
export function countTaken(recipe: Recipe): CountTaken {
  switch (recipe.pattern) {
    case 'diamond':
      return { min: DIAMOND_COUNT, max: DIAMOND_COUNT, step: 1 }
    case 'box':
      return { min: BOX_COUNT, max: BOX_COUNT, step: 1 }
    case 'herringbone':
      return { min: recipe.columns, max: Math.floor(MOST / recipe.columns) * recipe.columns, step: recipe.columns }
    case 'parquet':
      return { min: 1, max: parquetPieces(recipe), step: 1 }
    case 'planks':
      return { ...PLANK_COUNTS, step: 1 }
    case 'four-way':
      return FOUR_WAY_COUNTS
    case 'end match': {
      const { rows } = recipe
      return { min: rows, max: Math.floor(END_MATCH_COUNTS.max / rows) * rows, step: rows }
    }
    case 'radial':
      // an odd number can be laid, with one seam that is no mirror, which is told
      return { ...RADIAL_COUNTS, step: 1 }
    case 'strips':
      return recipe.match === 'slip-centre-book' ? CENTRE_BOOK_COUNTS : { ...STRIP_COUNTS, step: 1 }
  }
}

/** Leaves of one face at most. */
const MOST = 500

/** The count itself where it can be laid, else the next one that can. */
export const nextCountTaken = (count: number, { min, max, step }: CountTaken): number =>
  Math.min(max, Math.max(min, Math.ceil(count / step) * step))

/** Whether a recipe can be laid with the number of leaves that it names. */
export const takesItsCount = (recipe: Recipe): boolean =>
  recipe.count === 'fewest' || nextCountTaken(recipe.count, countTaken(recipe)) === recipe.count
