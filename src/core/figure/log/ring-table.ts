import { bellNumber } from './random'
import type { Species } from './species'

/** Distance between two entries of a table along the ring radius. */
const STEP = 0.05

/**
 * Values along the ring radius, held as their running sum, so that the mean over any stretch costs two
 * look-ups: a pixel that covers many rings gets their mean and no moiré.
 */
export interface RingTable {
  readonly from: number
  readonly sums: Float64Array
}

export function ringTable(from: number, to: number, valueAt: (radius: number) => number): RingTable {
  const sums = new Float64Array(Math.ceil((to - from) / STEP) + 1)
  for (let i = 1; i < sums.length; i++) sums[i] = sums[i - 1]! + valueAt(from + (i - 0.5) * STEP) * STEP
  return { from, sums }
}

/** The mean between two radii at least a hair apart; beyond its ends the table gives the value at the end. */
export function tableMean(table: RingTable, from: number, to: number): number {
  return (sumTo(table, to) - sumTo(table, from)) / (to - from)
}

function sumTo({ from, sums }: RingTable, radius: number): number {
  const last = sums.length - 1
  const at = Math.min(Math.max((radius - from) / STEP, 0), last - 1e-6)
  const whole = Math.floor(at)
  const low = sums[whole]!
  return low + (sums[whole + 1]! - low) * (at - whole)
}

export interface Year {
  readonly inner: number
  readonly width: number
  /** How strongly its latewood is coloured, about 1. */
  readonly strength: number
}

/** Years from one radius to another; a good year tends to follow a good one. */
export function growYears(from: number, to: number, ring: Species['ring'], random: () => number): readonly Year[] {
  const years: Year[] = []
  let [weather, mood] = [0, 0]
  for (let inner = from; inner < to; inner += years.at(-1)!.width) {
    weather = 0.72 * weather + 0.69 * bellNumber(random)
    mood = 0.6 * mood + 0.8 * bellNumber(random)
    years.push({
      inner,
      width: ring.meanWidth * Math.min(Math.max(1 + ring.spread * weather, 0.35), 2.1),
      strength: Math.min(Math.max(1 + 0.42 * mood, 0.4), 1.9),
    })
  }
  return years
}

/** The darkness of the rings by radius. */
export function ringDarkness(years: readonly Year[], ring: Species['ring']): RingTable {
  const first = years[0]!
  const last = years.at(-1)!
  return ringTable(
    first.inner,
    last.inner + last.width,
    walkYears(years, (share, { strength }) => yearDarkness(share, strength, ring)),
  )
}

function yearDarkness(share: number, strength: number, ring: Species['ring']): number {
  const late = strength * (ring.latewood * share ** ring.lateness + ring.line * share ** 11)
  const early = share < ring.earlyShare ? ring.earlyPores * (1 - (share / ring.earlyShare) ** 2) : 0
  return late + early
}

/** The share of a year in which pores crowd. */
export const EARLY_WOOD = 0.34

/** 1 where a year begins, falling to 0 through its early wood: where pores crowd. */
export function earlyShare(years: readonly Year[]): RingTable {
  const last = years.at(-1)!
  return ringTable(
    years[0]!.inner,
    last.inner + last.width,
    walkYears(years, (share) => Math.max(0, 1 - share / EARLY_WOOD)),
  )
}

/** A value by radius out of one by share of the year; the radii must be asked for in rising order. */
function walkYears(years: readonly Year[], valueAt: (share: number, year: Year) => number): (radius: number) => number {
  let at = 0
  return (radius) => {
    while (at + 1 < years.length && radius >= years[at + 1]!.inner) at++
    const year = years[at]!
    return valueAt((radius - year.inner) / year.width, year)
  }
}
