/**
 * What has been cut stays as it was cut, and what is finished as it was made: the one check that every decision passes.
 *
 * A decision is refused when by it a piece that has been cut would be something else than what was cut: from another
 * leaf, or of wood that is not in the piece. What is smaller may still be made of it. Taking a mark off is a decision
 * like others. A job in which a piece is not what was cut already, as a file by another hand may be, is let go on.
 */
import { deriveParts } from '../derive'
import type { Answers } from '../fit/answers'
import type { Piece } from '../fit/lay-face'
import { pieceParts } from '../fit/piece-parts'
import { ringCovers, ringEdges, type Ring } from '../geometry/polygon'
import { distanceToEdge } from '../geometry/segment'
import type { Job } from '../job/job'
import { isCutFor } from '../leaves/done-cuts'
import type { Flitch } from '../leaves/flitch'
import type { DoneCut, Leaf } from '../leaves/leaf'
import { refused } from '../result'
import type { Next } from './change-within'
import type { CommandTrouble } from './command-trouble'
import { SLACK } from './fixed-cuts'
import { holdFinished } from './hold-finished'

interface Held {
  readonly flitch: Flitch
  readonly leaf: Leaf
  readonly cut: DoneCut
  /** The part's, in quotes. */
  readonly name: string
}

/** The decision, or why it can't be taken. `before` is the job as it was decided. */
export function holdCuts(before: Job, next: Next, answers: Answers): Next {
  if (!next.ok || next.value === before) return next
  const finished = holdFinished(before, next)
  if (!finished.ok) return finished
  const after = next.value
  for (const held of cutsOf(before)) {
    const wrong = isUntouched(held, before, after) ? null : troubleWith(held, after, answers)
    if (wrong && !troubleWith(held, before, answers)) return refused(wrong)
  }
  return next
}

const cutsOf = (job: Job): readonly Held[] =>
  job.flitches.flatMap((flitch) =>
    flitch.leaves.flatMap((leaf) =>
      leaf.cuts.map((cut) => ({ flitch, leaf, cut, name: `“${partOf(cut, job)?.name ?? cut.part}”` })),
    ),
  )

/** Nothing has been decided on which the piece hangs. */
const isUntouched = ({ flitch, cut }: Held, before: Job, after: Job): boolean =>
  before.shop === after.shop &&
  after.flitches.includes(flitch) &&
  partOf(cut, before) === partOf(cut, after) &&
  isInNoPair(cut, before) &&
  isInNoPair(cut, after)

/** What lies in a part of a pair may hang on the other. */
const isInNoPair = ({ part }: DoneCut, { pairs }: Job): boolean =>
  pairs.every(({ first, second }) => first !== part && second !== part)

const partOf = (cut: DoneCut, job: Job) => job.parts.find(({ id }) => id === cut.part)

function troubleWith({ flitch, leaf, cut, name }: Held, job: Job, answers: Answers): CommandTrouble | null {
  const fixed = (why: 'gone' | 'other leaf' | 'other wood', beyond = 0): CommandTrouble => ({
    trouble: 'cut already',
    leaf: leaf.number,
    cell: cut.cell,
    part: name,
    why,
    beyond,
  })
  const now = cutsOf(job).filter((held) => isCutFor(held.cut, cut))
  if (now.length === 0) return hasLeaf(job, flitch, leaf) ? null : fixed('gone')
  const part = partOf(cut, job)
  const piece = part && pieceOf(job, part.id, cut.cell, answers)
  if (!part || !piece?.leaf) return fixed('gone')
  const chosen = part.chosen[cut.cell]
  if (chosen !== undefined && chosen !== piece.leaf.number) return fixed('other leaf')
  const reaches = pieceParts(piece).flatMap((needed) => {
    const there = now
      .filter((held) => held.flitch.id === piece.flitch.id && held.leaf.number === needed.leaf)
      .map((held) => held.cut.outline)
    return needed.rough.map(([ring]) => Math.min(...there.map((outline) => reachBeyond(ring, outline))))
  })
  const beyond = Math.max(...reaches)
  if (beyond === Infinity) return fixed('other leaf')
  return beyond > SLACK ? fixed('other wood', beyond) : null
}

const hasLeaf = (job: Job, { id }: Flitch, { number }: Leaf): boolean =>
  job.flitches.find((flitch) => flitch.id === id)?.leaves.some((leaf) => leaf.number === number) ?? false

function pieceOf(job: Job, part: string, cell: string, answers: Answers): Piece | null {
  const parts = job.parts.filter(({ id }) => id === part)
  const [face] = deriveParts(job, parts, answers).parts
  return face?.pieces.find((piece) => piece.cell.id === cell) ?? null
}

/** How far a piece reaches out of what was cut: corners of the one outside, or of the other inside. */
function reachBeyond(piece: Ring<'leaf'>, cut: Ring<'leaf'>): number {
  const fromEdges = (ring: Ring<'leaf'>, p: Ring<'leaf'>[number]) =>
    Math.min(...ringEdges(ring).map((edge) => distanceToEdge(edge, p)))
  const outside = piece.filter((p) => !ringCovers(cut, p)).map((p) => fromEdges(cut, p))
  const notches = cut.filter((p) => ringCovers(piece, p)).map((p) => fromEdges(piece, p))
  return Math.max(0, ...outside, ...notches)
}
