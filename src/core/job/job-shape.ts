import * as v from 'valibot'
import { flitchShape } from './flitch-shape'
import { MOST_FLITCHES, MOST_PARTS } from './limits'
import { pairShape, partShape, shopShape } from './part-shape'
import { pressRoomShape } from './press-shape'
import { placeInWords } from './place-words'
import { aName, oneOf } from './shape-pieces'
import { ok, refused, type Result } from '../result'
import type { FormTrouble } from './trouble'

/** A job.json of the newest version. `$schema` is for the editors in which a file is written by hand. */
const jobShape = v.strictObject({
  $schema: v.optional(v.string('a text')),
  format: v.literal('leafturn job'),
  version: v.number('a number'),
  name: v.optional(aName),
  unit: v.optional(oneOf(['mm', 'in'])),
  shop: v.optional(shopShape),
  pressRoom: v.optional(pressRoomShape),
  flitches: v.optional(
    v.pipe(v.array(flitchShape, 'a list'), v.maxLength(MOST_FLITCHES, `a list of at most ${MOST_FLITCHES} flitches`)),
    [],
  ),
  parts: v.optional(
    v.pipe(v.array(partShape, 'a list'), v.maxLength(MOST_PARTS, `a list of at most ${MOST_PARTS} parts`)),
    [],
  ),
  pairs: v.optional(
    v.pipe(v.array(pairShape, 'a list'), v.maxLength(MOST_PARTS, `a list of at most ${MOST_PARTS} pairs`)),
    [],
  ),
})

export type JobInFile = v.InferOutput<typeof jobShape>

/** Whether parsed JSON has the form of a job; if not, the first thing that is wrong, an unknown field before others. */
export function readShape(json: unknown): Result<JobInFile, FormTrouble> {
  const read = v.safeParse(jobShape, json)
  if (read.success) return ok(read.output)
  return refused(asTrouble(json, read.issues.find(isUnknownField) ?? read.issues[0]))
}

// a misspelt field shows up twice, as one that is missing and one too many: the second says more
const isUnknownField = (issue: v.BaseIssue<unknown>): boolean =>
  issue.type === 'strict_object' && issue.expected === 'never'

function asTrouble(json: unknown, issue: v.BaseIssue<unknown>): FormTrouble {
  const path = (issue.path ?? []).map(({ key }) => key)
  if (isUnknownField(issue)) {
    return { trouble: 'unknown field', place: placeInWords(json, path.slice(0, -1)), field: String(path.at(-1)) }
  }
  const place = placeInWords(json, path)
  if (issue.received === 'undefined') return { trouble: 'missing', place }
  const wanted =
    issue.type === 'strict_object' ? 'an object' : issue.type === 'literal' ? issue.expected : issue.message
  return { trouble: 'wrong kind', place, wanted: wanted ?? 'something else', found: inWords(issue.input) }
}

function inWords(found: unknown): string {
  if (Array.isArray(found)) return found.length === 1 ? 'a list of 1' : `a list of ${found.length}`
  if (typeof found === 'object' && found !== null) return 'an object'
  if (typeof found === 'string') return `“${found.length > 40 ? `${found.slice(0, 40)}…` : found}”`
  return String(found)
}
