import { ok, refused, type Result } from '../../core/result'

/** How much larger than life a printer must be told to draw for its paper to come out right, for each side of the paper. */
export interface Correction {
  /** Across the short side of a sheet, or across a roll. */
  readonly across: number
  /** Along the long side, or along a roll. */
  readonly along: number
}

export const UNCORRECTED: Correction = { across: 1, along: 1 }

/** The length of the bar that is measured, mm. */
export const CHECK_BAR = 100

/** What a bar may measure before something else must be wrong than the printer: it was scaled to fit the page. */
export const BAR_LIMITS = { least: 80, most: 125 }

export type CorrectionRefusal = {
  readonly reason: 'bar length'
  readonly bar: 'across' | 'along'
  readonly measured: number
  readonly least: number
  readonly most: number
}

/**
 * From what the two 100 mm bars of a print really measured, mm: each axis becomes 100 / measured times as large.
 * The bars must be those of a page printed without a correction.
 */
export function correctionMeasured(bars: Correction): Result<Correction, CorrectionRefusal> {
  for (const bar of ['across', 'along'] as const) {
    const measured = bars[bar]
    if (!(measured >= BAR_LIMITS.least && measured <= BAR_LIMITS.most))
      return refused({ reason: 'bar length', bar, measured, ...BAR_LIMITS })
  }
  return ok({ across: CHECK_BAR / bars.across, along: CHECK_BAR / bars.along })
}
