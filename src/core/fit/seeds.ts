import { boxAround, boxCentre } from '../geometry/box'
import { roughWindow, type Cell } from '../faces/cells'
import { BORDER } from '../faces/window-group'
import { add, point, type Point } from '../geometry/point'
import type { Region, Ring } from '../geometry/polygon'
import type { Part } from '../job/job'
import { findLeaf } from '../leaves/bundle'
import { leafCutFor } from '../leaves/done-cuts'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import type { MadeUpLeaf } from '../scarf/made-up-leaf'
import type { Answers } from './answers'
import { AS_IT_IS, type MakeUpVoid } from './make-up-run'
import type { PartWood } from './part-wood'
import {
  findPlay,
  firstPosition,
  groupsOfEqualPieces,
  leastShortfall,
  shapeOf,
  type Fitting,
  type Group,
  type Play,
} from './play'

/** A cell with its leaf, before it is known where the window lies. */
export interface Seed {
  readonly cell: Cell
  /** The flitch that it is cut from. */
  readonly flitch: Flitch
  readonly leaf: Leaf | null
  readonly rough: Ring<'window'>
  readonly usable: Region<'leaf'>
  readonly drift: Point<'leaf'>
  readonly nudge: Point<'leaf'>
  /** How far it lies from the first piece of its leaf, where a leaf gives several. */
  readonly farther: Point<'leaf'>
  readonly nudgeDropped: boolean
  readonly cut: boolean
  readonly made: MadeUpLeaf | null
  readonly makeUpVoid: MakeUpVoid | null
}

const NOWHERE = point<'leaf'>(0, 0)

/** A cell with the leaf that was chosen for it, or else the one that `next` has for it. */
export function seedFor(
  part: Part,
  flitch: Flitch,
  {
    cell,
    next,
    rough = roughOf(part, cell),
    farther = NOWHERE,
  }: {
    readonly cell: Cell
    readonly next: Leaf | null
    readonly rough?: Ring<'window'>
    readonly farther?: Point<'leaf'>
  },
  wood: PartWood,
): Seed {
  const chosen = part.chosen[cell.id]
  const ref = { part: part.id, cell: cell.id }
  const wanted = (chosen === undefined ? null : findLeaf(flitch, chosen)) ?? next
  const cutFrom = leafCutFor(flitch.leaves, ref, wanted)
  const leaf = cutFrom ?? wanted
  const nudge = part.nudges[cell.id]
  const holds = nudge !== undefined && nudge.leaf === leaf?.number
  // what is decided for the run is decided for the field
  const { made, makeUpVoid } = leaf && cell.group !== BORDER ? wood.madeOf(cell.id, leaf) : AS_IT_IS
  return {
    cell,
    flitch,
    leaf,
    rough,
    usable: made?.usable ?? (leaf ? wood.leftFor(leaf, ref) : []),
    cut: cutFrom !== null,
    drift: leaf?.drift ?? NOWHERE,
    nudge: holds ? nudge.by : NOWHERE,
    farther,
    nudgeDropped: nudge !== undefined && !holds,
    made,
    makeUpVoid,
  }
}

/** The rough piece that a cell of a part is cut from. */
export const roughOf = ({ allowance, laterAllowance }: Part, cell: Cell): Ring<'window'> =>
  roughWindow(cell.toCut, { first: allowance, later: laterAllowance })

const shiftOf = ({ drift, nudge, farther }: Seed): Point<'leaf'> => add(add(drift, nudge), farther)

/** The play of the pieces that have a leaf. */
export function playFor(seeds: readonly Seed[], answers: Answers): { play: Play; groups: readonly Group[] } {
  const fittings: Fitting[] = seeds
    .filter(({ leaf }) => leaf !== null)
    .map((seed) => ({ rough: seed.rough, usable: seed.usable, shift: shiftOf(seed) }))
  if (fittings.length === 0) return { play: { region: [], exact: false }, groups: [] }
  const about = fittings.flatMap(({ rough, usable, shift }) => [shapeOf(rough), usable, shift.x, shift.y])
  return answers('play', about, () => {
    const groups = groupsOfEqualPieces(fittings, answers)
    return { play: findPlay(groups), groups }
  })
}

export const shortfallOf = (seeds: readonly Seed[], groups: readonly Group[], answers: Answers) =>
  answers(
    'shortfall',
    seeds.flatMap((seed) => [shapeOf(seed.rough), seed.usable, shiftOf(seed).x, shiftOf(seed).y]),
    () => (groups.length ? leastShortfall(groups) : null),
  )

/** The least that every edge would have to give up, and where. */
export type Shortfall = ReturnType<typeof shortfallOf>

/** Where a window lies unless someone put it elsewhere: in the middle of its play, or where least is missing. */
export function placeInPlay(play: Play, shortfall: Shortfall, flitch: Flitch, answers: Answers): Point<'leaf'> {
  const found = play.region.length
    ? answers('first position', [play.region], () => firstPosition(play))
    : (shortfall?.at ?? null)
  return found ?? boxCentre(boxAround(flitch.outline))
}
