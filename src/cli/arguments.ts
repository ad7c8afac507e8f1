import { ok, refused, type Result } from '../core/result'
import { paperOf, type Paper } from '../documents/paper'

export const USAGE = 'npm run sheets -- <job file> <folder> [--paper a4|letter|a3|tabloid]'

export interface Wanted {
  readonly jobFile: string
  readonly folder: string
  readonly paper: Paper
}

/** What is asked for on the command line, or a sentence that says what is wrong with it. */
export function readArguments(given: readonly string[]): Result<Wanted, string> {
  const plain: string[] = []
  let paper = 'a4'
  for (let i = 0; i < given.length; i++) {
    const word = given[i]!
    if (word === '--paper') {
      const named = given[++i]
      if (named === undefined) return refused(`--paper wants the name of a paper. ${USAGE}`)
      paper = named.toLowerCase()
    } else if (word.startsWith('--')) return refused(`${word} is not known. ${USAGE}`)
    else plain.push(word)
  }
  const [jobFile, folder, extra] = plain
  if (jobFile === undefined || folder === undefined) return refused(`A job file and a folder are wanted. ${USAGE}`)
  if (extra !== undefined) return refused(`“${extra}” is one word too many. ${USAGE}`)
  const found = paperOf(paper)
  return found ? ok({ jobFile, folder, paper: found }) : refused(`“${paper}” is not a paper that is known. ${USAGE}`)
}
