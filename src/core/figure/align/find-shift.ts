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
  const { across: i, along: j, score } = best
  const beside = (di: number, dj: number) => fine.at({ across: i + di, along: j + dj })
  const across1 = i + topBetween(beside(-1, 0), score, beside(1, 0))
  const along1 = j + topBetween(beside(0, -1), score, beside(0, 1))
  return { across: across1 / one.pxPerMm, along: along1 / one.pxPerMm, score }
}

/** Where a parabola through three scores, one step apart, has its top: −½ to ½. */
export function topBetween(before: number | null, here: number, after: number | null): number {
  if (before === null || after === null) return 0
  const bend = before - 2 * here + after
  return bend < -1e-12 ? Math.min(0.5, Math.max(-0.5, (before - after) / (2 * bend))) : 0
}
