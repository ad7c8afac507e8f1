/**
 * The border of a face on its leaves.
 *
 * Input: the part, its taped sheet, the border's flitch and the shop; how many leaves the field takes. Output: the pieces of the border, each with
 * its leaf. A leaf gives several, one behind the other where grain runs across the band and side by side where it runs
 * along, their middles in one line; all move with one window, which is that of the first piece. Fewest that will do is
 * the smallest number of leaves, of those that the flitch has, on which they have any play. Failure: none; what has no
 * leaf or no room is said by the play, on as many leaves as its length asks for.
 */
import { bandPieces, type BandPiece } from '../faces/border-cells'
import { cellFrom, type Cell } from '../faces/cells'
import type { BorderedPart } from '../faces/field'
import { BORDER } from '../faces/window-group'
import { boxAround, boxHeight, boxWidth, regionBox } from '../geometry/box'
import type { Outline } from '../geometry/panel-outline'
import { point, type Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { firstLeafOf } from '../job/usual'
import { runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { shareOf } from '../patterns/shared-leaves'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { woodOf, type PartWood } from './part-wood'
import type { Group, Play } from './play'
import { placeInPlay, playFor, roughOf, seedFor, shortfallOf, type Seed, type Shortfall } from './seeds'

/** A border with its own window, before its pieces are placed. */
export interface BorderSeeds {
  readonly seeds: readonly Seed[]
  readonly leaves: number
  readonly play: Play
  readonly position: Point<'leaf'>
  readonly shortfall: Shortfall
}

/** The border on its leaves, and where it lies. */
export function layBorder(
  part: BorderedPart,
  flitch: Flitch,
  within: { readonly sheet: Outline<'panel'>; readonly fieldLeaves: number },
  shop: Shop,
  answers: Answers,
): BorderSeeds {
  const { seeds, leaves, play, groups } = dealBorder(part, flitch, within, shop, answers)
  const shortfall = play.region.length > 0 ? null : shortfallOf(seeds, groups, answers)
  const position = part.positions[BORDER] ?? placeInPlay(play, shortfall, flitch, answers)
  return { seeds, leaves, play, position, shortfall }
}

/** The border dealt to its leaves, and the play that it has there. */
export function dealBorder(
  part: BorderedPart,
  flitch: Flitch,
  { sheet, fieldLeaves }: { readonly sheet: Outline<'panel'>; readonly fieldLeaves: number },
  shop: Shop,
  answers: Answers,
): Pick<BorderSeeds, 'seeds' | 'leaves' | 'play'> & { readonly groups: readonly Group[] } {
  const wood = woodOf(part, flitch, shop, answers)
  const between = shop.betweenPieces
  const pieces = bandCells(part, sheet, answers)
  const seedsOn = (leaves: number) => seedsOf(part, flitch, pieces, { leaves, fieldLeaves, between }, wood)
  const leaves = leavesFor(
    part,
    flitch,
    pieces,
    { most: runFor(part, flitch, { leaves: pieces.length, fieldLeaves }).length, between },
    (count) => playFor(seedsOn(count), answers).play.region.length > 0,
  )
  const seeds = seedsOn(leaves)
  return { seeds, leaves, ...playFor(seeds, answers) }
}

function leavesFor(
  part: BorderedPart,
  flitch: Flitch,
  pieces: readonly BandCell[],
  { most, between }: { readonly most: number; readonly between: number },
  works: (count: number) => boolean,
): number {
  const { count, grain } = part.border
  if (count !== 'fewest') return Math.min(count, pieces.length)
  const leaf = regionBox([[flitch.outline]])
  const room = (grain === 'across' ? boxHeight(leaf) : boxWidth(leaf)) - flitchMargins(flitch, grain)
  const taken = pieces.map(({ takes: { low, high } }) => high - low)
  const all = taken.reduce((sum, each) => sum + each + between, 0)
  const least = Math.min(pieces.length, Math.max(1, Math.ceil(all / Math.max(1, room + between) - 1e-9)))
  for (let tried = least; tried <= Math.min(pieces.length, most); tried++)
    // what is too long for one leaf by its length alone need not be laid
    if (longestShare(taken, tried, between) <= room + GRID && works(tried)) return tried
  return least
}

/** The most that one leaf has to give of pieces dealt to so many. */
function longestShare(taken: readonly number[], leaves: number, between: number): number {
  const shares = Array.from({ length: leaves }, () => -between)
  taken.forEach((each, i) => {
    shares[shareOf(i, taken.length, leaves).leaf]! += each + between
  })
  return Math.max(...shares)
}

const flitchMargins = ({ sideMargin, endMargin }: Flitch, grain: 'across' | 'along'): number =>
  2 * (grain === 'across' ? endMargin : sideMargin)

/** A piece of the border before it has a leaf. */
interface BandCell {
  readonly cell: Cell
  readonly rough: Ring<'window'>
  /** What it takes of its leaf in the direction in which the next one follows, and its middle the other way. */
  readonly takes: { readonly low: number; readonly high: number; readonly middle: number }
}

/** Its pieces hang on sizes and shape alone: they stay while windows and leaves are changed. */
function bandCells(part: BorderedPart, sheet: Outline<'panel'>, answers: Answers): readonly BandCell[] {
  const { outline, core, overhang, border, width, length, allowance, laterAllowance } = part
  return answers('band', [outline, core, overhang, border, width, length, allowance, laterAllowance], () =>
    bandPieces(part, sheet).map((piece) => bandCell(part, piece)),
  )
}

function bandCell(part: BorderedPart, piece: BandPiece): BandCell {
  const cell = cellFrom({ ...piece, rank: 0 }, piece.face, BORDER)
  const rough = roughOf(part, cell)
  const { min, max } = boxAround(rough)
  const takes =
    part.border.grain === 'across'
      ? { low: min.y, high: max.y, middle: (min.x + max.x) / 2 }
      : { low: min.x, high: max.x, middle: (min.y + max.y) / 2 }
  return { cell, rough, takes }
}

function seedsOf(
  part: BorderedPart,
  flitch: Flitch,
  pieces: readonly BandCell[],
  { leaves, fieldLeaves, between }: { readonly leaves: number; readonly fieldLeaves: number; readonly between: number },
  wood: PartWood,
): readonly Seed[] {
  const run = runFor(part, flitch, { leaves, fieldLeaves })
  const first = pieces[0]?.takes
  let end = 0
  return pieces.map(({ cell, rough, takes }, i) => {
    const share = shareOf(i, pieces.length, leaves)
    // the first of each leaf begins where that of the first leaf does, each other behind the one before
    const begins = share.before === 0 ? first!.low : end + between
    const along = begins - takes.low
    end = along + takes.high
    // pieces that lean to one side have their middles in one line, so that none reaches farther out than it must
    const aside = first!.middle - takes.middle
    const farther = part.border.grain === 'across' ? point<'leaf'>(aside, along) : point<'leaf'>(along, aside)
    const dealt = { cell: { ...cell, rank: fieldLeaves + share.leaf }, next: run[share.leaf] ?? null, rough, farther }
    return seedFor(part, flitch, dealt, wood)
  })
}

/** The leaves of a border, no more than the flitch has left. */
function runFor(
  { border, recipe }: BorderedPart,
  flitch: Flitch,
  { leaves, fieldLeaves }: { readonly leaves: number; readonly fieldLeaves: number },
): readonly Leaf[] {
  if (border.firstLeaf !== 'after the field') return runOfLeaves(flitch, border.firstLeaf, leaves)
  // of another flitch the field leaves all
  if (border.flitch !== null) return runOfLeaves(flitch, firstLeafOf(flitch), leaves)
  return runOfLeaves(flitch, recipe.firstLeaf, fieldLeaves + leaves).slice(fieldLeaves)
}
