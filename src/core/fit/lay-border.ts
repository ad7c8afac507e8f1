/**
 * The border of a face on its leaves.
 *
 * Input: the part, its taped sheet, its flitch and its wood; how many leaves the field takes. Output: the pieces of the border, each with
 * its leaf. A leaf gives several, one behind the other where grain runs across the band and side by side where it runs
 * along; all move with one window. Fewest that will do is the smallest number of leaves on which they have any play.
 * Failure: none; what has no leaf or no room is said by the play.
 */
import { bandPieces, type BandPiece } from '../faces/border-cells'
import { cellFrom, roughWindow, type Cell } from '../faces/cells'
import type { BorderedPart } from '../faces/field'
import { BORDER } from '../faces/window-group'
import { boxAround, boxHeight, boxWidth, regionBox } from '../geometry/box'
import type { Outline } from '../geometry/panel-outline'
import { point, type Point } from '../geometry/point'
import { runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { BETWEEN_PIECES, shareOf } from '../patterns/shared-leaves'
import type { Answers } from './answers'
import type { PartWood } from './part-wood'
import type { Play } from './play'
import { placeInPlay, playFor, seedFor, shortfallOf, type Seed, type Shortfall } from './seeds'

/** A border with its own window, before its pieces are placed. */
export interface BorderSeeds {
  readonly seeds: readonly Seed[]
  readonly leaves: number
  readonly play: Play
  readonly position: Point<'leaf'>
  readonly shortfall: Shortfall
}

export function layBorder(
  part: BorderedPart,
  flitch: Flitch,
  { sheet, fieldLeaves }: { readonly sheet: Outline<'panel'>; readonly fieldLeaves: number },
  wood: PartWood,
  answers: Answers,
): BorderSeeds {
  const pieces = bandPieces(part, sheet)
  const seedsOn = (leaves: number) => seedsOf(part, flitch, pieces, { leaves, fieldLeaves }, wood)
  const leaves = leavesFor(part, flitch, pieces, (count) => {
    const seeds = seedsOn(count)
    return seeds.every(({ leaf }) => leaf !== null) && playFor(seeds, answers).play.region.length > 0
  })
  const seeds = seedsOn(leaves)
  const { play, groups } = playFor(seeds, answers)
  const shortfall = play.region.length > 0 ? null : shortfallOf(seeds, groups, answers)
  const position = part.positions[BORDER] ?? placeInPlay(play, shortfall, flitch, answers)
  return { seeds, leaves, play, position, shortfall }
}

/** How many numbers of leaves are tried before one piece a leaf is. */
const TRIES = 6

function leavesFor(
  part: BorderedPart,
  flitch: Flitch,
  pieces: readonly BandPiece[],
  works: (count: number) => boolean,
): number {
  const { count, grain } = part.border
  if (count !== 'fewest') return Math.min(count, pieces.length)
  const leaf = regionBox([[flitch.outline]])
  const room = (grain === 'across' ? boxHeight(leaf) : boxWidth(leaf)) - flitchMargins(flitch, grain)
  const taken = pieces.map((piece) => takenOf(part, piece)).reduce((sum, each) => sum + each + BETWEEN_PIECES, 0)
  const least = Math.min(pieces.length, Math.max(1, Math.ceil(taken / Math.max(1, room + BETWEEN_PIECES) - 1e-9)))
  for (let tried = least; tried <= Math.min(pieces.length, least + TRIES); tried++) if (works(tried)) return tried
  return works(pieces.length) ? pieces.length : least
}

const flitchMargins = ({ sideMargin, endMargin }: Flitch, grain: 'across' | 'along'): number =>
  2 * (grain === 'across' ? endMargin : sideMargin)

const roughOf = (part: BorderedPart, cell: Cell) =>
  boxAround(roughWindow(cell.toCut, { first: part.allowance, later: part.laterAllowance }))

/** How much of a leaf a piece takes in the direction in which the next one follows. */
function takenOf(part: BorderedPart, piece: BandPiece): number {
  const box = roughOf(part, cellFrom({ ...piece, rank: 0 }, piece.face, BORDER))
  return part.border.grain === 'across' ? boxHeight(box) : boxWidth(box)
}

function seedsOf(
  part: BorderedPart,
  flitch: Flitch,
  pieces: readonly BandPiece[],
  { leaves, fieldLeaves }: { readonly leaves: number; readonly fieldLeaves: number },
  wood: PartWood,
): readonly Seed[] {
  const { firstLeaf } = part.border
  const run: readonly Leaf[] =
    firstLeaf === 'after the field'
      ? runOfLeaves(flitch, part.recipe.firstLeaf, fieldLeaves + leaves).slice(fieldLeaves)
      : runOfLeaves(flitch, firstLeaf, leaves)
  let end = 0
  return pieces.map((piece, i) => {
    const share = shareOf(i, pieces.length, leaves)
    const cell = cellFrom({ ...piece, rank: fieldLeaves + share.leaf }, piece.face, BORDER)
    const { min, max } = roughOf(part, cell)
    const [low, high] = part.border.grain === 'across' ? [min.y, max.y] : [min.x, max.x]
    // the first of a leaf lies at its window's own place, each other behind the one before
    const along = share.before === 0 ? 0 : end + BETWEEN_PIECES - low
    end = along + high
    const farther = part.border.grain === 'across' ? point<'leaf'>(0, along) : point<'leaf'>(along, 0)
    return seedFor(part, flitch, { cell, next: run[share.leaf] ?? null, farther }, wood)
  })
}
