import type { Finding, FindingCode, Remedy } from '../finding'
import { WHOLE_RUN } from '../job/make-up'
import { ofFlitch } from '../leaves/flitch-words'
import type { LengthUnit } from '../units/unit'
import { showLength } from '../units/show-length'
import { breaksWords, diamondWords, nothingAskedWords, offsetWords } from './claim-wording'
import { pairMeetsWords, pairVoidWords } from './pair-wording'

type Words = (finding: Finding, say: Say) => string

/** Lengths as this job shows them: seams and trims finely, places on a leaf as a rule can be read. */
interface Say {
  readonly seam: (length: number) => string
  readonly place: (length: number) => string
  readonly depth: (length: number) => string
  readonly thickness: (length: number) => string
}

const sayIn = (unit: LengthUnit): Say => ({
  seam: (length) => showLength(length, unit, 'seam'),
  place: (length) => showLength(length, unit, 'place'),
  depth: (length) => showLength(length, unit, 'depth'),
  thickness: (length) => showLength(length, unit, 'exact'),
})

const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`

const text = (finding: Finding, key: string): string => String(finding.about[key] ?? '')
const number = (finding: Finding, key: string): number => Number(finding.about[key] ?? 0)
/** A leaf by its number, and its flitch where that is not the field's: `7`, `7 of “Maple”`. */
const leafOf = (f: Finding): string =>
  `${text(f, 'leaf')}${ofFlitch(f.about['ofFlitch'] === undefined ? null : text(f, 'ofFlitch'))}`
const measured = (finding: Finding): number => finding.measured ?? 0
const limit = (finding: Finding): number => finding.limit ?? 0

/** `an end`, `both ends` and the like for lacks: which side of the leaf, as the maker holds it. */
const SIDE_WORDS: Readonly<Record<string, string>> = {
  'numbered end': 'at its numbered end',
  'far end': 'at its far end',
  'left edge': 'at its left edge',
  'right edge': 'at its right edge',
}

const DEFECT_WORDS: Readonly<Record<string, string>> = {
  knot: 'a knot',
  hole: 'a hole',
  split: 'a split',
  stain: 'a stain',
  sapwood: 'sapwood',
  tear: 'a tear',
}

const CENTRED: Readonly<Record<string, Words>> = {
  seam: (f, say) =>
    `Seam ${text(f, 'letter')} lies on the panel’s centre, ${say.seam(number(f, 'left'))} from both edges.`,
  leaf: () => 'A leaf lies on the panel’s centre, with the same width on both sides.',
  crossing: () => 'The seams cross on the panel’s centre.',
  'moved crossing': (f, say) => `The seams cross where they were put: ${fromCentre(f, say)}.`,
}

/** Where a centre was put, from the middle of the panel. */
function fromCentre(f: Finding, say: Say): string {
  const [x, y] = [number(f, 'x'), number(f, 'y')]
  const across = x === 0 ? null : `${say.seam(Math.abs(x))} to the ${x > 0 ? 'right' : 'left'}`
  const along = y === 0 ? null : `${say.seam(Math.abs(y))} ${y > 0 ? 'down' : 'up'}`
  return `${[across, along].filter((words) => words !== null).join(' and ')} from the panel’s centre`
}

const OFF_CENTRE: Readonly<Record<string, Words>> = {
  seam: (f, say) =>
    `Seam ${text(f, 'letter')} lies ${say.seam(Math.abs(measured(f)))} ${measured(f) > 0 ? 'right' : 'left'} of the panel’s centre: ` +
    `${say.seam(number(f, 'left'))} from the left edge, ${say.seam(number(f, 'right'))} from the right. ` +
    'Give both sides the same overhang, or choose centre balance.',
  leaf: (f, say) =>
    `The middle leaf lies ${say.seam(Math.abs(measured(f)))} off the panel’s centre. Give both sides the same overhang, or make the leaves equal after trimming.`,
  crossing: (f, say) => `The seams cross ${say.seam(Math.abs(measured(f)))} off the panel’s centre.`,
  'moved crossing': (f, say) => `The seams cross ${say.seam(Math.abs(measured(f)))} off where they were put.`,
}

const WORDS: Readonly<Record<FindingCode, Words>> = {
  centred: (f, say) => CENTRED[text(f, 'what')]!(f, say),
  'off-centre': (f, say) => OFF_CENTRE[text(f, 'what')]!(f, say),
  'odd-count': (f) =>
    `${plural(measured(f), 'leaf', 'leaves')} put a leaf on the centre, not a seam. Take ${measured(f) + 1}${measured(f) > 1 ? ` or ${measured(f) - 1}` : ''} for a seam on the centre.`,
  'even-count': (f) =>
    `${measured(f)} leaves put a seam on the centre, not a leaf. Take ${measured(f) + 1} or ${measured(f) - 1} for a leaf on the centre.`,
  'play-empty': (f, say) =>
    f.about['border'] === 1
      ? borderWords(f, say)
      : f.measured === null
        ? 'These leaves have no sound wood that is large enough for any piece. Start at another leaf, or take other leaves.'
        : `There is no place where all pieces lie in sound wood. At the best place up to ${say.seam(measured(f))} is missing at an edge. Take less overhang, more leaves, or start at another leaf.`,
  'outside-play': (f, say) =>
    `The window${f.about['border'] === 1 ? ' of the border' : ''} lies ${say.seam(measured(f))} outside its room to move${direction(f, say)}.`,
  short: (f, say) =>
    `Leaf ${leafOf(f)} is ${say.seam(measured(f))} short ${SIDE_WORDS[text(f, 'side')]}. Take less overhang there, move the window, or start at another leaf.`,
  narrow: (f, say) =>
    `Leaf ${leafOf(f)} is ${say.seam(measured(f))} too narrow ${SIDE_WORDS[text(f, 'side')]}. Move the window, take more leaves, or start at another leaf.`,
  sliver: (f, say) =>
    f.about['sheetOf'] !== undefined
      ? stripWords(f, say)
      : measured(f) <= 0
        ? `Nothing of leaf ${text(f, 'leaf')} is left after trimming: it lies wholly in the overhang. Take less overhang and one leaf fewer, or choose balance.`
        : `Leaf ${text(f, 'leaf')} shows as a sliver of ${say.seam(measured(f))}; under ${say.seam(limit(f))} it looks like a mistake. Choose balance, or another width.`,
  'defect-in-face': (f, say) =>
    `${capital(DEFECT_WORDS[text(f, 'kind')] ?? text(f, 'kind'))} of leaf ${leafOf(f)}, with ${say.seam(limit(f))} kept clear round it, lies in the piece. Move the window, take another leaf, or repair it.`,
  'used-twice': (f) =>
    number(f, 'same') === 1
      ? `Two pieces of this part claim the same wood of leaf ${leafOf(f)}. Choose another leaf for one of them.`
      : `“${text(f, 'other')}” has already taken this wood of leaf ${leafOf(f)}. Start at another leaf, or move the window.`,
  'sequence-broken': (f) => sequenceWords(f),
  'overhang-small': (f, say) =>
    `The sheet stands over only ${say.seam(measured(f))} (${text(f, 'sides')}). With less than ${say.seam(limit(f))} an edge may come out bare.`,
  'no-leaf': (f) =>
    f.about['ofFlitch'] !== undefined
      ? `“${text(f, 'ofFlitch')}” has leaves for only ${measured(f)} of the border’s ${limit(f)} pieces. Let the border start at an earlier leaf, take fewer leaves for it, or cut it from another flitch.`
      : `From leaf ${text(f, 'first')} on there are leaves for only ${measured(f)} of ${limit(f)} pieces. Start at an earlier leaf, or take fewer.`,
  'bare-width': (f, say) =>
    `${say.seam(measured(f))} of the width has no wood: the leaves are too few or too narrow. Take more leaves, or start at an earlier one.`,
  'figure-meets': (f, say) =>
    text(f, 'promised') === 'mirrors'
      ? `The figure mirrors at ${judgedSeams(f)}; ${apart(f, say)}.${text(f, 'only') === 'columns' ? ' Between the strips of a column nothing is asked of it.' : ''}`
      : text(f, 'promised') === 'both'
        ? `The figure mirrors at ${mirroredSeams(f)} and repeats at the others; ${apart(f, say)}.${sheetsApart(f)}`
        : `The figure repeats at ${judgedSeams(f)}, as a slip match does.`,
  'figure-breaks': (f, say) => breaksWords(f, say.seam, MIRROR_ADVICE),
  'nothing-asked': (f) => nothingAskedWords(f),
  'diamond-off': (f, say) => diamondWords(f, say.seam),
  'offsets-unequal': (f, say) => offsetWords(f, say.depth),
  'count-lowered': (f) =>
    `${plural(limit(f), 'leaf', 'leaves')} are asked for, but there are no more than ${plural(measured(f), 'piece')} to cut: ${plural(measured(f), 'leaf', 'leaves')} are taken. Take fewer leaves, or narrower strips.`,
  'seam-long': (f, say) =>
    `Seam ${text(f, 'letter')} is ${say.seam(measured(f))} long, this shop trues ${say.seam(limit(f))} in one go${moreSeams(f)}. True it in two settings over one long straightedge, or take a longer jig.`,
  'scarf-step': (f, say) => `${scarfWords(f, say)} ${STEP_WORDS[text(f, 'look')]!(f, say)}`,
  'strip-beside': (f) =>
    `${number(f, 'run') === 1 ? 'Every leaf of the run' : `Leaf ${text(f, 'leaf')}`} is made wider by a strip: at its straight joint other figure comes to lie. Choose the strip by eye.`,
  'make-up-void': (f) =>
    text(f, 'why') === 'no joint'
      ? `Leaf ${text(f, 'leaf')} can’t be made up as decided: its parts do not meet, or they overlap on the leaf. Cut it elsewhere, or take it as it is.`
      : `${text(f, 'cell')} was to lie on leaf ${text(f, 'was')}, made longer or wider; leaf ${text(f, 'leaf')} lies there now, as it is.`,
  'up-end-down': (f) =>
    measured(f) === number(f, 'of')
      ? `The figure has its up end at the ${text(f, 'end')} end, and every leaf lies with that end down. Hang the panel the other way up, or say that the other end is up.`
      : `The figure lies upside down in ${plural(measured(f), 'piece', 'pieces')} of ${number(f, 'of')}: ${text(f, 'cells')}. Crotch shows which end is up; take a match that spins no leaf, or other numbered ends.`,
  'pair-meets': pairMeetsWords,
  'pair-void': (f, say) => pairVoidWords(f, say.seam),
  'border-step': (f, say) =>
    `The border’s veneer is ${say.thickness(number(f, 'border'))} thick, the field’s ${say.thickness(number(f, 'field'))}: a step of ${say.thickness(Math.abs(measured(f)))} all round. Bring both to one thickness before they are taped; or press over a soft caul, and level the step by hand, so that the thinner one is not sanded through.`,
  'nudge-dropped': (f) =>
    `The shift of ${text(f, 'cell')} was made for leaf ${text(f, 'was')}; leaf ${text(f, 'leaf')} lies there now, without it.`,
}

/** A strip of a slipped sheet of which little or nothing shows. */
function stripWords(f: Finding, say: Say): string {
  const others = number(f, 'more') === 0 ? '' : `, and ${plural(number(f, 'more'), 'more strip')} like it`
  const remedy = `Take more or fewer than ${number(f, 'sheetOf')} leaves for each sheet, or other sizes.`
  return measured(f) <= 0
    ? `Nothing of strip ${text(f, 'cell')}, from leaf ${text(f, 'leaf')}, is left after trimming${others}. ${remedy}`
    : `Strip ${text(f, 'cell')}, from leaf ${text(f, 'leaf')}, shows no wider than ${say.seam(measured(f))} at its corner${others}; under ${say.seam(limit(f))} it looks like a mistake. ${remedy}`
}

/** A border has no place on its leaves. */
const borderWords = (f: Finding, say: Say): string =>
  f.measured === null
    ? 'The border’s leaves have no sound wood that is large enough for any of its pieces. Let it start at another leaf, or make its pieces shorter.'
    : `There is no place where all pieces of the border lie in sound wood. At the best place up to ${say.seam(f.measured)} is missing at an edge. Make its pieces shorter, take more leaves for it, or let it start at another leaf.`

const moreSeams = (f: Finding): string =>
  number(f, 'more') === 0 ? '' : `, and ${plural(number(f, 'more'), 'more seam is', 'more seams are')} too long`

const scarfWords = (f: Finding, say: Say): string =>
  number(f, 'run') === 1
    ? `The leaves of the run are scarfed: the figure steps ${say.seam(measured(f))} across at the slanted joint, alike in every leaf.`
    : `Leaf ${text(f, 'leaf')} is scarfed: the figure steps ${say.seam(measured(f))} across at the slanted joint.`

const STEP_WORDS: Readonly<Record<string, Words>> = {
  'no promise': () => 'In crown figure it will show, and nothing can be promised.',
  'spacing not known': () => 'Measure how far the stripes stand apart, to see whether they meet again.',
  'no lines': () => 'There are no lines that it breaks.',
  meets: (f, say) =>
    `Stripes ${say.seam(limit(f))} apart meet again there, ${plural(number(f, 'passed'), 'stripe')} on, as far as they are regular.`,
  breaks: (f, say) =>
    `Stripes ${say.seam(limit(f))} apart miss each other by ${say.seam(number(f, 'missed'))}: it shows.`,
}

/** The seams at which the match promises something, of those that there are. */
function judgedSeams(f: Finding): string {
  const [judged, all] = [number(f, 'seams'), number(f, 'of')]
  if (text(f, 'only') === 'columns') return judged === 1 ? 'the column seam' : `all ${judged} column seams`
  if (judged < all) return `the ${judged} of ${all} seams where the match asks for it`
  return judged === 1 ? 'the seam' : `all ${judged} seams`
}

const mirroredSeams = (f: Finding): string =>
  number(f, 'mirrored') === 1 ? 'the centre seam' : `${number(f, 'mirrored')} of ${number(f, 'seams')} seams`

const apart = (f: Finding, say: Say): string =>
  measured(f) < 0.01
    ? 'the two faces of one knife cut meet there'
    : `the faces that meet lie up to ${say.depth(measured(f))} apart in the log`

/** Of slipped sheets: the run goes through the leaves of one before the next. */
const sheetsApart = ({ about }: Finding): string =>
  about['sheetOf'] === undefined
    ? ''
    : ` Each sheet takes ${String(about['sheetOf'])} leaves that follow each other, so leaves that mirror are at least ${String(about['sheetOf'])} apart in the run.`

const MIRROR_ADVICE = 'Take off the shift of one leaf, or, round a centre, take an even number of pieces.'

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

function direction(f: Finding, say: Say): string {
  const [x, y] = [number(f, 'x'), number(f, 'y')]
  const ways = [
    Math.abs(y) >= 0.25 ? `${say.seam(Math.abs(y))} towards the ${y < 0 ? 'numbered' : 'far'} end` : '',
    Math.abs(x) >= 0.25 ? `${say.seam(Math.abs(x))} to the ${x < 0 ? 'left' : 'right'} on the leaf` : '',
  ].filter((way) => way !== '')
  return ways.length ? `. Move it ${ways.join(' and ')}` : ''
}

function sequenceWords(f: Finding): string {
  const [before, after, step] = [text(f, 'before'), text(f, 'after'), measured(f)]
  const why =
    step > 1
      ? `${plural(step - 1, 'leaf is', 'leaves are')} missing between them`
      : step === 0
        ? 'it is the same leaf'
        : 'they lie the other way round in the log'
  const more = number(f, 'breaks') - 1
  return `Leaf ${after} follows leaf ${before}, but ${why}: the figure will step there.${more > 0 ? ` The same happens ${more === 1 ? 'once' : `${more} times`} more.` : ''}`
}

/** A finding as one or two sentences: the thing, the number, what to do. */
export const findingSentence = (finding: Finding, unit: LengthUnit): string => WORDS[finding.code](finding, sayIn(unit))

/** A short name for a button that mends something. */
export function remedyLabel(remedy: Remedy, unit: LengthUnit): string {
  const say = sayIn(unit)
  switch (remedy.remedy) {
    case 'less overhang':
      return `${say.seam(remedy.by)} less over at the ${remedy.side}`
    case 'move window':
      return 'Move it there'
    case 'first position':
      return 'Put it where there is most room'
    case 'start at leaf':
      return `Start at leaf ${remedy.leaf}`
    case 'count':
      return `Take ${remedy.of ? `${remedy.count} ${remedy.of}` : plural(remedy.count, 'leaf', 'leaves')}`
    case 'booked pairs':
      return 'Cut each wedge from a booked pair'
    case 'slipped sheets':
      return `Cut each piece from a slipped sheet of ${remedy.leaves} leaves`
    case 'other leaf':
      return `Use leaf ${remedy.leaf}`
    case 'next in run':
      return 'Back to the run’s own order'
    case 'arrangement':
      return `Lay it in ${remedy.arrangement}`
    case 'make up':
      return makeUpLabel(remedy, say)
    case 'part the pair':
      return 'Part the pair'
    case 'overhang':
      return `${say.seam(remedy.to)} over at the ${remedy.side}`
  }
}

const sourceWords = (from: number | null, offcut?: string): string =>
  offcut ? ` from offcut ${offcut}` : from === null ? '' : ` from leaf ${from}`

function makeUpLabel({ cell, makeUp, offcut }: Extract<Remedy, { remedy: 'make up' }>, say: Say): string {
  const whose = cell === WHOLE_RUN ? 'the whole run' : `the leaf of ${cell}`
  if (!makeUp) return cell === WHOLE_RUN ? 'Take the leaves as they are' : 'Take the leaf as it is'
  return makeUp.how === 'longer'
    ? `Scarf ${whose}: 1 in ${(1 / makeUp.cut.slope).toFixed(1)}, ${say.place(makeUp.cut.gain)} longer`
    : `Make ${whose} wider by a strip ${say.place(makeUp.strip.max.x - makeUp.strip.min.x)} wide${sourceWords(makeUp.from, offcut)}`
}
