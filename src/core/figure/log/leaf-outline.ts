import { point, type Point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import { edgesAt, faceDepth, type Log } from './log'

/** Spacing of the cross-sections an outline is taken from, and how far it may run beside them once simplified. */
const STEP = 12
const SIMPLIFIED = 0.3

/** The wild outline of a leaf (numbered from 1) in its frame, clockwise as seen, from its numbered end. */
export function leafOutline(log: Log, leaf: number): Ring<'leaf'> {
  const sunk = faceDepth(log, leaf, 'numbered')
  const { length } = log.trunk
  const left: Point<'leaf'>[] = []
  const right: Point<'leaf'>[] = []
  const steps = Math.ceil(length / STEP)
  for (let i = 0; i <= steps; i++) {
    const y = (length * i) / steps
    const edges = edgesAt(log, sunk, y)
    if (!edges) continue
    left.push(point(rounded(edges.from + log.left), rounded(y)))
    right.push(point(rounded(edges.to + log.left), rounded(y)))
  }
  return [...simplified(right), ...simplified(left).reverse()]
}

/** To a hundredth: finer than anyone can trace an edge. */
const rounded = (value: number): number => Math.round(value * 100) / 100

/** The points of an open line that are needed to stay within `SIMPLIFIED` of it. */
function simplified(line: Point<'leaf'>[]): Point<'leaf'>[] {
  const first = line[0]
  const last = line.at(-1)
  if (!first || !last || line.length < 3) return line
  let [worst, at] = [0, 0]
  for (let i = 1; i + 1 < line.length; i++) {
    const p = line[i]!
    const onChord = first.x + ((last.x - first.x) * (p.y - first.y)) / (last.y - first.y)
    const off = Math.abs(p.x - onChord)
    if (off > worst) [worst, at] = [off, i]
  }
  if (worst <= SIMPLIFIED) return [first, last]
  return [...simplified(line.slice(0, at + 1)), ...simplified(line.slice(at)).slice(1)]
}
