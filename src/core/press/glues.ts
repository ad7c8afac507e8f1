import type { DataSheet, GlueName } from './pressing'
import { between, memory, practice, seen, type Mark, type Sourced, type SourcedRange } from './provenance'

/**
 * What is generally said of a glue; its own data sheet always wins. Spread in g/m² of one glue line, open time in
 * minutes, press time in hours at 20–21 °C, temperatures in °C, density in g/ml as mixed.
 */
export interface GlueFigures {
  readonly spread: SourcedRange
  /** What to reckon with before a data sheet says otherwise. */
  readonly usualSpread: Sourced
  readonly coats: 'core' | 'both faces'
  readonly openMinutes: SourcedRange
  readonly pressHours: SourcedRange
  readonly leastTemperature: Sourced
  readonly cureDays: Sourced
  readonly density: Sourced
  /** Parts by weight; null: none, or by the maker's sheet alone. */
  readonly ratio: MixRatio | null
  /** A glue that gives under steady load: seams open and bends spring back. */
  readonly creeps: boolean
  readonly water: boolean
}

export interface MixRatio {
  readonly of: string
  readonly to: string
  /** Parts of the second to one part of the first. */
  readonly least: number
  readonly most: number
  readonly mark: Mark
}

export const GLUES: Readonly<Record<GlueName, GlueFigures>> = {
  PVA: {
    spread: between(120, 200, 'common practice'),
    usualSpread: seen(170),
    coats: 'core',
    openMinutes: between(5, 30, 'seen'),
    pressHours: between(1, 2, 'common practice'),
    leastTemperature: seen(13),
    cureDays: practice(1),
    density: memory(1.1),
    ratio: null,
    creeps: true,
    water: true,
  },
  'plastic resin, powder': {
    spread: between(120, 200, 'common practice'),
    usualSpread: practice(170),
    coats: 'core',
    openMinutes: between(20, 20, 'seen'),
    pressHours: between(12, 13, 'seen'),
    leastTemperature: seen(21),
    cureDays: practice(2),
    density: memory(1.25),
    ratio: { of: 'powder', to: 'water', least: 0.5, most: 0.65, mark: 'seen' },
    creeps: false,
    water: true,
  },
  'plastic resin, liquid': {
    spread: between(120, 200, 'common practice'),
    usualSpread: practice(170),
    coats: 'core',
    openMinutes: between(15, 20, 'seen'),
    pressHours: between(1, 3, 'seen'),
    leastTemperature: practice(21),
    cureDays: practice(2),
    density: memory(1.28),
    ratio: null,
    creeps: false,
    water: true,
  },
  epoxy: {
    spread: between(150, 250, 'common practice'),
    usualSpread: practice(200),
    coats: 'both faces',
    openMinutes: between(2, 120, 'seen'),
    pressHours: between(12, 24, 'common practice'),
    leastTemperature: memory(15),
    cureDays: practice(3),
    density: memory(1.12),
    ratio: null,
    creeps: false,
    water: false,
  },
  polyurethane: {
    spread: between(100, 200, 'from memory'),
    usualSpread: memory(150),
    coats: 'core',
    openMinutes: between(10, 40, 'from memory'),
    pressHours: between(2, 4, 'common practice'),
    leastTemperature: memory(10),
    cureDays: practice(1),
    density: memory(1.13),
    ratio: null,
    creeps: false,
    water: false,
  },
  hide: {
    spread: between(200, 300, 'common practice'),
    usualSpread: practice(250),
    coats: 'both faces',
    openMinutes: between(1, 10, 'seen'),
    pressHours: between(0.2, 1.5, 'seen'),
    leastTemperature: practice(20),
    cureDays: practice(2),
    density: memory(1.1),
    ratio: { of: 'dry glue', to: 'water', least: 1.5, most: 2, mark: 'common practice' },
    creeps: false,
    water: true,
  },
  'contact cement': {
    spread: between(200, 300, 'from memory'),
    usualSpread: memory(250),
    coats: 'both faces',
    openMinutes: between(5, 60, 'seen'),
    pressHours: between(0, 0, 'seen'),
    leastTemperature: memory(18),
    cureDays: practice(1),
    density: memory(0.87),
    ratio: null,
    creeps: true,
    water: false,
  },
}

export const GLUE_NAMES = Object.keys(GLUES) as readonly GlueName[]

/** What a glue is called in a sentence. */
export const GLUE_WORDS: Readonly<Record<GlueName, string>> = {
  PVA: 'PVA',
  'plastic resin, powder': 'plastic resin',
  'plastic resin, liquid': 'plastic resin',
  epoxy: 'epoxy',
  polyurethane: 'polyurethane',
  hide: 'hide glue',
  'contact cement': 'contact cement',
}

/** A figure in use: from the data sheet where it has one. */
export interface InUse {
  readonly value: number
  readonly from: 'data sheet' | Mark
}

/** A glue as it will be used: the cautious end of each range, and the maker's own figures before all others. */
export interface GlueInUse {
  readonly name: GlueName
  readonly figures: GlueFigures
  readonly spread: InUse
  /** Sure to be open this long; and the most that can be hoped for. */
  readonly openMinutes: InUse
  readonly openAtMost: number
  readonly pressHours: InUse
  readonly leastTemperature: InUse
  readonly cureDays: InUse
  readonly density: InUse
  /** Second part to one of the first, by weight; null: read it off the data sheet. */
  readonly ratio: number | null
  /** MPa that the data sheet asks for. */
  readonly pressure: number | null
}

export function glueInUse(name: GlueName, sheet: DataSheet): GlueInUse {
  const figures = GLUES[name]
  const use = (own: number | null, value: number, mark: Mark): InUse =>
    own === null ? { value, from: mark } : { value: own, from: 'data sheet' }
  const plain = (own: number | null, { value, mark }: Sourced): InUse => use(own, value, mark)
  const { openMinutes, pressHours, ratio } = figures
  return {
    name,
    figures,
    spread: plain(sheet.spread, figures.usualSpread),
    openMinutes: use(sheet.openMinutes, openMinutes.least, openMinutes.mark),
    openAtMost: sheet.openMinutes ?? openMinutes.most,
    pressHours: use(sheet.pressHours, pressHours.most, pressHours.mark),
    leastTemperature: plain(sheet.leastTemperature, figures.leastTemperature),
    cureDays: plain(sheet.cureDays, figures.cureDays),
    density: plain(sheet.density, figures.density),
    ratio: sheet.ratio ? sheet.ratio[1] / sheet.ratio[0] : ratio && (ratio.least + ratio.most) / 2,
    pressure: sheet.pressure,
  }
}

/** Plastic resin powder at 70 and 100 °F: 13 and 3½ hours, seen as a label's figures. */
export const RESIN_TIMES = { cool: { temperature: 21.11, hours: 13 }, warm: { temperature: 37.78, hours: 3.5 } }

/**
 * Hours under pressure at the temperature of the glue line; null where the glue is too cold to set. Only plastic resin
 * powder is known at two temperatures: between them its time falls by equal shares for equal degrees, and warmer than
 * the second it is not shortened further. For the rest, and where the data sheet has a time, that time stands.
 */
export function pressHoursAt(glue: GlueInUse, temperature: number): number | null {
  if (temperature < glue.leastTemperature.value) return null
  const { value, from } = glue.pressHours
  if (glue.name !== 'plastic resin, powder' || from === 'data sheet') return value
  const { cool, warm } = RESIN_TIMES
  const share = Math.min(1, Math.max(0, (temperature - cool.temperature) / (warm.temperature - cool.temperature)))
  return cool.hours * (warm.hours / cool.hours) ** share
}
