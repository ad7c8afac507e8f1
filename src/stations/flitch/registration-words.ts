import type { FoundShift } from '../../core/figure/align/find-shift'
import { LEAST_LEAVES, type DriftLook, type Registration } from '../../core/figure/align/registration'
import type { Point } from '../../core/geometry/point'
import type { Flitch } from '../../core/leaves/flitch'
import { bareLength, showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import { leavesInWords } from './flitch-words'

/** How many leaves lie off the first, and by how much at most. */
export function driftInShort({ leaves }: Flitch, unit: LengthUnit): string {
  const lying = leaves.filter(({ drift }) => drift.x !== 0 || drift.y !== 0)
  if (lying.length === 0) return 'No leaf has drift: all are taken to lie as the first.'
  const most = (axis: 'x' | 'y') =>
    showLength(Math.max(...lying.map(({ drift }) => Math.abs(drift[axis]))), unit, 'seam')
  const have = lying.length === 1 ? 'has' : 'have'
  return `${leavesInWords(lying.length)} ${have} drift, ${most('y')} along and ${most('x')} across at most.`
}

const score = (likeness: number): string => likeness.toFixed(2)

/** How far the figure of a leaf can be trusted to tell where it lies; 1 is the same figure, 0 a stranger’s. */
export function trustInWords(found: FoundShift | null, by: Registration['by'], before: number): string {
  const else_ = by === 'edges' ? 'the wild edges tell' : `taken to lie as leaf ${before}`
  const [best, other] = found?.candidates ?? []
  if (!found || !best) return `no picture to compare: ${else_}`
  if (found.trust === 'none') return `figure not alike enough (${score(best.score)}): ${else_}`
  if (found.trust === 'any') return `any slide along looks the same (${score(best.score)}): ${else_}`
  if (found.trust === 'two' && other) return 'two shifts look as good: choose by eye'
  return `alike to ${score(best.score)}`
}

/** What pictures and edges can tell, mm, along and across: less than this is no drift. */
const TELLING = { along: 2, across: 1 }

/** Whether the leaves lie where they are taken to lie, as far as can be told. */
export const liesAsTaken = ({ leaves }: Registration, looks: readonly DriftLook[]): boolean =>
  leaves.every(({ drift }, i) => {
    const { x, y } = looks[i]!.drift
    return Math.abs(drift.x - x) <= TELLING.across && Math.abs(drift.y - y) <= TELLING.along
  })

/** A drift as it was found, along first. */
export const foundInWords = ({ x, y }: Point<'leaf'>, unit: LengthUnit): string =>
  `found ${bareLength(y, unit, 'seam')} along, ${bareLength(x, unit, 'seam')} across`

/** The shifts to choose between, where two look as good. */
export const shiftsOffered = (found: FoundShift | null, unit: LengthUnit): readonly string[] =>
  found?.trust === 'two'
    ? found.candidates.map(
        ({ along, across, score: likeness }) =>
          `${bareLength(along, unit, 'seam')} along, ${bareLength(across, unit, 'seam')} across (${score(likeness)})`,
      )
    : []

/** What the figure does by itself, how that was told from drift, and how far to trust it. */
export function wanderInWords(
  { wander, by, leaves }: Registration,
  found: readonly (FoundShift | null)[],
  unit: LengthUnit,
): readonly string[] {
  const unsure = found.filter((shift) => shift?.trust !== 'clear').length
  return [
    wander === null
      ? 'The pictures say nothing of where the leaves lie along.'
      : `The figure wanders by ${range(wander, unit)} along from leaf to leaf.`,
    by === 'edges'
      ? 'The wild edges tell this from drift; it is good to about a millimetre from leaf to leaf, and may add up to some over a long run.'
      : leaves.length < LEAST_LEAVES
        ? `With fewer than ${LEAST_LEAVES} leaves and no wild edges it can’t be told from drift: go by the register lines.`
        : 'There are no wild edges to tell this from drift. It is taken to grow evenly: drift that grows evenly is not found, only leaves that lie off the others.',
    ...(unsure > 0 ? [`At ${leavesInWords(unsure)} the figure alone does not settle it: see below.`] : []),
  ]
}

function range([least, most]: readonly [number, number], unit: LengthUnit): string {
  const [from, to] = [least, most].map((length) => bareLength(length, unit, 'seam'))
  return from === to ? showLength(most, unit, 'seam') : `${from} to ${showLength(most, unit, 'seam')}`
}
