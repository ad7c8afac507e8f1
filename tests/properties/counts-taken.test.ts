/**
 * [N6] A number of leaves that a pattern can't lay is refused with what it takes, never rounded; one that no longer goes
 * with a newer decision gives way to the fewest.
 */
import { describe, expect, it } from 'vitest'
import { changeRecipe } from '../../src/core/commands/face-commands'
import { commandSentence } from '../../src/core/commands/command-trouble'
import { readMendedJob } from '../../src/core/job/read-job'
import { writeJob } from '../../src/core/job/write-job'
import type { Recipe } from '../../src/core/patterns/recipe'
import {
  boxed,
  diamond,
  endMatch,
  faceOf,
  flitchOf,
  fourWay,
  herringbone,
  jobOf,
  parquet,
  partOf,
  planks,
  radial,
  strips,
} from './job-builders'

const TABLE: readonly { recipe: Recipe; count: number; takes: string; good: number }[] = [
  { recipe: diamond(), count: 5, takes: 'a diamond face takes 4 leaves, no more and no fewer', good: 4 },
  { recipe: boxed(), count: 8, takes: 'a box face takes 4 leaves, no more and no fewer', good: 4 },
  { recipe: fourWay(), count: 6, takes: 'a four-way face takes a multiple of 4, from 4 to 64 leaves', good: 8 },
  {
    recipe: endMatch({ rows: 3 }),
    count: 7,
    takes: 'an end match face takes a multiple of 3, from 3 to 63 leaves',
    good: 6,
  },
  {
    recipe: herringbone({ columns: 4 }),
    count: 6,
    takes: 'a herringbone face takes a multiple of 4, from 4 to 500 leaves',
    good: 8,
  },
  { recipe: parquet({ columns: 3, rows: 3 }), count: 10, takes: 'a parquet face takes from 1 to 9 leaves', good: 9 },
  { recipe: planks(), count: 65, takes: 'a planks face takes from 1 to 64 leaves', good: 5 },
  { recipe: radial(), count: 5, takes: 'a radial face takes from 6 to 48 leaves', good: 7 },
  {
    recipe: strips({ match: 'slip-centre-book' }),
    count: 5,
    takes: 'a slip-centre-book match face takes a multiple of 2, from 4 to 64 leaves',
    good: 6,
  },
  { recipe: strips(), count: 65, takes: 'a book match face takes from 1 to 64 leaves', good: 3 },
]

/** What an older file with the count of each row was laid with: rounded up, but no more than the most. */
const LAID = [4, 4, 8, 9, 8, 9, 64, 6, 6, 64]

describe('a number of leaves', () => {
  it.each(TABLE.map((row, i) => ({ ...row, laid: LAID[i]! })))(
    '[N6] $recipe.pattern: $count is refused, $good is laid, and an older file with $count is opened with $laid',
    ({ recipe, count, takes, good, laid }) => {
      const job = jobOf([partOf({ recipe: { ...recipe, count: 'fewest' } })], flitchOf())
      const asked = changeRecipe(job, 'part', { count })
      expect(!asked.ok && commandSentence(asked.reason)).toBe(`Part 1, “Door”: recipe, count is ${count}; ${takes}.`)
      const file = writeJob(job).replace('"count": "fewest"', `"count": ${count}`)
      // it was rounded up before it was refused
      const read = readMendedJob(file)
      expect(read.ok && read.value.job.parts[0]!.recipe.count).toBe(laid)
      expect(read.ok && read.value.mended).toEqual([
        `Part 1, “Door”: recipe, count is ${count}; ${takes}. It is laid with ${laid}.`,
      ])
      expect(changeRecipe(job, 'part', { count: good }).ok).toBe(true)
      expect(faceOf(partOf({ recipe: { ...recipe, count: good } as Recipe })).count).toBe(good)
    },
  )

  it('[N6] that no longer goes with the rows gives way to the fewest', () => {
    const job = jobOf([partOf({ recipe: endMatch({ rows: 2, count: 8 }) })], flitchOf())
    const three = changeRecipe(job, 'part', { rows: 3 })
    expect(three.ok && three.value.parts[0]!.recipe).toMatchObject({ rows: 3, count: 'fewest' })
    const four = changeRecipe(job, 'part', { rows: 4 })
    expect(four.ok && four.value.parts[0]!.recipe).toMatchObject({ rows: 4, count: 8 })
  })
})
