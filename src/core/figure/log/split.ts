import type { Log, SplitShape } from './log'

/** A crack on one leaf, across the log and along from the numbered end. */
export interface SplitTrace {
  readonly end: SplitShape['end']
  readonly length: number
  readonly acrossAt: (z: number) => number
  /** How wide it gapes; 0 beyond its tip. */
  readonly gapAt: (z: number) => number
}

/** The cracks that a leaf shows. */
export function splitTraces(log: Log, leaf: number): readonly SplitTrace[] {
  return log.splits
    .filter(({ firstLeaf, lastLeaf }) => leaf >= firstLeaf && leaf <= lastLeaf)
    .map((split) => trace(log, split, leaf))
}

function trace(
  { trunk, noise }: Log,
  { end, across, firstLeaf, lastLeaf, length }: SplitShape,
  leaf: number,
): SplitTrace {
  const off = (leaf - (firstLeaf + lastLeaf) / 2) / ((lastLeaf - firstLeaf) / 2 + 1)
  const long = length * (1 - 0.6 * off * off)
  const fromEnd = (z: number) => (end === 'numbered' ? z : trunk.length - z)
  return {
    end,
    length: long,
    acrossAt: (z) =>
      across + 1.1 * noise(z / 38, across, 30) - 1.1 * noise((end === 'numbered' ? 0 : trunk.length) / 38, across, 30),
    gapAt: (z) => (fromEnd(z) < long ? 1.3 * Math.sqrt(1 - fromEnd(z) / long) : 0),
  }
}
