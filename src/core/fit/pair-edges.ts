/**
 * Where the two parts of a pair meet: which edges, what stands beyond them, what is lost between them.
 *
 * Input: parts as decided. Output: panel mm, seen from the show side with the grain upright. Failure: a pair that can't be
 * says why.
 */
import type { Side } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import type { Pair, Part } from '../job/job'

/** Why the two parts of a pair can't be read as one. */
export type PairVoid =
  | 'pattern'
  | 'running widths'
  | 'spun leaves'
  | 'no mirror image'
  | 'border'
  | 'grain'
  | 'outline'
  | 'lengths'
  | 'no more leaves'

/** Why a pair can't hold, as far as its parts tell before they are laid; null where nothing stands against it. */
export function pairVoid({ meet }: Pick<Pair, 'meet'>, first: Part, second: Part): PairVoid | null {
  const { recipe } = first
  if (meet !== 'booked' && recipe.pattern !== 'strips') return 'pattern'
  if (recipe.pattern === 'planks' || recipe.pattern === 'parquet') return 'no mirror image'
  if (recipe.pattern === 'strips' && recipe.arrangement === 'running') return 'running widths'
  if (recipe.pattern === 'strips' && recipe.match === 'reverse slip' && meet === 'same leaves') return 'spun leaves'
  if (first.border || second.border) return 'border'
  if (first.lying !== second.lying) return 'grain'
  const edges = meetingEdges({ meet })
  if (!hasEdge(first, edges.first) || !hasEdge(second, edges.second)) return 'outline'
  return Math.abs(edgeOfMeeting(meet, first) - edgeOfMeeting(meet, second)) > SAME_LENGTH ? 'lengths' : null
}

/** Edges that differ by less are as long as each other to anyone who measures them. */
const SAME_LENGTH = 0.5

/** How long a part is along the gap. */
export const edgeOfMeeting = (meet: Pair['meet'], { width, length }: Part): number =>
  meet === 'same leaves' ? width : length

/** A straight edge with an overhang of its own. */
const hasEdge = ({ outline: { shape } }: Part, side: Side): boolean =>
  shape === 'rectangle' || (shape === 'arch top' && side !== 'top')

/** Where the two come together. */
export const meetingEdges = ({ meet }: Pick<Pair, 'meet'>): { readonly first: Side; readonly second: Side } =>
  meet === 'same leaves' ? { first: 'bottom', second: 'top' } : { first: 'right', second: 'left' }

/** How far the sheet goes beyond the finished edge at the gap: to the middle of the saw's way, or as far as is decided. */
export const beyondAtGap = ({ pressed, gap, overhang }: Pair): number => (pressed === 'one board' ? gap / 2 : overhang)

/**
 * Wood between the two finished edges that is not seen: what both sheets have over there, and the gap; of one board that
 * is sawn through only what is taken out.
 */
export const lostBetween = (pair: Pair): number =>
  pair.pressed === 'one board' ? pair.gap : 2 * pair.overhang + pair.gap

/**
 * A part of a pair, its edge at the gap as the pair has it. What the core stands over by itself stays as far as there is
 * room under the sheet; the halves of one board reach to the middle of the saw's way. An edge that is lipped afterwards
 * stays back by its lipping.
 */
export function withMeetingEdge(part: Part, pair: Pair, side: Side): Part {
  const beyond = beyondAtGap(pair)
  const [core, over] = [part.core[side], part.overhang[side]]
  const wanted = pair.pressed === 'one board' ? beyond : Math.min(core, Math.max(0, beyond - over))
  const stands = core < 0 ? core : wanted
  return {
    ...part,
    core: { ...part.core, [side]: stands },
    overhang: { ...part.overhang, [side]: beyond - stands },
  }
}

/** From the panel of the second to that of the first as they hang, the gap between them. */
export const asTheyHang = (pair: Pair, first: Part, second: Part): Point<'panel'> =>
  pair.meet === 'same leaves'
    ? point(0, first.length / 2 + pair.gap + second.length / 2)
    : point(first.width / 2 + pair.gap + second.width / 2, 0)
