/**
 * How well leaves of simulated logs, whose places are known, are found again: the drift of neighbours and of a whole flitch,
 * and the slide at a seam, over four species, beside the goals. `LEAFTURN_ALIGN` asks for another number of logs.
 */
import { bench, describe } from 'vitest'
import { figureDrift } from '../../src/core/figure/align/drift'
import type { FoundShift } from '../../src/core/figure/align/find-shift'
import { registered } from '../../src/core/figure/align/registration'
import { seamSlide } from '../../src/core/figure/align/seam-slide'
import { leafOutline } from '../../src/core/figure/log/leaf-outline'
import type { Log } from '../../src/core/figure/log/log'
import { add, point, type Point } from '../../src/core/geometry/point'
import { leafLying, logOf, SPECIES_TRIED, stripOf } from '../figure/known-shifts'

const logs = Number(process.env.LEAFTURN_ALIGN) || 3
const seeds = Array.from({ length: logs }, (_, i) => 9001 + 17 * i)
const size = { length: 800, pxPerMm: 0.5 }

/** How leaves are laid, mm across and along. */
const LIES: readonly Point<'leaf'>[] = [point(1.7, -12.4), point(-2.2, 23.6), point(0.6, 3.1), point(-1.1, -31)]
const SLIDES = [4.3, -11, 0.8, 23.7, -2.6]

interface Tried {
  readonly error: number
  readonly told: boolean
}

const at = (values: readonly number[], share: number) =>
  (values[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN).toFixed(2)

function line(what: string, tries: readonly Tried[], goal: string): string {
  const clear = tries.filter(({ told }) => !told).map(({ error }) => error)
  const sorted = [...clear].sort((p, q) => p - q)
  const numbers =
    sorted.length > 0
      ? `median ${at(sorted, 0.5)}, p90 ${at(sorted, 0.9)}, worst ${at(sorted, 1)} mm (goal ${goal}), ${sorted.filter((e) => e > 1.2).length} worse than 1.2`
      : 'no number promised'
  return `${what.padEnd(34)} ${tries.length} tried, ${tries.length - clear.length} told as not clear; ${numbers}`
}

const isTold = ({ trust }: FoundShift): boolean => trust !== 'clear'

/**
 * Against what the figure itself wanders between the two leaves: measured with both in place, on the wood that both pictures
 * show, since it is not the same all along a leaf.
 */
function driftTries(log: Log): readonly Tried[] {
  const first = leafLying(log, 5, { dx: 0, dy: 0 }, size)
  return LIES.map(({ x, y }) => {
    const shared = { ...size, length: size.length - Math.abs(y), from: 500 + Math.max(0, -y) }
    const [one, next] = [5, 6].map((leaf) => leafLying(log, leaf, { dx: 0, dy: 0 }, shared))
    const own = figureDrift(one!, next!).candidates[0]
    const found = figureDrift(first, leafLying(log, 6, { dx: x, dy: y }, size))
    const [best] = found.candidates
    const error = best && own ? Math.hypot(best.across - own.across - x, best.along - own.along - y) : Infinity
    return { error, told: isTold(found) }
  })
}

/** The two faces of one cut, of which the truth is known: no wandering between them. */
const slideTries = (log: Log): readonly Tried[] =>
  SLIDES.map((slid) => {
    const found = seamSlide(stripOf(log, 5, 500, 700, 'other'), stripOf(log, 6, 500 - slid, 700, 'numbered'))
    return { error: Math.abs((found.candidates[0]?.along ?? Infinity) - slid), told: isTold(found) }
  })

/** Eight leaves of a flitch with wild edges: how far the last lies off its place on the log, along and across. */
function flitchOff(log: Log): Point<'leaf'> {
  const lies = Array.from({ length: 8 }, (_, i) => (i === 0 ? point<'leaf'>(0, 0) : LIES[i % LIES.length]!))
  const pictures = lies.map(({ x, y }, i) => leafLying(log, i + 3, { dx: x, dy: y }, size))
  const looks = lies.map((by, i) => ({
    leaf: i + 3,
    outline: leafOutline(log, i + 3).map((p) => add(p, by)),
    box: { min: point<'leaf'>(0, 0), max: point<'leaf'>(1, 1) },
    drift: point<'leaf'>(0, 0),
    place: i,
  }))
  const found = pictures.slice(1).map((picture, i) => figureDrift(pictures[i]!, picture))
  const off = registered(looks, found, 'log').leaves.map(({ drift }, i) => [drift.x - lies[i]!.x, drift.y - lies[i]!.y])
  return point(Math.max(...off.map(([x]) => Math.abs(x!))), Math.max(...off.map(([, y]) => Math.abs(y!))))
}

for (const species of SPECIES_TRIED) {
  const tried = seeds.map((seed) => logOf(species, seed))
  const off = flitchOff(tried[0]!)
  console.log(
    [
      line(`${species}, drift of a neighbour:`, tried.flatMap(driftTries), '0.3 mostly, 1.2 worst'),
      line(`${species}, slide at a seam:`, tried.flatMap(slideTries), '0.3 mostly, 1.2 worst'),
      `${`${species}, places of 8 leaves:`.padEnd(34)} worst ${off.y.toFixed(1)} mm along, ${off.x.toFixed(1)} across, told by wild edges (goal 1 along a leaf, 0.5 across)`,
    ].join('\n'),
  )
}

describe('lining up', () => {
  const log = logOf('walnut', seeds[0]!)
  const [one, next] = [5, 6].map((leaf) => leafLying(log, leaf, { dx: 0, dy: 0 }, { length: 2000, pxPerMm: 0.5 }))
  const [left, right] = [stripOf(log, 5, 500, 700, 'other'), stripOf(log, 6, 495, 700, 'numbered')]
  const few = { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 }
  bench('two leaves of 2000 mm', () => void figureDrift(one!, next!), few)
  bench('a seam of 700 mm', () => void seamSlide(left, right), few)
})
