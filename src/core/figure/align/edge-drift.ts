/**
 * How a leaf lies against its neighbour by their wild edges. The waves of the bark run down the log and pass from leaf to
 * leaf, while crowns wander: edges are coarser than figure, but they say where a spot of the log lies.
 */
import { boxAround } from '../../geometry/box'
import { point, type Point } from '../../geometry/point'
import { ringEdges, type Ring } from '../../geometry/polygon'
import { topBetween } from './find-shift'

/** Rows of an edge are taken so far apart, mm; waves longer than `SLOW` are taken off; shifts are tried to `REACH`. */
const STEP = 2
const SLOW = 300
const REACH = 60

/** Edges that run straighter than this, mm of spread, say nothing; nor do waves less alike than this. */
const LEAST_WAVE = 0.3
const ALIKE = 0.6
const AS_GOOD = 0.85

/** Nearer than this, mm, two shifts are the same hill. */
const APART = 30

/**
 * The shift of the second outline against the first: the spot at p on the first is found at p + shift on the second. The
 * edges' middle says where it lies across. null where the edges are straight, too short, or fit in several places.
 */
export function edgeDrift(one: Ring<'leaf'>, next: Ring<'leaf'>): Point<'leaf'> | null {
  const from = boxAround([...one, ...next])
  const rows = Math.floor((from.max.y - from.min.y) / STEP)
  const [a, b] = [one, next].map((ring) => edgesOf(ring, from.min.y, rows)) as [Edges, Edges]
  const [wavesA, wavesB] = [a, b].map(({ left, right }) => [waves(left), waves(right)]) as [number[][], number[][]]
  if ([...wavesA, ...wavesB].every((wave) => spread(wave) < LEAST_WAVE)) return null
  const steps = REACH / STEP
  const scores = Array.from({ length: 2 * steps + 1 }, (_, i) => alike(wavesA, wavesB, i - steps))
  const best = scores.indexOf(Math.max(...scores))
  const rival = Math.max(-1, ...scores.filter((_, i) => Math.abs(i - best) * STEP >= APART))
  if (best === 0 || best === 2 * steps || scores[best]! < ALIKE || rival > AS_GOOD * scores[best]!) return null
  const along = best - steps
  const fine = topBetween(scores[best - 1]!, scores[best]!, scores[best + 1]!)
  return point(acrossAt(a, b, along), (along + fine) * STEP)
}

interface Edges {
  readonly left: readonly number[]
  readonly right: readonly number[]
}

/** Where the outermost edges lie across, row by row; NaN beyond the leaf. */
function edgesOf(ring: Ring<'leaf'>, y0: number, rows: number): Edges {
  const sides = Array.from({ length: rows }, (): [number, number] => [Infinity, -Infinity])
  for (const { a, b } of ringEdges(ring)) {
    const [low, high] = a.y < b.y ? [a, b] : [b, a]
    const first = Math.max(0, Math.ceil((low.y - y0) / STEP))
    for (let j = first; j < rows && y0 + j * STEP < high.y; j++) {
      const x = low.x + ((high.x - low.x) * (y0 + j * STEP - low.y)) / (high.y - low.y)
      const side = sides[j]!
      side[0] = Math.min(side[0], x)
      side[1] = Math.max(side[1], x)
    }
  }
  const known = (x: number): number => (Number.isFinite(x) ? x : NaN)
  return { left: sides.map(([x]) => known(x)), right: sides.map(([, x]) => known(x)) }
}

/** What an edge does about its own mean over a long stretch. */
function waves(edge: readonly number[]): number[] {
  const half = SLOW / STEP / 2
  const [sums, counts] = [[0], [0]]
  for (const [i, x] of edge.entries()) {
    sums.push(sums[i]! + (Number.isNaN(x) ? 0 : x))
    counts.push(counts[i]! + (Number.isNaN(x) ? 0 : 1))
  }
  return edge.map((x, i) => {
    const [from, to] = [Math.max(0, i - half), Math.min(edge.length, i + half + 1)]
    return x - (sums[to]! - sums[from]!) / (counts[to]! - counts[from]!)
  })
}

const spread = (wave: readonly number[]): number => {
  const known = wave.filter((x) => !Number.isNaN(x))
  return Math.sqrt(known.reduce((sum, x) => sum + x * x, 0) / Math.max(1, known.length))
}

/** The correlation of both edges at one shift, −1 to 1; −1 where less than half of the leaf is in common. */
function alike(one: readonly number[][], next: readonly number[][], shift: number): number {
  let [ab, aa, bb, n] = [0, 0, 0, 0]
  for (const [side, wave] of one.entries())
    for (const [i, x] of wave.entries()) {
      const y = next[side]![i + shift] ?? NaN
      if (Number.isNaN(x) || Number.isNaN(y)) continue
      ab += x * y
      aa += x * x
      bb += y * y
      n++
    }
  return n >= (one[0]?.length ?? 0) && aa * bb > 0 ? ab / Math.sqrt(aa * bb) : -1
}

/** How far the middle between the edges is shifted across, in the mean. */
function acrossAt(one: Edges, next: Edges, shift: number): number {
  let [sum, n] = [0, 0]
  for (const [i, left] of one.left.entries()) {
    const [x, y] = [left + one.right[i]!, (next.left[i + shift] ?? NaN) + (next.right[i + shift] ?? NaN)]
    if (Number.isNaN(x) || Number.isNaN(y)) continue
    sum += (y - x) / 2
    n++
  }
  return sum / Math.max(1, n)
}
