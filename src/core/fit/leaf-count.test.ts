import { describe, expect, it } from 'vitest'
import {
  balanceCountAfter,
  balanceCountBefore,
  centreCountAfter,
  centreCountBefore,
  runningCount,
  type CountDemand,
} from './leaf-count'

/** The widths a count gives, by the definition of the arrangement: every leaf of them must be wide enough. */
const widths = {
  before: ({ width, left, right }: CountDemand, n: number, centred: boolean) =>
    centred ? [(width / 2 + left) / (n / 2), (width / 2 + right) / (n / 2)] : [(width + left + right) / n],
  after: ({ width, left, right }: CountDemand, n: number) =>
    n === 1 ? [width + left + right] : [width / n + left, width / n + right, ...(n > 2 ? [width / n] : [])],
}

const fewest = (works: (n: number) => boolean, first: number, step: number) => {
  let n = first
  while (!works(n)) n += step
  return n
}

const demands: CountDemand[] = []
for (const width of [300, 600, 1000, 1045, 1200, 1219.2])
  for (const usable of [90, 150, 174, 200, 209, 228.6])
    for (const [left, right] of [
      [0, 0],
      [10, 10],
      [6, 12.7],
      [-10, -10],
      [-20, 5],
    ] as const)
      demands.push({ width, left, right, usable })

describe('leaf counts by width', () => {
  it('[F10] are the fewest at which every leaf is wide enough, lippings counted in', () => {
    for (const demand of demands) {
      const fits = (all: readonly number[]) => all.every((width) => width <= demand.usable + 1e-9)
      const said = {
        before: balanceCountBefore(demand),
        after: balanceCountAfter(demand),
        centreBefore: centreCountBefore(demand),
        centreAfter: centreCountAfter(demand),
      }
      expect({ demand, said }).toEqual({
        demand,
        said: {
          before: fewest((n) => fits(widths.before(demand, n, false)), 1, 1),
          after: fewest((n) => fits(widths.after(demand, n)), 1, 1),
          centreBefore: fewest((n) => fits(widths.before(demand, n, true)), 2, 2),
          centreAfter: fewest((n) => fits(widths.after(demand, n)), 2, 2),
        },
      })
    }
  })

  it('[F10] do not rise where the sheet divides evenly', () => {
    const even: CountDemand = { width: 48 * 25.4, left: 0, right: 0, usable: 8 * 25.4 }
    expect([runningCount(even), balanceCountBefore(even), balanceCountAfter(even), centreCountBefore(even)]).toEqual([
      6, 6, 6, 6,
    ])
  })
})
