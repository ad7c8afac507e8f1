import { boxAround, boxCentre } from '../geometry/box'
import { add, point, type Point } from '../geometry/point'
import { transformRegion, type Region, type Ring } from '../geometry/polygon'
import { rotation, type Transform } from '../geometry/transform'
import { patternSizes, threeSizes, type ThreeSizes } from '../faces/face'
import { cutCells, roughWindow, taggedSheet, type Cell } from '../faces/cells'
import type { Part } from '../job/job'
import { WHOLE_RUN } from '../job/make-up'
import { leafCutFor, type PieceRef } from '../leaves/done-cuts'
import { findLeaf, leafOutline, numberFacesNext, runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { rawWoodFor, usableArea, woodFor } from '../leaves/usable'
import type { Plan } from '../patterns/pattern'
import { planRecipe } from '../patterns/plan-recipe'
import { turnedPlan } from '../patterns/turned-plan'
import type { MadeUpLeaf } from '../scarf/made-up-leaf'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { AS_IT_IS, madeUpLeaves, type MakeUpVoid } from './make-up-run'
import { logPlacement, onLeaf, originOnLeaf, placement, type WindowPlace } from './placement'
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
import { WINDOW } from '../faces/window-group'
import { resolveRecipe, type Resolved, type RunLeaves } from './resolve-recipe'

/** A cell with its leaf, and where the leaf comes to lie. */
export interface Piece {
  readonly cell: Cell
  /** null when the run has come to the end of the flitch. */
  readonly leaf: Leaf | null
  readonly place: WindowPlace
  readonly leafToPanel: Transform<'leaf', 'panel'>
  /** As `leafToPanel`, drift taken off. */
  readonly logToPanel: Transform<'leaf', 'panel'>
  /** The rough piece about the window's origin, and where it lies on the leaf. */
  readonly rough: Ring<'window'>
  readonly roughOnLeaf: Ring<'leaf'>
  readonly windowOnLeaf: Ring<'leaf'>
  readonly usable: Region<'leaf'>
  /** A nudge that was made for another leaf and is void. */
  readonly nudgeDropped: boolean
  /** It has been cut out of its leaf, and is fixed. */
  readonly cut: boolean
  /** The leaf made longer or wider: all rings `…OnLeaf` and `usable` are then in its frame. null for a leaf as it is. */
  readonly made: MadeUpLeaf | null
  /** Why the leaf is not made up though it was to be. */
  readonly makeUpVoid: MakeUpVoid | null
}

/** A face laid on its leaves, before it is judged. */
export interface LaidFace {
  readonly part: Part
  readonly flitch: Flitch
  readonly sizes: ThreeSizes
  readonly plan: Plan
  readonly count: number
  /** Width of the sheet for which a running match finds no wood. */
  readonly bare: number
  readonly pieces: readonly Piece[]
  readonly play: Play
  readonly position: Point<'leaf'>
  /** The play is empty: what every edge would have to give up, at the best position. */
  readonly shortfall: { readonly by: number; readonly at: Point<'leaf'> } | null
}

/** Lays the face of a part: resolves its recipe, cuts its cells, gives them leaves, and finds the play and the position. */
export function layFace(part: Part, flitch: Flitch, shop: Shop, answers: Answers): LaidFace {
  const sizes = threeSizes(part)
  const wood = woodOf(part, flitch, shop, answers)
  const resolved = resolveRecipe(
    part,
    patternSizes(part),
    sizes.sheet,
    turnedRun(wood.run(), part.windowTurn),
    (count) =>
      playFor(
        pieceSeeds(part, flitch, planFor(part, flitch, { count, bands: null, position: null, bare: 0 }), wood),
        answers,
      ).play.region.length > 0,
  )
  const plan = planFor(part, flitch, resolved)
  const seeds = pieceSeeds(part, flitch, plan, wood)
  const { play, groups } = playFor(seeds, answers)
  const shortfall = play.region.length > 0 ? null : shortfallOf(seeds, groups, answers)
  const position = windowPosition(part, resolved, play, shortfall, flitch, answers)
  return {
    part,
    flitch,
    sizes,
    plan,
    count: resolved.count,
    bare: resolved.bare,
    pieces: seeds.map((seed) => placed(seed, position)),
    play,
    position,
    shortfall,
  }
}

const planFor = (part: Part, flitch: Flitch, { count, bands }: Resolved): Plan =>
  turnedPlan(
    planRecipe(part.recipe, patternSizes(part), count, { numberFacesNext: numberFacesNext(flitch) }, bands),
    part.windowTurn,
  )

/** The leaves as a turned window meets them: how long and wide they are is then measured along its own sides. */
function turnedRun(leaves: RunLeaves, degrees: number): RunLeaves {
  if (degrees === 0) return leaves
  const back = rotation<'leaf'>((-degrees * Math.PI) / 180)
  return leaves.map(({ usable, shift }) => ({ usable: transformRegion(back, usable), shift }))
}

/** The sound wood of the leaves of a flitch that is left for one part; for a piece that has been cut, that piece alone. */
function woodOf(part: Part, flitch: Flitch, shop: Shop, answers: Answers) {
  const usableOf = (leaf: Leaf): Region<'leaf'> =>
    answers(
      'usable area',
      [leafOutline(flitch, leaf), leaf.defects, shop, part.showClass, flitch.sideMargin, flitch.endMargin],
      () => usableArea(flitch, leaf, shop, part.showClass),
    )
  const leftFor = (leaf: Leaf, piece: PieceRef): Region<'leaf'> =>
    leaf.cuts.length === 0
      ? usableOf(leaf)
      : answers('wood left', [usableOf(leaf), leaf.cuts, piece.part, piece.cell], () =>
          woodFor(usableOf(leaf), leaf, piece),
        )
  // a leaf that was cut for a cell of a running match goes on giving what was cut
  const ownCell = (leaf: Leaf) => leaf.cuts.find((cut) => cut.part === part.id)?.cell ?? ''
  // a leaf is made up of all its wood: what was cut from it so made is fixed by the decisions, not by the wood
  const rawFor = (leaf: Leaf, piece: PieceRef): Region<'leaf'> =>
    leaf.cuts.length === 0
      ? usableOf(leaf)
      : answers('raw wood left', [usableOf(leaf), leaf.cuts, piece.part, piece.cell], () =>
          rawWoodFor(usableOf(leaf), leaf, piece),
        )
  const madeOf = madeUpLeaves(part, flitch, (leaf, cell) => rawFor(leaf, { part: part.id, cell }), answers)
  const run = () =>
    runOfLeaves(flitch, part.recipe.firstLeaf, flitch.leaves.length).map((leaf) => ({
      usable:
        madeOf(WHOLE_RUN, leaf, ownCell(leaf)).made?.usable ?? leftFor(leaf, { part: part.id, cell: ownCell(leaf) }),
      shift: leaf.drift,
    }))
  return { leftFor, madeOf, run }
}

/** A cell with its leaf, before it is known where the window lies. */
interface Seed {
  readonly cell: Cell
  readonly leaf: Leaf | null
  readonly rough: Ring<'window'>
  readonly usable: Region<'leaf'>
  readonly drift: Point<'leaf'>
  readonly nudge: Point<'leaf'>
  readonly nudgeDropped: boolean
  readonly cut: boolean
  readonly made: MadeUpLeaf | null
  readonly makeUpVoid: MakeUpVoid | null
}

function pieceSeeds(part: Part, flitch: Flitch, plan: Plan, wood: ReturnType<typeof woodOf>): readonly Seed[] {
  const cells = cutCells(plan, taggedSheet(threeSizes(part).outlines.sheet, plan))
  const run = runOfLeaves(flitch, part.recipe.firstLeaf, plan.cells.length)
  return cells.map((cell) => {
    const chosen = part.chosen[cell.id]
    const ref = { part: part.id, cell: cell.id }
    const wanted = (chosen === undefined ? null : findLeaf(flitch, chosen)) ?? run[cell.rank] ?? null
    const cutFrom = leafCutFor(flitch.leaves, ref, wanted)
    const leaf = cutFrom ?? wanted
    const nudge = part.nudges[cell.id]
    const holds = nudge !== undefined && nudge.leaf === leaf?.number
    const { made, makeUpVoid } = leaf ? wood.madeOf(cell.id, leaf) : AS_IT_IS
    return {
      cell,
      leaf,
      rough: roughWindow(cell.window, { first: part.allowance, later: part.laterAllowance }),
      usable: made?.usable ?? (leaf ? wood.leftFor(leaf, ref) : []),
      cut: cutFrom !== null,
      drift: leaf?.drift ?? point<'leaf'>(0, 0),
      nudge: holds ? nudge.by : point<'leaf'>(0, 0),
      nudgeDropped: nudge !== undefined && !holds,
      made,
      makeUpVoid,
    }
  })
}

/** The play of the pieces that have a leaf. */
function playFor(seeds: readonly Seed[], answers: Answers): { play: Play; groups: readonly Group[] } {
  const fittings: Fitting[] = seeds
    .filter(({ leaf }) => leaf !== null)
    .map(({ rough, usable, drift, nudge }) => ({ rough, usable, shift: add(drift, nudge) }))
  if (fittings.length === 0) return { play: { region: [], exact: false }, groups: [] }
  const about = fittings.flatMap(({ rough, usable, shift }) => [shapeOf(rough), usable, shift.x, shift.y])
  return answers('play', about, () => {
    const groups = groupsOfEqualPieces(fittings, answers)
    return { play: findPlay(groups), groups }
  })
}

const shortfallOf = (seeds: readonly Seed[], groups: readonly Group[], answers: Answers) =>
  answers(
    'shortfall',
    seeds.flatMap(({ rough, usable, drift, nudge }) => [shapeOf(rough), usable, drift.x + nudge.x, drift.y + nudge.y]),
    () => (groups.length ? leastShortfall(groups) : null),
  )

/** Where someone put the window; else where a running match was found; else in the middle of the play, or where least is missing. */
function windowPosition(
  part: Part,
  resolved: Resolved,
  play: Play,
  shortfall: LaidFace['shortfall'],
  flitch: Flitch,
  answers: Answers,
): Point<'leaf'> {
  if (resolved.position) return resolved.position
  const saved = part.positions[WINDOW]
  if (saved) return saved
  const found = play.region.length
    ? answers('first position', [play.region], () => firstPosition(play))
    : (shortfall?.at ?? null)
  return found ?? boxCentre(boxAround(flitch.outline))
}

function placed(seed: Seed, position: Point<'leaf'>): Piece {
  const { cell, leaf, rough, usable, drift, nudge, nudgeDropped, cut, made, makeUpVoid } = seed
  const place: WindowPlace = { position, drift, nudge }
  const origin = originOnLeaf(place)
  return {
    cell,
    leaf,
    place,
    leafToPanel: placement(cell.lay, place),
    logToPanel: logPlacement(cell.lay, place),
    rough,
    roughOnLeaf: onLeaf(rough, origin),
    windowOnLeaf: onLeaf(cell.window.ring, origin),
    usable,
    nudgeDropped,
    cut,
    made,
    makeUpVoid,
  }
}
