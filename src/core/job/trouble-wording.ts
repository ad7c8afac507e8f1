import type { OutlineTrouble } from '../geometry/outline-check'
import { pressingTroubles, roomTroubles } from '../press/press-trouble'
import type { Limits } from './limits'
import type { FormTrouble, JobTrouble, MeaningTrouble } from './trouble'

/** How a length is shown; millimetres, as in the file, unless the shop's own way is given. */
export type LengthWords = (mm: number) => string

const inMillimetres: LengthWords = (mm) => `${tidy(mm)} mm`

/** One sentence, or two, that name the place, the value and the limit. */
export function jobSentence(trouble: JobTrouble, length: LengthWords = inMillimetres): string {
  return 'place' in trouble ? capital(sentence(trouble, length)) : formSentence(trouble)
}

function formSentence(trouble: Exclude<FormTrouble, { place: string }>): string {
  switch (trouble.trouble) {
    case 'empty':
      return 'The file is empty.'
    case 'not json':
      return `This is not well-formed JSON${where(trouble.line, trouble.column)}.`
    case 'not a job':
      return trouble.format === null
        ? 'This is not a Leafturn job: it does not begin with "format": "leafturn job".'
        : `This is not a Leafturn job: its format is “${trouble.format}”, not “leafturn job”.`
    case 'no version':
      return `The job does not say its version: a whole number from 1 is wanted, not ${trouble.found}.`
    case 'newer version':
      return `The job was saved in version ${trouble.version} of the format, and this program reads up to ${trouble.newest}. A newer Leafturn is needed to open it.`
  }
}

function sentence(trouble: Extract<JobTrouble, { place: string }>, length: LengthWords): string {
  switch (trouble.trouble) {
    case 'missing':
      return `${trouble.place} is missing.`
    case 'unknown field':
      return `${trouble.place}${trouble.place.includes(':') ? ',' : ':'} “${trouble.field}” is not a field that belongs there. It may be misspelt.`
    case 'wrong kind':
      return `${trouble.place} should be ${trouble.wanted}, not ${trouble.found}.`
    default:
      return meaningSentence(trouble, length)
  }
}

function meaningSentence(trouble: MeaningTrouble, length: LengthWords): string {
  switch (trouble.trouble) {
    case 'out of limits':
      return limitSentence(trouble.place, trouble.value, trouble.limits, length)
    case 'too many':
      return `${trouble.place} has ${trouble.value} ${trouble.things}; ${trouble.limit} is the most.`
    case 'bad outline':
      return `${trouble.place} ${outlineFault(trouble.fault, length)}.`
    case 'bad panel outline':
      return `${trouble.place} ${outlineFault(trouble.fault, length)}.`
    case 'repeated leaf':
      return `${trouble.place}: leaf ${trouble.leaf} is listed twice.`
    case 'repeated id':
      return `${trouble.place}: the id “${trouble.id}” is taken already.`
    case 'no such flitch':
      return `${trouble.place} names the flitch “${trouble.flitch}”, which is not in this job.`
    case 'no such leaf':
      return `${trouble.place} names leaf ${trouble.leaf}, which is not in the flitch.`
    case 'no length':
      return `${trouble.place} begins and ends at the same point.`
    case 'nothing left':
      return `${trouble.place} leaves ${length(trouble.value)} of the panel; more than ${length(0)} must be left.`
    case 'no field':
      return `${trouble.place} takes ${length(trouble.value)} off every edge, string included: that leaves no whole field inside. Make it narrower.`
    case 'not together':
      return `${trouble.place}: “${trouble.value}” goes with “${trouble.needs}” alone.`
    case 'bad pair':
      return `${trouble.place}${PAIR_WORDS[trouble.why](trouble.part)}.`
    case 'count not taken':
      return `${trouble.place} is ${tidy(trouble.value)}; ${countWords(trouble)}.`
    case 'window not turned':
      return trouble.why === 'grain'
        ? `${trouble.place}: the window is turned by ${tidy(trouble.degrees)}°; a window is turned on burl alone, which has no grain line. Any other figure takes 0°.`
        : `${trouble.place}: the window is turned by ${tidy(trouble.degrees)}°; a running match takes 0° alone, for it takes each leaf as wide as it goes along the grain.`
    case 'bad pressing':
      return `${trouble.place}: ${small(pressingTroubles(trouble.pressing, length)[0] ?? '')}`
    case 'bad press room':
      return `${trouble.place}: ${small(roomTroubles(trouble.room, length)[0] ?? '')}`
    case 'first leaf drifts':
      return `${trouble.place} must be 0: drift is measured from leaf ${trouble.leaf}, the first of its flitch.`
  }
}

const PAIR_WORDS: Readonly<Record<Extract<MeaningTrouble, { trouble: 'bad pair' }>['why'], (part: string) => string>> =
  {
    'not there': (part) => ` names the part “${part}”, which is not in this job`,
    itself: (part) => ` ties the part “${part}” to itself`,
    'first twice': (part) => `: another part follows “${part}” already`,
    'second twice': (part) => `: “${part}” follows another part already`,
    'in a circle': (part) => `: “${part}” would follow itself, round by way of the others`,
  }

/** “a four-way face takes a multiple of 4, from 4 to 64”. */
function countWords({ pattern, taken: { min, max, step } }: Extract<MeaningTrouble, { trouble: 'count not taken' }>) {
  const face = `${/^[aeiou]/.test(pattern) ? 'an' : 'a'} ${pattern} face`
  if (min === max) return `${face} takes ${min} leaves, no more and no fewer`
  return `${face} takes ${step > 1 ? `a multiple of ${step}, ` : ''}from ${min} to ${max} leaves`
}

function outlineFault<S extends 'leaf' | 'panel'>(
  { reason, at, edges: [first, second] }: OutlineTrouble<S>,
  length: LengthWords,
): string {
  const place = `${length(at.x)} across and ${length(at.y)} along`
  switch (reason) {
    case 'crossed':
      return `crosses or touches itself at ${place}, where edges ${first + 1} and ${second + 1} meet`
    case 'no area':
      return 'encloses no area'
    case 'too few points':
      return 'has fewer than 3 points that are apart'
    case 'too far out':
    case 'not a number':
      return `has a point, number ${first + 1}, that can't be drawn`
  }
}

function limitSentence(place: string, value: number, limits: Limits, length: LengthWords): string {
  const words = (n: number) => (limits.unit === 'mm' ? length(n) : limits.unit === 'degrees' ? `${tidy(n)}°` : tidy(n))
  if (Number.isNaN(value)) return `${place} is not a number.`
  if (!Number.isFinite(value)) return `${place} is endless; ${words(limits.most)} is the most.`
  if (value > limits.most) return `${place} is ${words(value)}; ${words(limits.most)} is the most.`
  if (value < limits.least && !limits.above) return `${place} is ${words(value)}; ${words(limits.least)} is the least.`
  if (value <= limits.least && limits.above)
    return `${place} is ${words(value)}; it must be more than ${words(limits.least)}.`
  return `${place} is ${words(value)}; it must be a whole number.`
}

const where = (line: number | null, column: number | null): string =>
  line === null ? '' : ` (line ${line}${column === null ? '' : `, column ${column}`})`

const tidy = (n: number): string => String(Math.round(n * 1e6) / 1e6)

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
