import type { Region } from '../geometry/polygon'
import type { CellId } from '../ids'
import type { Part } from '../job/job'
import { WHOLE_RUN, type MakeUp } from '../job/make-up'
import { findLeaf, leafOutline } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { madeUpLeaf, type LeafWood, type MadeUpLeaf } from '../scarf/made-up-leaf'
import type { Answers } from './answers'

/** Why a leaf is not made up as was decided: another leaf lies there now, or its parts do not meet (or overlap). */
export type MakeUpVoid = 'another leaf' | 'no joint'

/** What a cell's leaf is made into; both null for a leaf as it is. */
export interface MadeUp {
  readonly made: MadeUpLeaf | null
  readonly makeUpVoid: MakeUpVoid | null
}

export const AS_IT_IS: MadeUp = { made: null, makeUpVoid: null }

/**
 * The leaves of a part as they are made up: what is decided for a cell goes before what is decided for the run. The
 * sound wood of a leaf is that which is left for a cell, `woodFor` where it is not the one that is asked about.
 */
export function madeUpLeaves(
  { madeUp }: Part,
  flitch: Flitch,
  usableOf: (leaf: Leaf, cell: CellId) => Region<'leaf'>,
  answers: Answers,
): (cell: CellId, leaf: Leaf, woodFor?: CellId) => MadeUp {
  const woodOf = (leaf: Leaf, cell: CellId): LeafWood => ({
    leaf: leaf.number,
    outline: [[leafOutline(flitch, leaf)]],
    usable: usableOf(leaf, cell),
    drift: leaf.drift,
  })
  const made = (makeUp: MakeUp, leaf: Leaf, cell: CellId): MadeUpLeaf | null => {
    const source = makeUp.how === 'wider' && makeUp.from !== null ? findLeaf(flitch, makeUp.from) : null
    const about = [leaf, ...(source ? [source] : [])].flatMap((each) => [
      leafOutline(flitch, each),
      usableOf(each, cell),
    ])
    return answers('made-up leaf', [makeUp, leaf.number, leaf.drift.x, leaf.drift.y, ...about], () =>
      madeUpLeaf(makeUp, woodOf(leaf, cell), () => source && woodOf(source, cell)),
    )
  }
  return (cell, leaf, woodFor = cell) => {
    const own = madeUp[cell]
    const void_ = own && own.leaf !== null && own.leaf !== leaf.number
    const makeUp = own && !void_ ? own : madeUp[WHOLE_RUN]
    if (!makeUp || (makeUp.leaf !== null && makeUp.leaf !== leaf.number))
      return void_ ? { made: null, makeUpVoid: 'another leaf' } : AS_IT_IS
    const found = made(makeUp, leaf, woodFor)
    return { made: found, makeUpVoid: void_ ? 'another leaf' : found ? null : 'no joint' }
  }
}
