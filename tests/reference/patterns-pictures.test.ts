/**
 * [P7] Every pattern has a picture in docs/patterns, drawn by the program from the pattern as it is now, and a section in
 *   docs/patterns.md with the sentence that says how its leaves are moved. `npx vitest run tests/reference/patterns-pictures.test.ts --update` draws them anew.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Part } from '../../src/core/job/job'
import { rectangle } from '../../src/core/job/usual'
import { USUAL_BORDER } from '../../src/core/patterns/border'
import type { Recipe } from '../../src/core/patterns/recipe'
import { drawPattern } from '../../src/core/sheets/draw-pattern'
import { howLeavesMove } from '../../src/core/sheets/how-leaves-move'
import { writeSvg } from '../../src/documents/svg/write-svg'
import {
  allEdges,
  boxed,
  diamond,
  endMatch,
  faceOf,
  flitchOf,
  fourWay,
  herringbone,
  parquet,
  partOf,
  plainLeaves,
  planks,
  radial,
  strips,
} from '../properties/job-builders'

interface Pictured {
  readonly name: string
  readonly recipe: Recipe
  readonly size?: Pick<Part, 'width' | 'length'>
  readonly border?: Part['border']
}

const PATTERNS: readonly Pictured[] = [
  { name: 'book', recipe: strips({ count: 4 }) },
  { name: 'slip', recipe: strips({ match: 'slip', count: 4 }) },
  { name: 'reverse-slip', recipe: strips({ match: 'reverse slip', count: 4 }) },
  { name: 'slip-centre-book', recipe: strips({ match: 'slip-centre-book', count: 4 }) },
  { name: 'four-way', recipe: fourWay() },
  { name: 'end-match-column-by-column', recipe: endMatch({ count: 8, order: 'column by column' }) },
  { name: 'end-match-down-and-up', recipe: endMatch({ count: 8, order: 'down and up' }) },
  { name: 'end-match-panel', recipe: endMatch({ count: 8, order: 'panel' }) },
  { name: 'radial', recipe: radial({ count: 8 }) },
  { name: 'radial-both-ways', recipe: radial({ count: 8, order: 'both ways' }) },
  { name: 'radial-booked-pairs', recipe: radial({ count: 6, match: 'slip', eachFrom: 'booked pair' }) },
  { name: 'diamond', recipe: diamond(), size: { width: 700, length: 460 } },
  { name: 'reverse-diamond', recipe: diamond({ runs: 'to the centre' }), size: { width: 700, length: 460 } },
  { name: 'diamond-slipped-sheets', recipe: diamond({ sheetOf: 3 }), size: { width: 700, length: 460 } },
  { name: 'box', recipe: boxed(), size: { width: 700, length: 460 } },
  { name: 'reverse-box', recipe: boxed({ grain: 'across the edges' }), size: { width: 600, length: 600 } },
]

// one piece a leaf, so that the pictures show how leaves are moved
const small: readonly Pictured[] = [
  { name: 'herringbone', recipe: herringbone({ stripWidth: 130, count: 14 }) },
  { name: 'parquet', recipe: parquet({ count: 16 }), size: { width: 560, length: 560 } },
  { name: 'basket', recipe: parquet({ columns: 2, rows: 2, strips: 3, count: 12 }), size: { width: 560, length: 560 } },
  { name: 'random', recipe: planks({ count: 5 }) },
  {
    name: 'crossbanding',
    recipe: strips({ count: 4 }),
    border: { ...USUAL_BORDER, pieceLength: 220, string: { width: 4, species: 'maple' } },
  },
  { name: 'planked', recipe: planks({ look: 'planked', count: 6, seed: 4, order: 'shuffled', ends: 'mixed' }) },
]

const leaves = flitchOf({ outline: rectangle(900, 1200), leaves: plainLeaves(24) })
const page = readFileSync(new URL('../../docs/patterns.md', import.meta.url), 'utf8')

describe('the pictures', () => {
  it.each([...PATTERNS, ...small])(
    '[P7] $name',
    async ({ name, recipe, size = { width: 640, length: 560 }, border = null }) => {
      const byHand = 'laying' in recipe && recipe.pattern !== 'radial' ? { laying: 'left to right' as const } : {}
      const part = partOf({ ...size, border, overhang: allEdges(0), recipe: { ...recipe, ...byHand } as Recipe })
      const picture = writeSvg(drawPattern(faceOf(part, leaves), name))
      await expect(picture).toMatchFileSnapshot(`../../docs/patterns/${name}.svg`)
      expect(page).toContain(`(patterns/${name}.svg)`)
      expect(page.replace(/\s+/g, ' ')).toContain(howLeavesMove(recipe))
    },
  )
})
