import { showHours } from './measures'
import { practice } from './provenance'
import { STEPS, type StepName } from './steps'

/** What there is to do, all parts together. */
export interface JobSize {
  readonly parts: number
  readonly leaves: number
  readonly seams: number
  /** Length of all seams, mm. */
  readonly seamLength: number
  /** Show faces to be cleaned up, m². */
  readonly squareMetres: number
  /** Edges that are lipped or veneered. */
  readonly edges: number
  readonly flatten: boolean
  /** Loads of the press, one after the other. */
  readonly loads: number
  /** Hours under pressure for one load, at the shop's temperature. */
  readonly pressHours: number
  readonly cureDays: number
}

/** One step: hours of hands, and hours of waiting in which other work can be done. */
export interface TimedStep {
  readonly step: StepName
  readonly words: string
  readonly hands: number
  readonly waits: number
}

export interface Timeline {
  readonly steps: readonly TimedStep[]
  readonly hands: number
  /** From the first step to the last when the shop works this many hours a day. */
  readonly days: number
}

/** Hours by common practice; all of them to be taken as a first guess and corrected after the first job. */
export const RATES = {
  perLeafRegistered: practice(0.01),
  perLeafPhotographed: practice(0.03),
  perPartPlanned: practice(0.25),
  perLeafCrosscut: practice(0.03),
  perSeamJointed: practice(0.15),
  perPartDryLaid: practice(0.2),
  perSeamGlued: practice(0.15),
  seamsDry: practice(0.5),
  perMetreTaped: practice(0.04),
  tapeDries: practice(2),
  perPartStripped: practice(0.1),
  perLoadRehearsed: practice(0.25),
  perLoadPressed: practice(0.5),
  perPartTrimmed: practice(0.3),
  perEdge: practice(0.4),
  edgesDry: practice(2),
  perSquareMetreOffTape: practice(0.5),
  perSquareMetreScraped: practice(0.75),
  perSquareMetreSanded: practice(0.75),
  flattened: practice(0.5),
  flatteningWaits: practice(48),
  dryingAfterFlattening: practice(48),
  drying: practice(24),
} as const

const r = (name: keyof typeof RATES): number => RATES[name].value

const HANDS_AND_WAITS: Readonly<Record<StepName, (size: JobSize) => readonly [hands: number, waits: number]>> = {
  register: ({ leaves }) => [0.25 + leaves * r('perLeafRegistered'), 0],
  flatten: ({ flatten }) => (flatten ? [r('flattened'), r('flatteningWaits')] : [0, 0]),
  dry: ({ flatten }) => [0.25, flatten ? r('dryingAfterFlattening') : r('drying')],
  photograph: ({ leaves }) => [0.25 + leaves * r('perLeafPhotographed'), 0],
  plan: ({ parts }) => [parts * r('perPartPlanned'), 0],
  crosscut: ({ leaves }) => [leaves * r('perLeafCrosscut'), 0],
  joint: ({ seams }) => [seams * r('perSeamJointed'), 0],
  'dry-lay': ({ parts }) => [parts * r('perPartDryLaid'), 0],
  'glue seams': ({ seams }) => [seams * r('perSeamGlued'), seams > 0 ? r('seamsDry') : 0],
  'gum tape': ({ seamLength }) => [(seamLength / 1000) * r('perMetreTaped'), seamLength > 0 ? r('tapeDries') : 0],
  'strip the glue side': ({ parts }) => [parts * r('perPartStripped'), 0],
  rehearse: ({ loads }) => [loads * r('perLoadRehearsed'), 0],
  press: ({ loads, pressHours }) => [loads * r('perLoadPressed'), loads * pressHours],
  stand: ({ cureDays }) => [0, cureDays * 24],
  trim: ({ parts }) => [parts * r('perPartTrimmed'), 0],
  edges: ({ edges }) => [edges * r('perEdge'), edges > 0 ? r('edgesDry') : 0],
  'scrape the tape': ({ squareMetres }) => [squareMetres * r('perSquareMetreOffTape'), 0],
  scrape: ({ squareMetres }) => [squareMetres * r('perSquareMetreScraped'), 0],
  sand: ({ squareMetres }) => [squareMetres * r('perSquareMetreSanded'), 0],
}

/** The steps that there are in this job, with their hours. */
export function timelineOf(size: JobSize, hoursADay = 8): Timeline {
  const steps = STEPS.map(({ step, words }): TimedStep => {
    const [hands, waits] = HANDS_AND_WAITS[step](size)
    return { step, words, hands, waits }
  }).filter(({ hands, waits }) => hands > 0 || waits > 0)
  const hands = steps.reduce((sum, step) => sum + step.hands, 0)
  return { steps, hands, days: daysFor(steps, hoursADay) }
}

/** Hands work by the day, glue and wood by the clock: a wait that outlasts the day runs on through the night. */
function daysFor(steps: readonly TimedStep[], hoursADay: number): number {
  let clock = 0 // hours since the first morning
  for (const { hands, waits } of steps) {
    clock = afterWork(clock, hands, hoursADay) + waits
  }
  return Math.ceil(clock / 24 - 1e-9)
}

/** The hour at which so many hours of work are done that are begun no earlier than `from`. */
function afterWork(from: number, hands: number, hoursADay: number): number {
  if (hands === 0) return from
  const day = Math.floor(from / 24)
  const intoDay = from - day * 24
  const done = day * hoursADay + Math.min(intoDay, hoursADay) + hands
  const whole = Math.ceil(done / hoursADay - 1e-9) - 1
  return whole * 24 + (done - whole * hoursADay)
}

/** One step as a line: `Press, face and back at once: 1 h of hands, then 26 h of waiting`. */
export function stepSentence({ words, hands, waits }: TimedStep): string {
  const work = hands > 0 ? `${showHours(hands)} of hands` : ''
  const wait = waits > 0 ? `${showHours(waits)} of waiting` : ''
  return `${words}: ${[work, wait].filter((part) => part !== '').join(', then ')}.`
}
