import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { GRID } from '../geometry/tolerance'
import type { SeamReport } from '../seams/seam-report'
import type { Shop } from '../shop'

/** Whether a straight seam of the taped sheet is longer than what the shop trues in one go: the longest such, the rest counted. */
export function checkJointing(
  { part }: LaidFace,
  seams: readonly SeamReport[],
  { longestSeam }: Shop,
): readonly Finding[] {
  const long = seams
    .filter(({ length, line }) => length > longestSeam + GRID && line.length === 2)
    .sort((p, q) => q.length - p.length)
  const [longest] = long
  if (!longest) return []
  return [
    {
      code: 'seam-long',
      grade: 'note',
      part: part.id,
      place: { on: 'seam', letter: longest.letter },
      measured: longest.length,
      limit: longestSeam,
      about: { letter: longest.letter, more: long.length - 1 },
      remedies: [],
    },
  ]
}
