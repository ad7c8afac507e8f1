import { isBandJoint } from '../patterns/pattern'
import type { SeamReport } from '../seams/seam-report'
import type { JudgedFace } from './judged-face'

/** What a seam of a border is; null for those of the field. The figure is not asked to meet there. */
export function bandWords({ part: { border } }: Pick<JudgedFace, 'part'>, { kind }: SeamReport): string | null {
  if (!isBandJoint(kind)) return null
  if (kind === 'border') return 'to the field'
  if (kind === 'segment') return 'segment'
  return border?.corners === 'mitred' ? 'mitre' : 'corner'
}

/** Whether it runs along a curve. */
export const isCurved = ({ line }: SeamReport): boolean => line.length > 2
