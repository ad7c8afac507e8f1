import { point, type Point } from '../geometry/point'
import { boxAround, boxGrown } from '../geometry/box'
import type { Outline } from '../geometry/panel-outline'
import { regionArea, transformRegion, type Region, type Ring } from '../geometry/polygon'
import { rotation, type Transform } from '../geometry/transform'
import { patternSizes, threeSizes, type ThreeSizes } from '../faces/face'
import { cutCells, taggedField, taggedSheet, type Cell } from '../faces/cells'
import { borderInside, fieldOf, isBordered, planInField, fieldCentre } from '../faces/field'
import { BORDER, WINDOW } from '../faces/window-group'
import type { WindowGroup } from '../ids'
import type { Part } from '../job/job'
import type { PartFlitches } from '../job/part-flitches'
import { present } from '../invariant'
import { numberFacesNext, runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { leavesTaken } from '../patterns/jointed-sheet'
import type { Plan } from '../patterns/pattern'
import { planRecipe } from '../patterns/plan-recipe'
import { turnedPlan } from '../patterns/turned-plan'
import type { MadeUpLeaf } from '../scarf/made-up-leaf'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { dealBorder, layBorder } from './lay-border'
import type { MakeUpVoid } from './make-up-run'
import { woodOf, type PartWood } from './part-wood'
import { logPlacement, onLeaf, originOnLeaf, placement, type WindowPlace } from './placement'
import type { Play } from './play'
import { resolveRecipe, type Resolved, type RunLeaves } from './resolve-recipe'
import { placeInPlay, playFor, seedFor, shortfallOf, type Seed, type Shortfall } from './seeds'

/** A cell with its leaf, and where the leaf comes to lie. */
export interface Piece {
  readonly cell: Cell
  /** The flitch that it is cut from: leaf numbers are unique within it only. */
  readonly flitch: Flitch
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
  /** That of the field; a border may be cut from another. */
  readonly flitch: Flitch
  readonly shop: Shop
  readonly sizes: ThreeSizes
  readonly plan: Plan
  readonly count: number
  /** Width of the sheet for which a running match finds no wood. */
  readonly bare: number
  readonly pieces: readonly Piece[]
  /** Those of the field. */
  readonly play: Play
  readonly position: Point<'leaf'>
  /** The play is empty: what every edge would have to give up, at the best position. */
  readonly shortfall: Shortfall
  /** null without a border. */
  readonly border: LaidBorder | null
}

/** A border on its leaves: its pieces are among those of the face, and move with a window of their own. */
export interface LaidBorder {
  readonly flitch: Flitch
  readonly leaves: number
  readonly play: Play
  readonly position: Point<'leaf'>
  readonly shortfall: Shortfall
  /** The line of other wood that lies between its two outlines; null without one. */
  readonly string: { readonly outside: Outline<'panel'>; readonly inside: Outline<'panel'> } | null
}

/** What moves together: the pieces of the field, or those of the border. */
export interface LaidGroup {
  readonly group: WindowGroup
  readonly flitch: Flitch
  readonly pieces: readonly Piece[]
  readonly play: Play
  readonly position: Point<'leaf'>
  readonly shortfall: Shortfall
}

/** The field, and the border if there is one. */
export function groupsOf(face: LaidFace): readonly LaidGroup[] {
  const inGroup = (group: WindowGroup) => face.pieces.filter(({ cell }) => cell.group === group)
  const { flitch, play, position, shortfall, border } = face
  const field: LaidGroup = { group: WINDOW, flitch, pieces: inGroup(WINDOW), play, position, shortfall }
  return border ? [field, { group: BORDER, pieces: inGroup(BORDER), ...border }] : [field]
}

/** One of them; a group that the face does not have is the field's. */
export const groupOf = (face: LaidFace, wanted: WindowGroup): LaidGroup => {
  const [field, ...others] = groupsOf(face)
  return others.find(({ group }) => group === wanted) ?? present(field, 'a face without a field')
}

/** Whether all pieces of the field, and those of a border, have a place at which they lie in sound wood. */
export const fitsItsLeaves = (face: LaidFace): boolean => groupsOf(face).every(({ play }) => play.region.length > 0)

/** As much of a face as says what it is cut from. */
interface CutFrom {
  readonly flitch: Flitch
  readonly border: Pick<LaidBorder, 'flitch'> | null
}

/** The flitches that a face is cut from: that of its field, and that of its border where it is another. */
export const flitchesOf = ({ flitch, border }: CutFrom): readonly Flitch[] =>
  border && border.flitch.id !== flitch.id ? [flitch, border.flitch] : [flitch]

/** The name of the flitch that a piece is cut from, where it is not that of the field; else null. */
export const otherFlitch = (
  { flitch: own }: Pick<LaidFace, 'flitch'>,
  { flitch }: Pick<Piece, 'flitch'>,
): string | null => (flitch.id === own.id ? null : flitch.name)

/** The pieces of the pattern itself, without those of a border. */
export const fieldPieces = ({ pieces }: LaidFace): readonly Piece[] =>
  pieces.filter(({ cell }) => cell.group === WINDOW)

/** Lays the face of a part: resolves its recipe, cuts its cells, gives them leaves, and finds the play and the position. */
export function layFace(part: Part, flitches: PartFlitches, shop: Shop, answers: Answers): LaidFace {
  const { field: flitch } = flitches
  const { sizes, resolved, plan, seeds, play, groups } = dealField(part, flitch, shop, answers)
  const shortfall = play.region.length > 0 ? null : shortfallOf(seeds, groups, answers)
  const position = resolved.position ?? part.positions[WINDOW] ?? placeInPlay(play, shortfall, flitch, answers)
  const border = isBordered(part) ? layBorder(part, flitches.border, borderWithin(sizes, plan), shop, answers) : null
  return {
    part,
    flitch,
    shop,
    sizes,
    plan,
    count: resolved.count,
    bare: resolved.bare,
    pieces: [
      ...seeds.map((seed) => placed(seed, position)),
      ...(border?.seeds.map((seed) => placed(seed, border.position)) ?? []),
    ],
    play,
    position,
    shortfall,
    border: border && {
      flitch: flitches.border,
      leaves: border.leaves,
      play: border.play,
      position: border.position,
      shortfall: border.shortfall,
      string: stringOf(part),
    },
  }
}

/** Whether a face has a place as `hasPlace` says, without looking for where it would lie and what would be lacking. */
export function wouldHavePlace(part: Part, flitches: PartFlitches, shop: Shop, answers: Answers): boolean {
  const { sizes, resolved, plan, seeds, play } = dealField(part, flitches.field, shop, answers)
  if (resolved.bare >= BARE || !isDealt({ seeds, play })) return false
  return !isBordered(part) || isDealt(dealBorder(part, flitches.border, borderWithin(sizes, plan), shop, answers))
}

/** Less of a sheet that finds no wood is nothing. */
export const BARE = 0.01

const isDealt = ({ seeds, play }: { readonly seeds: readonly Seed[]; readonly play: Play }): boolean =>
  regionArea(play.region) > 0 && seeds.every(({ leaf }) => leaf !== null)

const borderWithin = ({ outlines }: ThreeSizes, plan: Plan) => ({
  sheet: outlines.sheet,
  fieldLeaves: leavesTaken(plan),
})

/** The field of a part: its recipe resolved, its cells dealt to leaves, and the play that they have there. */
function dealField(part: Part, flitch: Flitch, shop: Shop, answers: Answers) {
  const sizes = threeSizes(part)
  const sheet = sizes.outlines.sheet
  const wood = woodOf(part, flitch, shop, answers)
  const resolved = resolveRecipe(
    part,
    patternSizes(part, shop),
    patternSheet(part, sizes),
    turnedRun(wood.run(), part.windowTurn),
    (count) =>
      playFor(
        fieldSeeds(
          part,
          flitch,
          planFor(part, flitch, shop, { count, bands: null, position: null, bare: 0 }),
          sheet,
          wood,
        ),
        answers,
      ).play.region.length > 0,
  )
  const plan = planFor(part, flitch, shop, resolved)
  const seeds = fieldSeeds(part, flitch, plan, sheet, wood)
  return { sizes, resolved, plan, seeds, ...playFor(seeds, answers) }
}

/** The box that a pattern divides, about the middle of the field. */
function patternSheet(part: Part, sizes: ThreeSizes): ThreeSizes['sheet'] {
  if (!isBordered(part)) return sizes.sheet
  const { width, length } = fieldOf(part)
  const half = { top: length / 2, right: width / 2, bottom: length / 2, left: width / 2 }
  return boxGrown(boxAround([point<'panel'>(0, 0)]), half)
}

/** The cells of a part, its open values found. */
export const planFor = (part: Part, flitch: Flitch, shop: Shop, { count, bands }: Resolved): Plan =>
  turnedPlan(
    planInField(
      planRecipe(part.recipe, patternSizes(part, shop), count, { numberFacesNext: numberFacesNext(flitch) }, bands),
      part.recipe,
      fieldCentre(part),
    ),
    part.windowTurn,
  )

/** The leaves as a turned window meets them: how long and wide they are is then measured along its own sides. */
function turnedRun(leaves: RunLeaves, degrees: number): RunLeaves {
  if (degrees === 0) return leaves
  const back = rotation<'leaf'>((-degrees * Math.PI) / 180)
  return leaves.map(({ usable, shift }) => ({ usable: transformRegion(back, usable), shift }))
}

function stringOf(part: Part): LaidBorder['string'] {
  if (!isBordered(part) || !part.border.string) return null
  return { outside: borderInside(part), inside: fieldOf(part).outline }
}

/** The cells of the pattern, cut out of the sheet, or out of the field where there is a border. */
const fieldCells = (part: Part, plan: Plan, sheet: Outline<'panel'>): readonly Cell[] =>
  cutCells(plan, isBordered(part) ? taggedField(fieldOf(part).outline) : taggedSheet(sheet, plan))

function fieldSeeds(part: Part, flitch: Flitch, plan: Plan, sheet: Outline<'panel'>, wood: PartWood): readonly Seed[] {
  const cells = fieldCells(part, plan, sheet)
  const run = runOfLeaves(flitch, part.recipe.firstLeaf, leavesTaken(plan))
  return cells.map((cell) => seedFor(part, flitch, { cell, next: run[cell.rank] ?? null }, wood))
}

function placed(seed: Seed, position: Point<'leaf'>): Piece {
  const { cell, flitch, leaf, rough, usable, drift, nudge, farther, nudgeDropped, cut, made, makeUpVoid } = seed
  const place: WindowPlace = { position, drift, nudge, farther }
  const origin = originOnLeaf(place)
  return {
    cell,
    flitch,
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
