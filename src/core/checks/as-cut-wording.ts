import type { AsCut, EdgeAsCut, SeamOff } from '../seams/as-cut'
import type { Side } from '../geometry/box'
import type { MeasuredAt } from '../job/job'
import type { MeasurePlace } from '../seams/sheet-measured'
import type { LengthUnit } from '../units/unit'
import { showAngle } from '../units/read-angle'
import { showLength } from '../units/show-length'

/** What the shop asks of a taped sheet, mm. */
export interface AsCutLimits {
  readonly leastOverhang: number
  /** How far the seam may be off the centre. */
  readonly offCentre: number
}

/** Less than this is not told: nobody lays a sheet finer. */
const NOT_SEEN = 0.25
const AT: Readonly<Record<Side, string>> = {
  top: 'at the top',
  bottom: 'at the bottom',
  left: 'at the left',
  right: 'at the right',
}

/** How to lay a taped sheet, and what follows: one sentence each for the bench, in the order of doing. */
export function asCutSentences(answer: AsCut, limits: AsCutLimits, unit: LengthUnit): readonly string[] {
  const say = (length: number) => showLength(Math.abs(length), unit, 'seam')
  return [offSentence(answer.byEdges, say), moveSentence(answer, say), ...outcome(answer, limits, say)].filter(
    (sentence) => sentence !== '',
  )
}

/** No sheet is jointed this far off what was planned, mm; measured so, its size was another, or the rule was misread. */
const NOT_MISCUT = 15

/** Where what was measured can't be this sheet as it is planned now; '' where it all can. */
export function farOffSentence(places: readonly MeasurePlace[], unit: LengthUnit): string {
  const say = (length: number) => showLength(length, unit, 'seam')
  const far = places.filter(({ length, planned }) => Math.abs(length - planned) > NOT_MISCUT)
  if (far.length === 0) return ''
  const told = far.map(({ label, length, planned }) => `${lowered(label)} ${say(length)}, planned ${say(planned)}`)
  return `Far off what is planned: ${told.join('; ')}. If the part was changed since the sheet was measured, measure it anew.`
}

/**
 * By how much the sheet came out narrower or wider than planned, and with a cross seam shorter or longer: each end and
 * side by the sum of its two measures. '' where it is as planned, or where what was measured can't be this sheet.
 */
export function sizeSentence(places: readonly MeasurePlace[], keeps: boolean, unit: LengthUnit): string {
  if (farOffSentence(places, unit) !== '') return ''
  const say = (length: number) => showLength(Math.abs(length), unit, 'seam')
  const more = (one: MeasuredAt, other: MeasuredAt) =>
    places.reduce((sum, { at, length, planned }) => (at === one || at === other ? sum + length - planned : sum), 0)
  const across = [more('top left', 'top right'), more('bottom left', 'bottom right')] as const
  const along = [more('left above', 'left below'), more('right above', 'right below')] as const
  const told = [
    sizeInWords(across, ['at the top', 'at the bottom'], ['narrower', 'wider'], say),
    sizeInWords(along, ['at the left', 'at the right'], ['shorter', 'longer'], say),
  ].filter((words) => words !== '')
  if (told.length === 0) return ''
  const isSmaller = [...across, ...along].some((by) => by <= -NOT_SEEN)
  return `The sheet came out ${told.join(', and ')} than planned.${isSmaller && keeps ? ' Its overhang takes that up.' : ''}`
}

/** Both ends of a sheet against the plan: told as one where they are alike. */
function sizeInWords(
  by: readonly [number, number],
  ends: readonly [string, string],
  [less, more]: readonly [string, string],
  say: Say,
): string {
  const words = by.map((one) => (Math.abs(one) < NOT_SEEN ? '' : `${say(one)} ${one < 0 ? less : more}`))
  if (words[0] === words[1]) return words[0]!
  return words.flatMap((one, i) => (one === '' ? [] : [`${one} ${ends[i]}`])).join(' and ')
}

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

type Say = (length: number) => string

function offSentence(off: SeamOff, say: Say): string {
  const places = offPlaces(off, say)
  return places === ''
    ? 'Laid by its edges, the sheet has its seam on the centre.'
    : `Laid by its edges, the sheet would have its ${places}.`
}

/** `centre seam 4.5 mm left of the centre at the top and …; cross seam …`; '' where nothing is off. */
function offPlaces({ top, bottom, left, right }: SeamOff, say: Say): string {
  const upright = endsInWords([top, bottom], ['at the top', 'at the bottom'], ['left of', 'right of'], say)
  const level = endsInWords([left ?? 0, right ?? 0], ['at the left', 'at the right'], ['above', 'below'], say)
  return [upright && `centre seam ${upright}`, level && `cross seam ${level}`]
    .filter((words) => words)
    .join(', and its ')
}

/** Both ends of a seam against the centre line: told as one where they are alike. */
function endsInWords(
  offs: readonly [number, number],
  ends: readonly [string, string],
  ways: readonly [string, string],
  say: Say,
): string {
  if (offs.every((off) => Math.abs(off) < NOT_SEEN)) return ''
  const words = offs.map((off) =>
    Math.abs(off) < NOT_SEEN ? 'on the centre' : `${say(off)} ${off < 0 ? ways[0] : ways[1]} the centre`,
  )
  return words[0] === words[1] ? words[0]! : `${words[0]} ${ends[0]} and ${words[1]} ${ends[1]}`
}

function moveSentence({ byEdges, off, turn }: AsCut, say: Say): string {
  const up = ((off.left ?? 0) + (off.right ?? 0) - (byEdges.left ?? 0) - (byEdges.right ?? 0)) / 2
  const [top, bottom] = [off.top - byEdges.top, off.bottom - byEdges.bottom]
  const degrees = Math.abs((turn * 180) / Math.PI)
  const way = (by: number) => `${say(by)} to the ${by < 0 ? 'left' : 'right'}`
  const ends = [moved('its top end', top, way), moved('its bottom end', bottom, way)]
  const across = way(top) === way(bottom) ? [moved('the sheet', top, way)] : ends
  const moves = [...across, moved('the sheet', up, (by) => `${say(by)} ${by < 0 ? 'up' : 'down'}`)].filter(
    (move) => move,
  )
  if (moves.length === 0) return ''
  const round = degrees < 0.01 ? '' : `, a turn of ${showAngle(degrees)} ${turn > 0 ? 'clockwise' : 'anticlockwise'}`
  return `From there move ${listed(moves)}${round}.`
}

const moved = (what: string, by: number, way: (by: number) => string): string =>
  Math.abs(by) < NOT_SEEN ? '' : `${what} ${way(by)}`

function outcome({ keeps, onCentre, off, edges }: AsCut, limits: AsCutLimits, say: Say): readonly string[] {
  const least = say(limits.leastOverhang)
  if (keeps && onCentre) return [`The seam lies on the centre, and every edge stands at least ${least} over the core.`]
  const lies = offPlaces(off, say)
  const where =
    lies === '' ? 'The seam still lies on the centre.' : `That leaves the ${lies}${judged(off, limits, say)}.`
  if (keeps)
    return [
      `With the seam on the centre an edge would stand less than ${least} over; so every edge has that much.`,
      where,
    ]
  return [
    `The sheet is too small for ${least} over the core on both sides: ${edges
      .filter((edge) => !edge.keeps)
      .map((edge) => lackOf(edge, limits.leastOverhang, say))
      .join('; ')}. What is lacking is split evenly. Tape on a strip, or cut the sheet anew.`,
    where,
  ]
}

function judged({ top, bottom, left, right }: SeamOff, { offCentre }: AsCutLimits, say: Say): string {
  const worst = Math.max(...[top, bottom, left ?? 0, right ?? 0].map(Math.abs))
  return worst > offCentre ? `; this shop allows ${say(offCentre)}` : `, within the ${say(offCentre)} this shop allows`
}

function lackOf({ side, ends }: EdgeAsCut, least: number, say: Say): string {
  const worst = ends.reduce((most, end) => (end.over < most.over ? end : most))
  const bare = worst.over < 0 ? `leaves the core bare by ${say(worst.over)}` : `has only ${say(worst.over)}`
  return `the ${side} edge ${bare} ${AT[worst.at]}, ${say(least - worst.over)} too little`
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
