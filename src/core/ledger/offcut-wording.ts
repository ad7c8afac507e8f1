import { boxHeight, boxWidth } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { leavesListed } from './gate-wording'
import type { Offcut, OffcutUse } from './offcuts'

const USE: Readonly<Record<OffcutUse, string>> = {
  'edges and scarfs': 'for edges, scarfs and patches',
  patches: 'for patches',
  waste: 'waste',
}

/** What can be had of an offcut: `215 × 740 mm, for edges, scarfs and patches`. */
export function offcutWords({ strip, use }: Offcut, unit: LengthUnit): string {
  if (!strip) return USE.waste
  const [width, length] = [boxWidth(strip.box), boxHeight(strip.box)].map((size) => showLength(size, unit, 'place'))
  return `${width} × ${length} clear, ${USE[use]}`
}

export const KEEP_OFFCUTS = 'Chalk its label on each, and keep them until the panels are finished.'

/** Which leaves' offcuts are let go of, and why; '' where none are. */
export const letGoWords = (leaves: readonly number[], of = ''): string =>
  leaves.length === 0
    ? ''
    : `What is left of ${leavesListed(leaves)}${of} is let go of: the panels cut from ${leaves.length === 1 ? 'it' : 'them'} are finished.`
