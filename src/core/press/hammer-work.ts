import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { between } from './provenance'

/** Leaves laid one by one with hot hide glue: each laps its neighbour, and both are cut through on the panel. */
export const LAP = between(10, 15, 'common practice')

/** One leaf as it is laid: which strip it is from the left (from 0), its finished borders and those as laid, in mm. */
export interface HammerLeaf {
  readonly strip: number
  readonly left: number
  readonly right: number
  /** With the lap over those seams whose neighbour is laid already; they are cut through then. */
  readonly laidLeft: number
  readonly laidRight: number
  /** Seams cut through once it lies, as places. */
  readonly cuts: readonly number[]
}

/**
 * The order of laying strips whose borders are given from left to right, outer edges first and last: the one on the
 * centre first (right of it where a seam lies there), then outwards, the two sides by turns.
 */
export function hammerOrder(borders: readonly number[], lap = LAP.least): HammerLeaf[] {
  const count = borders.length - 1
  const middle = ((borders[0] ?? 0) + (borders[count] ?? 0)) / 2
  const centreOf = (strip: number): number => (borders[strip]! + borders[strip + 1]!) / 2 - middle
  const order = Array.from({ length: Math.max(0, count) }, (_, i) => i).sort(
    (a, b) => Math.abs(centreOf(a)) - Math.abs(centreOf(b)) || b - a,
  )
  return outwards(order).map((strip, nth, all) => {
    const laid = new Set(all.slice(0, nth))
    const [left, right] = [borders[strip]!, borders[strip + 1]!]
    const leftLies = laid.has(strip - 1)
    const rightLies = laid.has(strip + 1)
    return {
      strip,
      left,
      right,
      // a lap goes over what already lies; the free edge keeps as much, to be lapped in its turn
      laidLeft: left - lap,
      laidRight: right + lap,
      cuts: [...(leftLies ? [left] : []), ...(rightLies ? [right] : [])],
    }
  })
}

/** Every strip after the first must touch one that lies, or its cut would come too late. */
function outwards(order: readonly number[]): number[] {
  const laid: number[] = []
  const waiting = [...order]
  while (waiting.length > 0) {
    const next = waiting.findIndex((strip) => laid.length === 0 || laid.includes(strip - 1) || laid.includes(strip + 1))
    laid.push(...waiting.splice(Math.max(0, next), 1))
  }
  return laid
}

const SIZE_CORE = 'Size the core with thin glue and let it dry; damp the leaf’s upper side as you lay it.'
const LAY_BACK = 'Lay the back the same way at once, or weight the panel: one wet side pulls it hollow.'

/** What is drawn on the core and done, one sentence a step. */
export function hammerSentences(leaves: readonly HammerLeaf[], unit: LengthUnit): string[] {
  const say = (length: number): string => showLength(length, unit, 'seam')
  const lines = [...new Set(leaves.flatMap(({ left, right }) => [left, right]))].sort((a, b) => a - b)
  return [
    `Draw the seams on the core, from its left edge: ${
      lines
        .slice(1, -1)
        .map((line) => say(line - lines[0]!))
        .join(', ') || 'none'
    }.`,
    SIZE_CORE,
    ...leaves.map(({ strip, cuts }, nth) => {
      const through =
        cuts.length === 0
          ? ''
          : ` Cut through both leaves along the line, lift the waste, press the seam down and tape it.`
      return `${nth + 1}. Leaf on strip ${strip + 1} from the left: hammer from its middle out along the grain.${through}`
    }),
    LAY_BACK,
  ]
}

/** A face that is not laid in strips side by side. */
export const HAMMER_OTHERWISE: string[] = [
  'Draw every seam of the face on the core, from its centre lines.',
  SIZE_CORE,
  'Lay the piece nearest the centre first, then outwards, each lapping those that lie: hammer from its middle out along the grain.',
  'Cut through both leaves along the line, lift the waste, press the seam down and tape it, before the next piece goes on.',
  LAY_BACK,
]
