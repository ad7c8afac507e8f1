/**
 * Numbers of leaves that a file may hold from before they were checked, and that no face can be laid with.
 *
 * Input: a filled job, not yet checked. Output: the job with each such number put to the next that the pattern takes, as
 * it was laid then, and a sentence for each that is told when the file is opened. A part in which anything else is wrong
 * is left for the check to refuse. Failure: none.
 */
import { countTaken, nextCountTaken } from '../patterns/count-taken'
import { partTrouble } from './check-part'
import type { Job, Part } from './job'
import { partInWords } from './place-words'
import { jobSentence } from './trouble-wording'

export interface MendedJob {
  readonly job: Job
  /** What was mended, a sentence for each. */
  readonly mended: readonly string[]
}

export function mendCounts(job: Job): MendedJob {
  const mended: string[] = []
  const parts = job.parts.map((part, nth): Part => {
    const trouble = partTrouble(part, partInWords(nth, part.name))
    const { recipe } = part
    if (trouble?.trouble !== 'count not taken' || recipe.count === 'fewest') return part
    const count = nextCountTaken(recipe.count, countTaken(recipe))
    mended.push(`${jobSentence(trouble)} It is laid with ${count}.`)
    return { ...part, recipe: { ...recipe, count } }
  })
  return mended.length === 0 ? { job, mended } : { job: { ...job, parts }, mended }
}
