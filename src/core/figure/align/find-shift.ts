import { shrunk, type GreyPicture } from './grey'
import { likenessMap, type LikenessMap, type PixelShift, type ShiftRange } from './likeness'

/** A shift in mm, and how alike the pictures are there, −1 to 1. */
export interface Candidate {
  readonly across: number
  readonly along: number
  readonly score: number
}

/**
 * How one picture lies on another. `clear`: one shift stands out. `two`: another does nearly as well, and the eye must
 * choose. `any`: every shift along looks the same, as ribbon stripe does. `none`: nothing is alike enough to say.
 */
export interface FoundShift {
  readonly trust: 'clear' | 'two' | 'any' | 'none'
  /** The best first; the second only where it matters. */
  readonly candidates: readonly Candidate[]
  /** The likeness without a shift; null where there is too little wood in common. */
  readonly before: number | null
}

/** How far shifts are tried to either side, mm. */
export interface Reach {
  readonly along: number
  readonly across: number
}

/** The likeness below which nothing is said, and the share of the best at which a second is as good. */
const ALIKE = 0.3
const AS_GOOD = 0.85

/** From farther off a second as good may look a little worse than it is; below this share it is not looked at closely. */
const WORTH_A_LOOK = 0.7

/** Nearer than this, mm, two shifts are the same hill. */
const APART = 5

const SHRINK = 3

/**
 * The shift of `other` against `one`, both band-passed and of one scale: the spot at p of the first is found at p + shift
 * of the second, each in its own picture's frame. Searched along and across, coarse first, then about the best two by
 * single pixels, then by a parabola between them.
 */
export function findShift(one: GreyPicture, other: GreyPicture, reach: Reach): FoundShift {
  const [small, smallOther] = [shrunk(one, SHRINK), shrunk(other, SHRINK)]
  const steps = (mm: number) => Math.ceil(mm * small.pxPerMm)
  const coarse = likenessMap(small, smallOther, {
    across: [-steps(reach.across), steps(reach.across)],
    along: [-steps(reach.along), steps(reach.along)],
  })
  const profile = bestAlong(coarse)
  const hills = hillsOf(profile, APART * small.pxPerMm)
  const before = likenessMap(one, other, { across: [0, 0], along: [0, 0] }).at({ across: 0, along: 0 })
  const best = hills[0]
  if (!best) return { trust: 'none', candidates: [], before }
  const candidates = hills
    .slice(0, 2)
    .filter(({ score }) => score > WORTH_A_LOOK * best.score)
    .map((hill) => refined(one, other, hill))
    .sort((p, q) => q.score - p.score)
  return { ...judged(candidates, profile), before }
}

function judged(candidates: readonly Candidate[], profile: readonly Step[]): Pick<FoundShift, 'trust' | 'candidates'> {
  const [first, second] = candidates as [Candidate, Candidate | undefined]
  if (first.score < ALIKE) return { trust: 'none', candidates: [first] }
  const scores = profile.map(({ score }) => score).sort((p, q) => p - q)
  const usual = scores[Math.floor(scores.length / 2)]!
  if (usual > AS_GOOD * scores.at(-1)!) return { trust: 'any', candidates: [first] }
  if (second && second.score > AS_GOOD * first.score) return { trust: 'two', candidates: [first, second] }
  return { trust: 'clear', candidates: [first] }
}

/** For one shift along the best of those across. */
interface Step extends PixelShift {
  readonly score: number
}

function bestAlong({ range, at }: LikenessMap): readonly Step[] {
  const steps: Step[] = []
  for (let along = range.along[0]; along <= range.along[1]; along++) {
    let best: Step | null = null
    for (let across = range.across[0]; across <= range.across[1]; across++) {
      const score = at({ across, along })
      if (score !== null && (best === null || score > best.score)) best = { across, along, score }
    }
    if (best) steps.push(best)
  }
  return steps
}

/** The tops of the profile, the highest first, each at least `apart` from a higher one. */
function hillsOf(profile: readonly Step[], apart: number): readonly Step[] {
  const tops = profile.filter(
    ({ score }, i) => score >= (profile[i - 1]?.score ?? -1) && score >= (profile[i + 1]?.score ?? -1),
  )
  const kept: Step[] = []
  for (const top of [...tops].sort((p, q) => q.score - p.score))
    if (kept.every(({ along }) => Math.abs(along - top.along) >= apart)) kept.push(top)
  return kept
}

function refined(one: GreyPicture, other: GreyPicture, { across, along }: PixelShift): Candidate {
  const [middleI, middleJ] = [across * SHRINK, along * SHRINK]
  const range: ShiftRange = {
    across: [middleI - SHRINK, middleI + SHRINK],
    along: [middleJ - SHRINK - 1, middleJ + SHRINK + 1],
  }
  const fine = likenessMap(one, other, range)
  let best: Step = { across: middleI, along: middleJ, score: -1 }
  for (let j = range.along[0]; j <= range.along[1]; j++)
    for (let i = range.across[0]; i <= range.across[1]; i++) {
      const score = fine.at({ across: i, along: j })
      if (score !== null && score > best.score) best = { across: i, along: j, score }
    }
  const top = topAbout(fine, best)
  return {
    across: (best.across + top.across) / one.pxPerMm,
    along: (best.along + top.along) / one.pxPerMm,
    score: best.score,
  }
}

/**
 * Where the likeness about its highest pixel has its top, pixels: that of the paraboloid through the nine about it, fitted by
 * least squares. Two parabolas, one each way, would miss it: where most lines slant to one side, so does the ridge.
 */
export function topAbout({ at }: LikenessMap, { across, along }: PixelShift): PixelShift {
  const row = (dj: number): Row => [
    at({ across: across - 1, along: along + dj }),
    at({ across, along: along + dj }),
    at({ across: across + 1, along: along + dj }),
  ]
  const rows = [row(-1), row(0), row(1)] as const
  const [up, level, down] = rows
  const apart = {
    across: topBetween(level[0], level[1] ?? 0, level[2]),
    along: topBetween(up[1], level[1] ?? 0, down[1]),
  }
  if (!isWhole(up) || !isWhole(level) || !isWhole(down)) return apart
  const slopeX = (up[2] - up[0] + level[2] - level[0] + down[2] - down[0]) / 6
  const slopeY = (down[0] - up[0] + down[1] - up[1] + down[2] - up[2]) / 6
  const bendX = (bend(up) + bend(level) + bend(down)) / 3
  const bendY =
    (bend([up[0], level[0], down[0]]) + bend([up[1], level[1], down[1]]) + bend([up[2], level[2], down[2]])) / 3
  const twist = (down[2] - down[0] - up[2] + up[0]) / 4
  const hollow = bendX * bendY - twist * twist
  if (bendX >= 0 || hollow <= 1e-12) return apart
  return {
    across: atMost(1, (twist * slopeY - bendY * slopeX) / hollow),
    along: atMost(1, (twist * slopeX - bendX * slopeY) / hollow),
  }
}

type Row<T = number | null> = readonly [T, T, T]
const isWhole = (row: Row): row is Row<number> => row.every((score) => score !== null)
const bend = ([a, b, c]: Row<number>): number => a - 2 * b + c
const atMost = (most: number, value: number): number => Math.min(most, Math.max(-most, value))

/** Where a parabola through three scores, one step apart, has its top: −½ to ½. */
export function topBetween(before: number | null, here: number, after: number | null): number {
  if (before === null || after === null) return 0
  const bend = before - 2 * here + after
  return bend < -1e-12 ? Math.min(0.5, Math.max(-0.5, (before - after) / (2 * bend))) : 0
}
