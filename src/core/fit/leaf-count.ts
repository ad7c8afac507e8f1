/**
 * How many leaves of a usable width a face takes, by width alone. `width` is finished, `left` and `right` are what the
 * taped sheet stands over it, `usable` is the raw width less jointing on both edges; any unit, all the same.
 */
export interface CountDemand {
  readonly width: number
  readonly left: number
  readonly right: number
  readonly usable: number
}

// a count must not rise because 48 / 8 came out a hair over 6
const up = (n: number): number => Math.ceil(n - 1e-9)

/** As many as it takes, each as wide as it goes. */
export const runningCount = ({ width, left, right, usable }: CountDemand): number =>
  Math.max(1, up((width + left + right) / usable))

/** Balance: equal widths of the taped sheet, any count. */
export const balanceCountBefore = runningCount

/** Balance: equal finished widths, the outer leaves wider by what they stand over. */
export function balanceCountAfter(demand: CountDemand): number {
  const { width, left, right, usable } = demand
  if (width + left + right <= usable + 1e-9) return 1
  return width / 2 + Math.max(left, right) <= usable + 1e-9 ? 2 : Math.max(3, innerAndOuter(demand))
}

/** Centre balance: an even count, each half of the taped sheet in equal widths. */
export const centreCountBefore = ({ width, left, right, usable }: CountDemand): number =>
  2 * Math.max(1, up((width / 2 + Math.max(left, right)) / usable))

/** Centre balance: an even count of equal finished widths. */
export function centreCountAfter(demand: CountDemand): number {
  const { width, left, right, usable } = demand
  return width / 2 + Math.max(left, right) <= usable + 1e-9 ? 2 : 2 * Math.max(2, up(innerAndOuter(demand) / 2))
}

/** Three or more of one finished width: inner ones as they are, outer ones by what they stand over (less, with a lipping). */
const innerAndOuter = ({ width, left, right, usable }: CountDemand): number =>
  up(width / (usable - Math.max(0, left, right)))
