/**
 * A panel of bonded plies, each stiff in its own directions and wanting to change size by its own amounts: what shape
 * it takes when nothing holds it. Source: classical lamination theory (stiffnesses A, B and D), as in any textbook of
 * composites. x and y are those of the panel; depth runs from the show face to the back.
 *
 * Assumed: thin against its size, perfectly bonded, elastic, small bows. Wood creeps, so what comes out is an upper
 * bound.
 */
import { solveLinear, type Matrix } from './linear-system'
import { middleDepths, sumPaired } from './laminate-strip'
import type { Stiffness } from './stiffness'

/** Stretch in x and y and the change of the right angle between them. */
export interface PlaneStrain {
  readonly x: number
  readonly y: number
  readonly xy: number
}

/** Stress for strain in the panel's axes, MPa, as a symmetric matrix over x, y, xy. */
export type PlaneStiffness = Matrix

export interface Ply {
  readonly thickness: number
  readonly stiffness: PlaneStiffness
  /** What it would do if it were free. */
  readonly strain: PlaneStrain
}

/** Curvatures in 1/mm: x and y positive where the show face is hollow; xy is twist. And the stretch of the middle. */
export interface Bend {
  readonly curvature: PlaneStrain
  readonly stretch: PlaneStrain
}

export const NO_STRAIN: PlaneStrain = { x: 0, y: 0, xy: 0 }
export const NO_STIFFNESS: PlaneStiffness = [
  [0, 0, 0],
  [0, 0, 0],
  [0, 0, 0],
]

/** Stiffness of a ply whose grain lies at an angle, degrees from x towards y. */
export function stiffnessAt(ply: Stiffness, degrees: number): PlaneStiffness {
  const { q11, q12, q22, q66 } = ownStiffness(ply)
  const { c, s } = directionOf(degrees)
  const [cc, ss, cs] = [c * c, s * s, c * s]
  const xx = q11 * cc * cc + 2 * (q12 + 2 * q66) * cc * ss + q22 * ss * ss
  const yy = q11 * ss * ss + 2 * (q12 + 2 * q66) * cc * ss + q22 * cc * cc
  const xy = (q11 + q22 - 4 * q66) * cc * ss + q12 * (cc * cc + ss * ss)
  const tt = (q11 + q22 - 2 * q12 - 2 * q66) * cc * ss + q66 * (cc * cc + ss * ss)
  const xt = (q11 - q12 - 2 * q66) * cc * cs - (q22 - q12 - 2 * q66) * ss * cs
  const yt = (q11 - q12 - 2 * q66) * ss * cs - (q22 - q12 - 2 * q66) * cc * cs
  return [
    [xx, xy, xt],
    [xy, yy, yt],
    [xt, yt, tt],
  ]
}

/** Free strain of a ply that changes by `along` and `across` its grain. */
export function strainAt(along: number, across: number, degrees: number): PlaneStrain {
  const { c, s } = directionOf(degrees)
  return {
    x: along * c * c + across * s * s,
    y: along * s * s + across * c * c,
    xy: 2 * (along - across) * c * s,
  }
}

/**
 * A sheet whose grain runs every way in equal shares: its mean stiffness, and the free strain that goes with it. By
 * the invariants of rotation (Tsai and Pagano), from memory.
 */
export function everyWay(ply: Stiffness, along: number, across: number): Pick<Ply, 'stiffness' | 'strain'> {
  const { q11, q12, q22, q66 } = ownStiffness(ply)
  const direct = (3 * q11 + 3 * q22 + 2 * q12 + 4 * q66) / 8
  const other = (q11 + q22 + 6 * q12 - 4 * q66) / 8
  const shear = (direct - other) / 2
  const pull = (q11 * along + q12 * across + q12 * along + q22 * across) / 2
  const strain = pull / (direct + other)
  return {
    stiffness: [
      [direct, other, 0],
      [other, direct, 0],
      [0, 0, shear],
    ],
    strain: { x: strain, y: strain, xy: 0 },
  }
}

/** The panel's stiffnesses: against stretch (a), between stretch and bending (b), against bending (d). */
export function panelStiffness(plies: readonly Ply[]): { a: Matrix; b: Matrix; d: Matrix } {
  const depths = middleDepths(plies)
  const summed = (weight: (thickness: number, depth: number) => number): Matrix =>
    [0, 1, 2].map((i) =>
      [0, 1, 2].map((j) => sumPaired(plies.map((ply, k) => ply.stiffness[i]![j]! * weight(ply.thickness, depths[k]!)))),
    )
  return {
    a: summed((t) => t),
    b: summed((t, z) => t * z),
    d: summed((t, z) => t * (z * z + (t * t) / 12)),
  }
}

/** The shape that the panel takes. */
export function bendLaminate(plies: readonly Ply[]): Bend {
  const { a, b, d } = panelStiffness(plies)
  const depths = middleDepths(plies)
  const height = plies.reduce((sum, { thickness }) => sum + thickness, 0)
  const pull = (weight: (ply: Ply, depth: number) => number): number[] =>
    [0, 1, 2].map((i) => sumPaired(plies.map((ply, k) => weight(ply, depths[k]!) * freeStress(ply, i))))
  // curvature is reckoned as its strain over the whole thickness, so that all unknowns are of one size
  const rows = [0, 1, 2].map((i) => [...a[i]!, ...b[i]!.map((value) => value / height)])
  const lower = [0, 1, 2].map((i) => [
    ...b[i]!.map((value) => value / height),
    ...d[i]!.map((value) => value / (height * height)),
  ])
  const right = [
    ...pull(({ thickness }) => thickness),
    ...pull(({ thickness }, z) => thickness * z).map((moment) => moment / height),
  ]
  const [x, y, xy, kx, ky, kxy] = solveLinear([...rows, ...lower], right) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  return { stretch: { x, y, xy }, curvature: { x: kx / height, y: ky / height, xy: kxy / height } }
}

const freeStress = ({ stiffness, strain }: Ply, i: number): number =>
  stiffness[i]![0]! * strain.x + stiffness[i]![1]! * strain.y + stiffness[i]![2]! * strain.xy

function ownStiffness({ along, across, shear, poisson }: Stiffness): Record<'q11' | 'q12' | 'q22' | 'q66', number> {
  const back = (poisson * across) / along
  const whole = 1 - poisson * back
  return { q11: along / whole, q12: (poisson * across) / whole, q22: across / whole, q66: shear }
}

/** Exact at the right angles, so that a square lay-up has no twist at all. */
function directionOf(degrees: number): { c: number; s: number } {
  const turned = ((degrees % 180) + 180) % 180
  if (turned === 0) return { c: 1, s: 0 }
  if (turned === 90) return { c: 0, s: 1 }
  return { c: Math.cos((turned * Math.PI) / 180), s: Math.sin((turned * Math.PI) / 180) }
}
