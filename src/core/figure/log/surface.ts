import { knotTrace, type KnotTrace } from './knot'
import type { Stretch } from './lattice'
import type { Log } from './log'

/** A surface of the log as seen through a window: what the pixels are made from. `u` runs across, `z` along. */
export interface Surface {
  readonly log: Log
  /** Below the numbered face of leaf 1. */
  readonly sunk: number
  readonly across: Stretch
  readonly along: Stretch
  /** Side of a pixel. */
  readonly pixel: number
  readonly knots: readonly KnotTrace[]
}

export function surfaceOf(log: Log, sunk: number, across: Stretch, along: Stretch, pixel: number): Surface {
  const leaf = sunk / log.thickness + 1
  return { log, sunk, across, along, pixel, knots: log.knots.map((knot) => knotTrace(knot, leaf)) }
}

/** Fields of the slow lattice. */
export const SLOW = { ring: 0, depth: 1, blend: 2, warmth: 3, sheen: 4, count: 5 } as const
