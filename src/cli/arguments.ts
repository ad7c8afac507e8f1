import { ok, refused, type Result } from '../core/result'
import { customPaper, LARGEST_PAGE, paperOf, SMALLEST_PAPER, type Paper } from '../documents/paper'
import { BAR_LIMITS, CHECK_BAR, correctionMeasured } from '../documents/pdf/correction'
import type { Printing } from '../documents/pdf/printing'

export const USAGE = `npm run sheets -- <job file> <folder> [options]
  ring-marks in place of the job file: the cards to photograph leaves with
  --paper a4|a3|a2|a1|a0|letter|legal|tabloid|arch-c|arch-d|arch-e|roll-610|roll-914, or 500x700 in mm
  --only a,b       parts, sheets or files by their names, e.g. door-left,templates
  --correct-x mm   what the 100 mm bar across the short side measured
  --correct-y mm   what the 100 mm bar along the long side measured
  --join overlap|butt   how pages of one drawing meet
  --kerf mm        what a beam or cutter takes away, for the SVG and DXF of the templates`

export interface Wanted {
  readonly jobFile: string
  readonly folder: string
  readonly printing: Printing
  /** Plain names of parts, sheets or kinds of file; empty for all. */
  readonly only: readonly string[]
  readonly kerf: number
}

const OPTIONS = ['paper', 'only', 'correct-x', 'correct-y', 'join', 'kerf'] as const
type Option = (typeof OPTIONS)[number]

const isOption = (name: string): name is Option => (OPTIONS as readonly string[]).includes(name)

/** What is asked for on the command line, or a sentence that says what is wrong with it. */
export function readArguments(given: readonly string[]): Result<Wanted, string> {
  const sorted = sortedWords(given)
  if (!sorted.ok) return sorted
  const { plain, options } = sorted.value
  const [jobFile, folder, extra] = plain
  if (jobFile === undefined || folder === undefined) return refused(`A job file and a folder are wanted. ${USAGE}`)
  if (extra !== undefined) return refused(`“${extra}” is one word too many. ${USAGE}`)
  const printing = readPrinting(options)
  if (!printing.ok) return printing
  const kerf = readKerf(options.get('kerf'))
  if (!kerf.ok) return kerf
  const only = (options.get('only') ?? '').split(',').map(trimmed).filter(Boolean)
  return ok({ jobFile, folder, printing: printing.value, only, kerf: kerf.value })
}

const trimmed = (word: string): string => word.trim()

function sortedWords(given: readonly string[]) {
  const plain: string[] = []
  const options = new Map<Option, string>()
  for (let i = 0; i < given.length; i++) {
    const word = given[i]!
    if (!word.startsWith('--')) {
      plain.push(word)
      continue
    }
    const name = word.slice(2)
    if (!isOption(name)) return refused(`${word} is not known. ${USAGE}`)
    const value = given[++i]
    if (value === undefined) return refused(`${word} wants a value. ${USAGE}`)
    options.set(name, value)
  }
  return ok({ plain, options })
}

function readPrinting(options: ReadonlyMap<Option, string>): Result<Printing, string> {
  const paper = readPaper(options.get('paper') ?? 'a4')
  if (!paper.ok) return paper
  const joining = options.get('join') ?? 'overlap'
  if (joining !== 'overlap' && joining !== 'butt')
    return refused(`“${joining}” is no way for pages to meet: overlap or butt.`)
  const across = readBar('--correct-x', options.get('correct-x'))
  if (!across.ok) return across
  const along = readBar('--correct-y', options.get('correct-y'))
  if (!along.ok) return along
  const correction = correctionMeasured({ across: across.value, along: along.value })
  if (!correction.ok) {
    const { bar, measured, least, most } = correction.reason
    const option = bar === 'across' ? '--correct-x' : '--correct-y'
    return refused(`${option} ${measured}: a bar of ${CHECK_BAR} mm measures ${least} to ${most} mm.`)
  }
  return ok({ paper: paper.value, joining, correction: correction.value })
}

function readPaper(name: string): Result<Paper, string> {
  const known = paperOf(name.toLowerCase())
  if (known) return ok(known)
  const size = /^(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)$/i.exec(name)
  if (!size) return refused(`“${name}” is not a paper that is known. ${USAGE}`)
  const own = customPaper(Number(size[1]), Number(size[2]))
  if (own.ok) return ok({ ...own.value, id: name.toLowerCase(), name: `${size[1]} × ${size[2]} mm` })
  return refused(`A paper of ${own.reason.length} mm can’t be printed on: ${SMALLEST_PAPER} to ${LARGEST_PAGE} mm.`)
}

function readBar(option: string, typed: string | undefined): Result<number, string> {
  const length = typed === undefined ? CHECK_BAR : numberIn(typed)
  if (length !== null) return ok(length)
  return refused(`${option} wants a length in mm from ${BAR_LIMITS.least} to ${BAR_LIMITS.most}, not “${typed}”.`)
}

/** The widest beam or cutter, mm. */
const WIDEST_KERF = 30

function readKerf(typed: string | undefined): Result<number, string> {
  const width = typed === undefined ? 0 : numberIn(typed)
  if (width !== null && width >= 0 && width <= WIDEST_KERF) return ok(width)
  return refused(`--kerf wants a width in mm from 0 to ${WIDEST_KERF}, not “${typed}”.`)
}

/** A plain number, a point or a comma for its decimals; null for anything else. */
function numberIn(typed: string): number | null {
  const plain = typed.trim().replace(/^(\d+),(\d+)$/, '$1.$2')
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : null
}
