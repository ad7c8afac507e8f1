import type { Drawing } from '../drawing/drawing'
import { withoutMemory } from '../fit/answers'
import { layFace } from '../fit/lay-face'
import { allFrom } from '../job/part-flitches'
import { blankLeaf, rectangle, usualFlitch, usualPart, usualRecipe } from '../job/usual'
import type { HerringboneRecipe, ParquetRecipe, Recipe } from '../patterns/recipe'
import { USUAL_SHOP } from '../shop'
import { drawPattern } from './draw-pattern'
import { faceName } from './recipe-sentence'

/** What a pattern is called: leaves side by side by their match, every other face by its own name. */
export const patternName = (recipe: Recipe): string => (recipe.pattern === 'strips' ? recipe.match : faceName(recipe))

/** One recipe for each pattern, with so few leaves that a small picture shows how they are moved. */
export const PATTERN_SAMPLES: readonly Recipe[] = [
  ...(['book', 'slip', 'reverse slip', 'slip-centre-book'] as const).map((match): Recipe => ({
    ...usualRecipe('strips', 1),
    match,
    count: 4,
    laying: 'left to right',
  })),
  { ...usualRecipe('four-way', 1), count: 4, laying: 'left to right' },
  { ...usualRecipe('end match', 1), count: 8, laying: 'left to right' },
  { ...usualRecipe('radial', 1), count: 8 },
  usualRecipe('diamond', 1),
  { ...usualRecipe('diamond', 1), runs: 'to the centre' },
  usualRecipe('box', 1),
  { ...usualRecipe('box', 1), grain: 'across the edges' },
  herringbone(),
  parquet({ columns: 3, rows: 3, count: 9 }),
  parquet({ columns: 2, rows: 2, strips: 3, count: 12 }),
  { ...usualRecipe('planks', 1), count: 4 },
  { ...usualRecipe('planks', 1), look: 'planked', count: 6, seed: 4, order: 'shuffled', ends: 'mixed' },
]

function herringbone(): HerringboneRecipe {
  return { ...usualRecipe('herringbone', 1), stripWidth: 190, count: 10 }
}

function parquet(of: Partial<ParquetRecipe>): ParquetRecipe {
  return { ...usualRecipe('parquet', 1), ...of }
}

const WIDTH = 640
const LENGTH = 560

/** The small picture of a pattern, drawn from the pattern itself on leaves of one made-up figure. */
export function drawSample(recipe: Recipe): Drawing {
  const leaves = Array.from({ length: 24 }, (_, i) => blankLeaf(i + 1))
  const flitch = usualFlitch('sample', 'Sample', rectangle(1400, 1800), leaves)
  const part = {
    ...usualPart('sample', patternName(recipe), WIDTH, LENGTH, flitch),
    overhang: { top: 0, right: 0, bottom: 0, left: 0 },
    recipe,
  }
  return drawPattern(layFace(part, allFrom(flitch), USUAL_SHOP, withoutMemory), part.name, SMALL_TAGS)
}

/** Shown as small as a thumb, tags must be larger against the picture. */
const SMALL_TAGS = 2.2
