/**
 * Laws of pairs. Every case compares what lies at spots of the two finished faces as they hang, by maps of its own: which
 * leaf, and which spot of the log.
 */
import { allFrom } from '../../src/core/job/part-flitches'
import { describe, expect, it } from 'vitest'
import { derive, type DerivedPart } from '../../src/core/derive'
import type { Answers } from '../../src/core/fit/answers'
import { layFace, type LaidFace, type Piece } from '../../src/core/fit/lay-face'
import { pairedPart } from '../../src/core/fit/pairs'
import { point } from '../../src/core/geometry/point'
import { regionArea } from '../../src/core/geometry/polygon'
import { intersect } from '../../src/core/geometry/clip'
import type { Job, Pair, Part } from '../../src/core/job/job'
import { reportPair, type PairReport } from '../../src/core/seams/pair-report'
import { rememberingAnswers } from '../../src/store/memory'
import { chanceFrom, spread, whole, type Chance } from '../fixtures/geometry/shapes'
import { oneOf } from './any-face'
import * as witness from './witness'
import { boxed, diamond, fourWay, flitchOf, jobOf, partOf, plainLeaves, radial, strips } from './job-builders'

const CASES = Number(process.env['LEAFTURN_CASES'] ?? 1000)

interface Case {
  readonly pair: Pair
  readonly job: Job
  readonly first: LaidFace
  readonly second: LaidFace
  /** What is told of the pair at the first. */
  readonly told: PairReport
  readonly decided: readonly [Part, Part]
  readonly said: string
}

function anyCase(chance: Chance, seed: number): Case {
  const count = whole(chance, 1, 5)
  const shared = {
    firstLeaf: whole(chance, 1, 12),
    equal: oneOf(chance, 'before trimming' as const, 'after trimming' as const),
  }
  const recipe = oneOf<() => Part['recipe']>(
    chance,
    ...Array<() => Part['recipe']>(8).fill(() =>
      strips({
        ...shared,
        count,
        match: oneOf(chance, 'book', 'book', 'slip', 'reverse slip'),
        arrangement: oneOf(chance, 'balance', 'centre balance'),
        spine: oneOf(chance, 'left', 'right'),
        laying: oneOf(chance, 'by spine', 'left to right', 'right to left'),
        sideUp: oneOf(chance, 'numbered', 'other'),
      }),
    ),
    () => strips({ ...shared, count: 4, match: 'slip-centre-book', arrangement: 'centre balance' }),
    () => fourWay({ ...shared, count: 4 }),
    () => radial({ count: 6, firstSeam: oneOf(chance, 0, 15) }),
    () => diamond(),
    () => boxed(),
  )()
  const edge = () => oneOf(chance, 0, 10, -4)
  const over = () => oneOf(chance, 6, 10, spread(chance, 3, 12))
  const edges = (of: () => number) => ({ top: of(), right: of(), bottom: of(), left: of() })
  const [width, length] = [spread(chance, 250, 700), spread(chance, 250, 600)]
  const decided = [
    partOf({ id: 'one', name: 'One', width, length, recipe, core: edges(edge), overhang: edges(over) }),
    partOf({
      id: 'two',
      name: 'Two',
      width: chance() < 0.8 ? width : spread(chance, 250, 700),
      length: chance() < 0.9 ? length : length + 20,
      recipe: strips({ firstLeaf: 20, count: 3 }),
      core: edges(edge),
      overhang: edges(over),
    }),
  ] as const
  const pair: Pair = {
    first: 'one',
    second: 'two',
    meet: oneOf(chance, 'booked', 'running through', 'same leaves'),
    gap: spread(chance, 0, 8),
    pressed: oneOf(chance, 'apart', 'one board'),
    overhang: spread(chance, 3, 15),
  }
  const job = { ...jobOf(decided, flitchOf({ leaves: plainLeaves(30) })), pairs: [pair] }
  return { pair, job, decided, ...laidCheaply(job, pair), said: `${seed}: ${pair.meet}, ${pair.pressed}` }
}

/** Both parts as the pair has them, laid without asking how far their windows may go, which takes long and tells nothing here. */
function laidCheaply(job: Job, pair: Pair): Pick<Case, 'first' | 'second' | 'told'> {
  const answers: Answers = (kind, _about, find) =>
    kind === 'play'
      ? ({ play: { region: [], exact: false }, groups: [] } as ReturnType<typeof find>)
      : kind === 'shortfall'
        ? (null as ReturnType<typeof find>)
        : find()
  const [flitch] = job.flitches
  const lay = (part: Part): LaidFace =>
    layFace(pairedPart(part, job, lay, answers).part, allFrom(flitch!), job.shop, answers)
  const [first, second] = [lay(job.parts[0]!), lay(job.parts[1]!)]
  return { first, second, told: reportPair(pair, first, second)[0] }
}

const cases = Array.from({ length: CASES }, (_, i) => anyCase(chanceFrom(9000 + i), i))
const void_ = ({ told }: Case) => told.void
const held = cases.filter((one) => void_(one) === null)
const those = (meet: Pair['meet']) => held.filter(({ pair }) => pair.meet === meet)

/** The spot of the log under a spot of a panel, taken on by the map of one piece. */
function spotOf({ logToPanel: { a, b, c, d, e, f } }: Piece, x: number, y: number) {
  const det = a * d - b * c
  return { x: (d * (x - e) - c * (y - f)) / det, y: (a * (y - f) - b * (x - e)) / det }
}

/** The piece that lies at a spot. */
const pieceAt = ({ pieces }: LaidFace, x: number, y: number): Piece =>
  pieces.find(({ cell: { face } }) => witness.isIn(face.ring, { x, y }))!

const apart = (p: { x: number; y: number }, q: { x: number; y: number }) => Math.hypot(p.x - q.x, p.y - q.y)
const wrongOf = (all: readonly Case[], judge: (one: Case) => string | null) =>
  all.flatMap((one) => {
    const wrong = judge(one)
    return wrong === null ? [] : [`${one.said}: ${wrong}`]
  })

describe('pairs', () => {
  it('there are enough of each kind', () => {
    const count = (meet: Pair['meet']) => those(meet).length / CASES
    expect([count('booked'), count('running through'), count('same leaves')].every((share) => share > 0.12)).toBe(true)
    expect(held.length / CASES).toBeLessThan(0.9)
  })

  it('[A20] booked, the second is the mirror image of the first where they meet, and all over where both are as wide', () => {
    const wrong = wrongOf(those('booked'), ({ first, second, pair, told }) => {
      const y = 0.31 * first.part.length
      const [one, other] = [pieceAt(first, first.part.width / 2, y), pieceAt(second, -second.part.width / 2, y)]
      const turned = one.cell.turn.turnedOver !== other.cell.turn.turnedOver
      if (!turned) return 'the same side is up on both sides of the gap'
      const off = apart(spotOf(one, first.part.width / 2, y), spotOf(other, -second.part.width / 2, y))
      if (off > 1e-6) return `jumps ${off}`
      if (told.meeting!.meets !== 'mirrors') return told.meeting!.meets
      const isWhole = first.part.width === second.part.width && first.part.recipe.pattern !== 'strips'
      return !isWhole ||
        first.pieces.every((p) =>
          second.pieces.some(
            (q) =>
              apart(spotOf(p, 11, 7), spotOf(q, -11, 7)) < 1e-6 && apart(spotOf(p, -90, 60), spotOf(q, 90, 60)) < 1e-6,
          ),
        )
        ? null
        : `not a mirror image over a gap of ${pair.gap}`
    })
    expect(wrong).toEqual([])
  })

  it('[A21] beside the first, the leaves go on in sequence and none is taken twice', () => {
    const wrong = wrongOf([...those('booked'), ...those('running through')], ({ first, second }) => {
      const [mine, theirs] = [first, second].map(({ pieces }) => pieces.map(({ leaf }) => leaf?.number ?? NaN))
      const run = [...new Set([...mine!, ...theirs!])].sort((p, q) => p - q)
      const missing = second.pieces.some(({ leaf }) => !leaf)
      return missing || (run.length === 2 * new Set(mine).size && run.at(-1)! - run[0]! === run.length - 1)
        ? null
        : run.join(' ')
    })
    expect(wrong).toEqual([])
  })

  it('[A21] running through, the figure does at the gap what the match does at its seams', () => {
    const wrong = wrongOf(those('running through'), ({ first, second, told }) => {
      const recipe = first.part.recipe
      if (recipe.pattern !== 'strips') return 'not in strips'
      const meets = told.meeting?.meets
      if (meets === undefined) return second.pieces.some(({ leaf }) => !leaf) ? null : 'nothing told'
      if (recipe.match === 'book') return meets === 'mirrors' ? null : meets
      if (recipe.match === 'slip') return meets === 'repeats' ? null : meets
      return null
    })
    expect(wrong).toEqual([])
  })

  it('[A22] from the same leaves, what is lost and no more lies between the two, and no wood is wanted twice', () => {
    const wrong = wrongOf(those('same leaves'), ({ first, second, pair, told }) => {
      const lost = pair.pressed === 'one board' ? pair.gap : 2 * pair.overhang + pair.gap
      for (const p of first.pieces) {
        const q = second.pieces.find(({ cell }) => cell.id === p.cell.id)!
        if (p.leaf!.number !== q.leaf!.number) return `leaf ${p.leaf!.number} and ${q.leaf!.number}`
        const between = spotOf(q, 5, -second.part.length / 2).y - spotOf(p, 5, first.part.length / 2).y
        if (Math.abs(between - lost) > 1e-6) return `${between} for ${lost}`
        if (regionArea(intersect([[p.roughOnLeaf]], [[q.roughOnLeaf]])) > 1) return 'overlap'
      }
      const { jump, meets } = told.meeting!
      const over = pair.pressed === 'one board' ? 0 : 2 * pair.overhang
      // unlike overhang at the sides shifts columns that are equal before trimming
      const isAlike = (['left', 'right'] as const).every(
        (side) =>
          first.sizes.sheet[side === 'left' ? 'min' : 'max'].x ===
          second.sizes.sheet[side === 'left' ? 'min' : 'max'].x,
      )
      return !isAlike || (Math.abs(jump! - over) < 1e-6 && meets === (over > 0.1 ? 'steps' : 'runs on'))
        ? null
        : `${meets} ${jump}`
    })
    expect(wrong).toEqual([])
  })

  it('[A23] lost are both overhangs and the gap, or the gap alone; at the gap each sheet ends as the pair has it', () => {
    const wrong = wrongOf(held, ({ first, second, pair, told }) => {
      const [a, b] = [first.part, second.part]
      const [one, other] =
        pair.meet === 'same leaves'
          ? [first.sizes.sheet.max.y - a.length / 2, -b.length / 2 - second.sizes.sheet.min.y]
          : [first.sizes.sheet.max.x - a.width / 2, -b.width / 2 - second.sizes.sheet.min.x]
      const over = pair.pressed === 'one board' ? pair.gap / 2 : pair.overhang
      if (Math.abs(one - over) > 1e-9 || Math.abs(other - over) > 1e-9) return `${one} and ${other} for ${over}`
      const meeting = told.meeting
      const lost = pair.pressed === 'one board' ? pair.gap : one + other + pair.gap
      return !meeting || Math.abs(meeting.lost - lost) < 1e-9 ? null : `${meeting.lost} for ${lost}`
    })
    expect(wrong).toEqual([])
  })

  it('[A23] every leaf lies mirrored if and only if it is turned over', () => {
    const wrong = wrongOf(held, ({ first, second }) =>
      [...first.pieces, ...second.pieces].every(
        ({ leafToPanel: { a, b, c, d }, cell }) => a * d - b * c < 0 === cell.turn.turnedOver,
      )
        ? null
        : 'hand lost',
    )
    expect(wrong).toEqual([])
  })

  it('[A24] a pair that can’t hold tells both parts why, and the second is laid as it was decided', () => {
    const broken = cases.filter((one) => void_(one) !== null)
    const wrong = wrongOf(broken.slice(0, 8), ({ job, decided }) => {
      const [first, second] = derive(job, rememberingAnswers()).parts as [DerivedPart, DerivedPart]
      const told = [first, second].every(({ findings }) => findings.some(({ code }) => code === 'pair-void'))
      return told && second.part.recipe === decided[1].recipe && second.follows === null ? null : 'still follows'
    })
    expect(wrong).toEqual([])
    expect(new Set(broken.map(void_)).size).toBeGreaterThan(2)
  })

  it('[A25] where nobody has put the window of the first, both lie where there is room for both, if there is any', () => {
    const wrong = wrongOf(held.slice(0, 12), ({ job }) => {
      const [first, second] = derive(job, rememberingAnswers()).parts as [DerivedPart, DerivedPart]
      const out = [first, second].filter(({ findings }) => findings.some(({ code }) => code === 'outside-play'))
      if (out.length === 0) return null
      const [p, q] = [first, second].map(({ play }) => play.region)
      const { x, y } = second.follows!.apart
      const theirs = q!.map((rings) =>
        rings.map((ring) => ring.map((at) => point<'leaf'>(at.x - x, at.y - y))),
      ) as unknown as typeof p
      return p!.length > 0 && q!.length > 0 && regionArea(intersect(p!, theirs!)) > 1 ? 'outside' : null
    })
    expect(wrong).toEqual([])
  })
})
