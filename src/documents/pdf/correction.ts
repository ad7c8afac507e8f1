import { ok, refused, type Result } from '../../core/result'

/** How much larger than life a printer must be told to draw for its paper to come out right, for each side of the paper. */
export interface Correction {
  /** Across the short side of a sheet, or across a roll. */
  readonly across: number
  /** Along the long side, or along a roll. */
  readonly along: number
}

export const UNCORRECTED: Correction = { across: 1, along: 1 }

/** The length of the bars that are on every page, mm. */
export const CHECK_BAR = 100

/** What a bar of 100 mm may measure before something else must be wrong than the printer: it was scaled to fit the page. */
export const BAR_LIMITS = { least: 80, most: 125 }

export type CorrectionRefusal = {
  readonly reason: 'bar length'
  readonly bar: 'across' | 'along'
  readonly measured: number
  readonly least: number
  readonly most: number
}

/**
 * From what two bars of a print really measured, mm, and how long they are: each axis becomes length / measured times as
 * large. The bars must be those of a page printed without a correction.
 */
export function correctionMeasured(
  bars: Correction,
  lengths: Correction = { across: CHECK_BAR, along: CHECK_BAR },
): Result<Correction, CorrectionRefusal> {
  for (const bar of ['across', 'along'] as const) {
    const measured = bars[bar]
    const [least, most] = [BAR_LIMITS.least, BAR_LIMITS.most].map((limit) => (limit * lengths[bar]) / CHECK_BAR)
    if (!(measured >= least! && measured <= most!))
      return refused({ reason: 'bar length', bar, measured, least: least!, most: most! })
  }
  return ok({ across: lengths.across / bars.across, along: lengths.along / bars.along })
}

/** Why a measured bar was not taken, in a sentence. Lengths by `say`. */
export function correctionSentence(
  { bar, measured, least, most }: CorrectionRefusal,
  say: (length: number) => string,
): string {
  return `The bar ${bar} can’t measure ${say(measured)}: ${say(least)} to ${say(most)} is what a printer does by itself. Print the page again at actual size, not fitted to the page.`
}
