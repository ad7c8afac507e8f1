import { point } from '../../geometry/point'
import type { Defect } from '../../leaves/leaf'
import { knotTrace } from './knot'
import { faceDepth, type Log } from './log'
import { splitTraces } from './split'

/** The knots and end splits that show on a leaf (numbered from 1), in its frame. */
export function leafDefects(log: Log, leaf: number): readonly Defect[] {
  return [...knotSpots(log, leaf), ...splitLines(log, leaf)]
}

function knotSpots(log: Log, leaf: number): readonly Defect[] {
  const surface = faceDepth(log, leaf, 'numbered') / log.thickness + 1
  return log.knots.flatMap((knot, i): Defect[] => {
    const { u, z, radius } = knotTrace(knot, surface)
    if (radius < 1) return []
    const centre = point<'leaf'>(tenth(u + log.left), tenth(z))
    // the rim is drawn out along the grain, and ragged
    return [
      { id: `leaf-${leaf}-knot-${i + 1}`, kind: 'knot', note: '', shape: 'spot', centre, radius: tenth(1.25 * radius) },
    ]
  })
}

function splitLines(log: Log, leaf: number): readonly Defect[] {
  return splitTraces(log, leaf).map((split, i): Defect => {
    const [end, tip] =
      split.end === 'numbered' ? [0, split.length] : [log.trunk.length, log.trunk.length - split.length]
    const at = (z: number) => point<'leaf'>(tenth(split.acrossAt(z) + log.left), tenth(z))
    return { id: `leaf-${leaf}-split-${i + 1}`, kind: 'split', note: '', shape: 'line', from: at(end), to: at(tip) }
  })
}

const tenth = (value: number): number => Math.round(value * 10) / 10
