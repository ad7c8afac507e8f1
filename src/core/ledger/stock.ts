import type { Answers } from '../fit/answers'
import type { Stock } from '../fit/joint-ways'
import { boxRing } from '../geometry/box'
import type { Flitch } from '../leaves/flitch'
import type { Shop } from '../shop'
import type { LedgerFace } from './claims'
import { jobRests, worthKeeping } from './offcuts'

/**
 * What the leaves of a flitch still give when other faces have taken theirs: the labelled offcuts, each by its largest
 * sound strip, and the leaves of which something is taken. `others`: every face of the job but the one that asks.
 */
export function stockOf(others: readonly LedgerFace[], flitch: Flitch, shop: Shop, answers: Answers): Stock {
  const rests = jobRests(others, shop, answers).filter((rest) => rest.flitch === flitch.id)
  return {
    offcuts: worthKeeping(rests).flatMap(({ leaf, label, strip }) =>
      strip ? [{ leaf, label, wood: [[boxRing(strip.box)]] }] : [],
    ),
    taken: rests.map(({ leaf }) => leaf),
  }
}
