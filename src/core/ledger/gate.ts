/**
 * Whether a piece may be cut now.
 *
 * A cut is safe when
 * - nothing about its own face is left to mend, so that the piece is known to be right;
 * - no other piece, of whatever part, is planned in the wood that it takes, and none has been cut there; between it and
 *   every other piece there is room for knife or saw (what jointing takes is part of the rough pieces);
 * - no part whose face is not settled needs that leaf: the leaves of its own pieces, and, where it has too few leaves
 *   or fits nowhere, every leaf in use, unless it is looked at less than the part that is cut.
 *
 * How it is cut goes by what lies beside it: a crosscut goes through the whole leaf, and so does a rip.
 */
import { flitchesOf, groupsOf } from '../fit/lay-face'
import type { Flitch } from '../leaves/flitch'
import type { Box } from '../geometry/box'
import { besideClaim, claimsOf, clash, lieTooNear, showRank, type Claim, type LedgerFace } from './claims'

export type Hindrance =
  | { readonly why: 'to mend'; readonly things: number }
  | { readonly why: 'planned there'; readonly part: string; readonly cell: string; readonly own: boolean }
  | { readonly why: 'cut there'; readonly part: string; readonly cell: string }
  | { readonly why: 'too near'; readonly part: string; readonly cell: string; readonly own: boolean }
  | { readonly why: 'still needs'; readonly part: string; readonly leaves: readonly number[] }

/** The first cut that frees a piece from its leaf without going through another. */
export type Way = 'crosscut first' | 'rip first' | 'knife round it'

export type Gate =
  | { readonly state: 'done' }
  | { readonly state: 'safe'; readonly way: Way }
  | { readonly state: 'not yet'; readonly hindrances: readonly Hindrance[] }

/** The gate before the cut of one piece of a face, by all that it takes; all claims and faces of the job known. */
export function gateOf(
  claims: readonly Claim[],
  face: LedgerFace,
  faces: readonly LedgerFace[],
  all: readonly Claim[],
): Gate {
  if (claims.some(({ cut }) => cut)) return { state: 'done' }
  const hindrances = [...toMend(face), ...claims.flatMap((claim) => hindrancesAt(claim, face, faces, all))]
  if (hindrances.length > 0) return { state: 'not yet', hindrances: onceEach(hindrances) }
  const ways = claims.map((claim) => wayToCut(claim.box, planned(besideClaim(claim, all))))
  return { state: 'safe', way: WAYS.findLast((way) => ways.includes(way)) ?? 'crosscut first' }
}

/** From the plainest on. */
const WAYS: readonly Way[] = ['crosscut first', 'rip first', 'knife round it']

const planned = (claims: readonly Claim[]): readonly Box<'leaf'>[] =>
  claims.filter(({ cut }) => !cut).map(({ box }) => box)

function hindrancesAt(
  claim: Claim,
  face: LedgerFace,
  faces: readonly LedgerFace[],
  all: readonly Claim[],
): readonly Hindrance[] {
  const needed = faces.flatMap((other) => stillNeeds(other, face, claim))
  const taken = besideClaim(claim, all).flatMap((other): readonly Hindrance[] => {
    if (clash(claim, other)) return [hindranceBy(other, claim)]
    return lieTooNear(claim, other) ? [tooNear(other, claim)] : []
  })
  // a part that needs the leaf need not be named again for the wood
  const isToldAlready = (one: Hindrance) =>
    one.why === 'planned there' && needed.some((other) => other.why === 'still needs' && other.part === one.part)
  return [...taken.filter((one) => !isToldAlready(one)), ...needed]
}

/** The parts of a piece may be held up by the same. */
const onceEach = (hindrances: readonly Hindrance[]): readonly Hindrance[] => [
  ...new Map(hindrances.map((one) => [JSON.stringify(one), one])).values(),
]

/** How many things about a face are wrong. */
const wrongs = ({ findings }: LedgerFace): number => findings.filter(({ grade }) => grade === 'wrong').length

function toMend(face: LedgerFace): readonly Hindrance[] {
  const things = wrongs(face)
  return things > 0 ? [{ why: 'to mend', things }] : []
}

const hindranceBy = ({ name, cell, cut, part }: Claim, claim: Claim): Hindrance =>
  cut ? { why: 'cut there', part: name, cell } : { why: 'planned there', part: name, cell, own: part === claim.part }

const tooNear = ({ name, cell, part }: Claim, claim: Claim): Hindrance => ({
  why: 'too near',
  part: name,
  cell,
  own: part === claim.part,
})

function stillNeeds(other: LedgerFace, face: LedgerFace, claim: Claim): readonly Hindrance[] {
  if (other === face || wrongs(other) === 0) return []
  const flitch = flitchesOf(other).find(({ id }) => id === claim.flitch)
  const leaves = flitch ? leavesNeeded(other, flitch, showRank(other) <= showRank(face)) : []
  return leaves.includes(claim.leaf) ? [{ why: 'still needs', part: other.part.name, leaves }] : []
}

/** The leaves of a flitch that an unsettled face may come to be cut from, in sequence. */
function leavesNeeded(face: LedgerFace, flitch: Flitch, mayTakeAny: boolean): readonly number[] {
  const ofFlitch = (one: { readonly flitch: Flitch }) => one.flitch.id === flitch.id
  const own = new Set(claimsOf(face).flatMap((claim) => (claim.cut || claim.flitch !== flitch.id ? [] : [claim.leaf])))
  const lacksLeaves =
    groupsOf(face).some((group) => ofFlitch(group) && group.play.region.length === 0) ||
    (face.bare > 0 && ofFlitch(face)) ||
    face.pieces.some((piece) => ofFlitch(piece) && !piece.leaf)
  const isNeeded = (number: number, state: string) =>
    own.has(number) || (mayTakeAny && lacksLeaves && state === 'in use')
  return flitch.leaves.filter(({ number, state }) => isNeeded(number, state)).map(({ number }) => number)
}

// a line that runs along the border of another piece, to a tenth, does not go into it
const CLEAR = 0.1

function wayToCut({ min, max }: Box<'leaf'>, beside: readonly Box<'leaf'>[]): Way {
  const clear = (axis: 'x' | 'y', at: number) =>
    beside.every((box) => at <= box.min[axis] + CLEAR || at >= box.max[axis] - CLEAR)
  if (clear('y', min.y) && clear('y', max.y)) return 'crosscut first'
  return clear('x', min.x) && clear('x', max.x) ? 'rip first' : 'knife round it'
}
