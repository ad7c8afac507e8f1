import type { Job } from '../../src/core/job/job'
import { blankLeaf, emptyJob, rectangle, usualFlitch, usualPart } from '../../src/core/job/usual'

const leaves = Array.from({ length: 6 }, (_, i) => ({ ...blankLeaf(i + 1), drift: { x: 0, y: 2 * i } }))
const walnut = usualFlitch('walnut', 'Walnut', rectangle(300, 2400), leaves)
const maple = usualFlitch('maple', 'Maple', rectangle(180, 2100), [11, 12, 13].map(blankLeaf))

/** A small job with two flitches; the leaves of the first drift by 2 mm each, and its one part has all sorts of decisions. */
export const SAMPLE: Job = {
  ...emptyJob('Sideboard'),
  flitches: [{ ...walnut, missing: [{ after: 3, count: 2 }] }, maple],
  parts: [
    {
      ...usualPart('door', 'Door', 500, 600, walnut),
      positions: { all: { x: 150, y: 700 } },
      chosen: { L1: 4 },
      nudges: { L1: { leaf: 4, by: { x: 0, y: 3 } }, R1: { leaf: 2, by: { x: 1, y: 0 } } },
    },
    usualPart('top', 'Top', 1200, 400, maple),
  ],
}
