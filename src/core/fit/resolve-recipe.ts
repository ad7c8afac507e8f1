import { regionBox, boxHeight, boxWidth, type Box } from '../geometry/box'
import type { Point } from '../geometry/point'
import type { Region } from '../geometry/polygon'
import type { Part } from '../job/job'
import type { Band } from '../patterns/columns'
import { BOX_COUNT } from '../patterns/box'
import { DIAMOND_COUNT } from '../patterns/diamond'
import { countTaken, nextCountTaken } from '../patterns/count-taken'
import { FOUR_WAY_COUNTS } from '../patterns/four-way'
import type { Sizes } from '../patterns/pattern'
import { leastHerringboneLeaves, stripsInColumn } from '../patterns/herringbone'
import { leastParquetLeaves, parquetPieces } from '../patterns/parquet'
import { leavesEach } from '../patterns/jointed-sheet'
import { PLANK_COUNTS, plankCountByHand } from '../patterns/planks'
import { RADIAL_COUNTS } from '../patterns/radial'
import type { LeafCount, Recipe, StripRecipe } from '../patterns/recipe'
import { STRIP_COUNTS } from '../patterns/strips'
import {
  balanceCountAfter,
  balanceCountBefore,
  centreCountAfter,
  centreCountBefore,
  type CountDemand,
} from './leaf-count'
import { WINDOW } from '../faces/window-group'
import { runningBands, type RunningDemand, type RunningLeaf } from './running-bands'

/** A recipe with its open values found: how many leaves, and for a running match how wide each. */
export interface Resolved {
  readonly count: number
  readonly bands: readonly Band[] | null
  /** The position that the bands were found for. */
  readonly position: Point<'leaf'> | null
  /** Width of the sheet for which a running match finds no wood. */
  readonly bare: number
}

/** The leaves that a run can draw on, in order: where each is sound, and how its window is shifted. */
export type RunLeaves = readonly RunningLeaf[]

/**
 * Finds the count of a recipe and the bands of a running match. `works` says whether a face of that many leaves has any
 * play; the fewest for which it does are taken, or, if none is found, as many as the widest leaf would need.
 */
export function resolveRecipe(
  part: Part,
  sizes: Sizes,
  sheet: Box<'panel'>,
  leaves: RunLeaves,
  works: (count: number) => boolean,
): Resolved {
  const { recipe } = part
  if (recipe.pattern === 'strips' && recipe.arrangement === 'running')
    return resolveRunning(part, recipe, sheet, leaves)
  const plain = (count: number): Resolved => ({ count, bands: null, position: null, bare: 0 })
  const fixed = fixedCount(recipe, sizes)
  if (fixed !== null) return plain(fixed)
  const least = leastCount(recipe, sizes, longest(leaves), {
    ...sizesDemand(sizes),
    usable: widest(leaves) - 2 * part.allowance,
  })
  const step = countStep(recipe)
  if (!Number.isFinite(step)) return plain(least)
  const most = Math.max(least, Math.min(leaves.length / leavesEach(recipe), mostCount(recipe, sizes, least)))
  for (let count = least; count <= most; count += step) if (works(count)) return plain(count)
  return plain(least)
}

/** How many larger counts are tried before the search gives up: strips then have become very narrow. */
const TRIES = 8

function resolveRunning(part: Part, recipe: StripRecipe, sheet: Box<'panel'>, leaves: RunLeaves): Resolved {
  const demand = {
    width: boxWidth(sheet),
    above: -sheet.min.y,
    below: sheet.max.y,
    allowance: part.allowance,
  }
  const saved = part.positions[WINDOW]
  const limit = recipe.count === 'fewest' ? leaves.length : Math.min(leaves.length, recipe.count)
  const found = runningBands(recipe, demand, leaves.slice(0, limit), saved?.y ?? null)
  if (found && found.bare < 1e-6) return { ...found, count: found.bands.length }
  return shortRunning(recipe, demand, leaves, found?.position ?? null, recipe.count)
}

/** Bands of one width, as if all leaves were as wide as the widest: something to show, and to say what is missing. */
function shortRunning(
  recipe: StripRecipe,
  { width, allowance }: RunningDemand,
  leaves: RunLeaves,
  position: Point<'leaf'> | null,
  asked: LeafCount,
): Resolved {
  const usable = Math.max(20, widest(leaves) - 2 * allowance)
  const count =
    asked === 'fewest'
      ? Math.min(STRIP_COUNTS.max, Math.max(1, Math.ceil(width / usable - 1e-9)))
      : allowedCount(recipe, asked)
  const each = Math.max(usable, width / count)
  return {
    count,
    bands: Array.from({ length: count }, () => ({ low: -each / 2, high: each / 2 })),
    position,
    bare: Math.max(0, width - count * usable),
  }
}

const sizesDemand = ({ width, beyond }: Sizes) => ({ width, left: beyond.left, right: beyond.right })

const longest = (leaves: RunLeaves): number =>
  Math.max(0, ...leaves.map(({ usable }) => (usable.length ? boxHeight(regionBox(usable as Region<'leaf'>)) : 0)))

const widest = (leaves: RunLeaves): number =>
  Math.max(0, ...leaves.map(({ usable }) => (usable.length ? boxWidth(regionBox(usable as Region<'leaf'>)) : 0)))

/** The fewest that a recipe could do with, going by width alone. */
function leastCount(recipe: Recipe, sizes: Sizes, long: number, demand: CountDemand): number {
  // too narrow to be told from nothing: a count that at least can be drawn
  const sane = { ...demand, usable: Math.max(20, demand.usable) }
  switch (recipe.pattern) {
    case 'radial':
      return RADIAL_COUNTS.min
    case 'diamond':
      return DIAMOND_COUNT
    case 'box':
      return BOX_COUNT
    case 'herringbone':
      return leastHerringboneLeaves(recipe, sizes, long)
    case 'parquet':
      return leastParquetLeaves(recipe, sizes, long)
    case 'planks':
      return Math.min(PLANK_COUNTS.max, balanceCountAfter(sane))
    case 'end match':
      return allowedCount(
        recipe,
        recipe.rows * (recipe.equal === 'before trimming' ? balanceCountBefore : balanceCountAfter)(sane),
      )
    case 'four-way':
      return allowedCount(
        recipe,
        2 * (recipe.equal === 'before trimming' ? centreCountBefore(sane) : centreCountAfter(sane)),
      )
    case 'strips': {
      const centred = recipe.arrangement === 'centre balance'
      const before = recipe.equal === 'before trimming'
      const wide = { ...sane, usable: Math.max(sane.usable, Math.max(sane.left, sane.right) + 10) }
      const count = centred
        ? (before ? centreCountBefore : centreCountAfter)(wide)
        : (before ? balanceCountBefore : balanceCountAfter)(wide)
      return allowedCount(recipe, Math.min(STRIP_COUNTS.max, withParity(recipe, count)))
    }
  }
}

const withParity = (recipe: StripRecipe, count: number): number => {
  if (recipe.arrangement !== 'balance' || recipe.centreOn === 'either') return count
  const wanted = recipe.centreOn === 'seam' ? 0 : 1
  return count % 2 === wanted ? count : count + 1
}

function countStep(recipe: Recipe): number {
  switch (recipe.pattern) {
    case 'four-way':
      return FOUR_WAY_COUNTS.step
    case 'radial':
      return RADIAL_COUNTS.step
    case 'end match':
      return recipe.rows
    case 'herringbone':
      return recipe.columns
    case 'parquet':
    case 'planks':
      return 1
    case 'diamond':
    case 'box':
      return Infinity
    case 'strips':
      return recipe.arrangement === 'centre balance' || recipe.centreOn !== 'either' ? 2 : 1
  }
}

/** What is asked for; null where the fewest are to be found. */
function fixedCount(recipe: Recipe, sizes: Sizes): number | null {
  if (recipe.pattern === 'planks' && recipe.widths !== 'seeded') return plankCountByHand(recipe.widths, sizes.width)
  if (recipe.count === 'fewest') return null
  // no more leaves than there are pieces
  if (recipe.pattern === 'parquet') return Math.min(parquetPieces(recipe), recipe.count)
  if (recipe.pattern === 'herringbone')
    return Math.min(recipe.columns * stripsInColumn(recipe, sizes), allowedCount(recipe, recipe.count))
  return allowedCount(recipe, recipe.count)
}

/** Small pieces are tried down to one a leaf; strips until they have become very narrow. */
function mostCount(recipe: Recipe, sizes: Sizes, least: number): number {
  if (recipe.pattern === 'parquet') return parquetPieces(recipe)
  if (recipe.pattern === 'herringbone') return recipe.columns * stripsInColumn(recipe, sizes)
  return least + TRIES * countStep(recipe)
}

/** The next count that the pattern can lay; one that a person asked for is such a one already. */
const allowedCount = (recipe: Recipe, count: number): number => nextCountTaken(count, countTaken(recipe))
