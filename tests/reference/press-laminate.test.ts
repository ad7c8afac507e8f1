/**
 * [W1] A strip of two bonded layers bends as Timoshenko says; so does the panel in two directions when every Poisson
 *   ratio is 0.
 * [W2] A panel that is the same from both sides does not bend at all, at any moisture.
 * [W3] A panel of any lay-up takes the shape of least energy; turning the whole panel turns its shape.
 * [W4] A sheet whose grain runs every way is the mean of its directions.
 */
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { bendLaminate, everyWay, panelStiffness, stiffnessAt, strainAt, type Ply } from '../../src/core/press/laminate'
import { bendStrip, bowOver, twoLayerCurvature, type StripLayer } from '../../src/core/press/laminate-strip'
import type { Stiffness } from '../../src/core/press/stiffness'

const within = (digits: number, found: number, wanted: number): void =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(10 ** -digits * Math.abs(wanted))

/** S. Timoshenko, Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11 (1925) 233, equation for 1/ρ; from memory. */
function timoshenko(face: StripLayer, core: StripLayer): number {
  const m = face.thickness / core.thickness
  const n = face.stiffness / core.stiffness
  const h = face.thickness + core.thickness
  const free = core.strain - face.strain
  return (6 * free * (1 + m) ** 2) / (h * (3 * (1 + m) ** 2 + (1 + m * n) * (m ** 2 + 1 / (m * n))))
}

const asPly = ({ thickness, stiffness, strain }: StripLayer): Ply => ({
  thickness,
  stiffness: stiffnessAt({ along: stiffness, across: stiffness / 3, shear: stiffness / 5, poisson: 0 }, 0),
  strain: strainAt(strain, strain / 7, 0),
})

// Thickness, modulus and free strain worked out in the project's table of press numbers: walnut and sugar maple by the
// Wood Handbook's tables 5-1, 5-3a and 13-5, MDF 3000 MPa and 0.0003 per %
const STRIPS = [
  { wood: 'walnut, 2 %', t: 0.6, e: 714.56, strain: 0.00488, core: 18, k: 1.29144e-5, over600: 0.581, over1200: 2.325 },
  { wood: 'walnut, 2 %', t: 0.6, e: 714.56, strain: 0.00488, core: 6, k: 1.15134e-4, over600: 5.181, over1200: 20.72 },
  { wood: 'maple, 4 %', t: 0.6, e: 900.9, strain: 0.01292, core: 18, k: 4.27476e-5, over600: 1.924, over1200: 7.695 },
  { wood: 'maple, 4 %', t: 0.6, e: 900.9, strain: 0.01292, core: 6, k: 3.74588e-4, over600: 16.86, over1200: 67.43 },
  { wood: 'generic', t: 1, e: 1000, strain: 0.005, core: 10, k: 9.52647e-5, over600: 4.287, over1200: 17.15 },
  { wood: 'generic', t: 0.6, e: 800, strain: 0.005, core: 18, k: 1.47571e-5, over600: 0.664, over1200: 2.656 },
]

describe('the strip of two layers', () => {
  it.each(STRIPS)('[W1] $wood on $core mm: curvature $k, $over600 mm over 600', (row) => {
    const strip = [
      { thickness: row.t, stiffness: row.e, strain: -row.strain },
      { thickness: row.core, stiffness: 3000, strain: 0 },
    ] as const
    const { curvature } = bendStrip(strip)
    within(5, curvature, row.k)
    within(3, bowOver(curvature, 600), row.over600)
    within(3, bowOver(curvature, 1200), row.over1200)
    within(12, curvature, timoshenko(strip[0], strip[1]))
    within(12, twoLayerCurvature(strip[0], strip[1]), timoshenko(strip[0], strip[1]))
    within(12, bendLaminate(strip.map(asPly)).curvature.x, timoshenko(strip[0], strip[1]))
  })

  it('[W1] any two layers agree with the closed form, in one direction and in two', () => {
    const layer = fc.record({
      thickness: fc.double({ min: 0.4, max: 25, noNaN: true }),
      stiffness: fc.double({ min: 300, max: 15000, noNaN: true }),
      strain: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
    })
    fc.assert(
      fc.property(layer, layer, (a, b) => {
        fc.pre(Math.abs(a.strain - b.strain) > 1e-3)
        const wanted = timoshenko(a, b)
        within(10, bendStrip([a, b]).curvature, wanted)
        within(10, bendLaminate([a, b].map(asPly)).curvature.x, wanted)
      }),
      { seed: 1925 },
    )
  })

  it('[W1] three layers: no curvature, stretch 8.7336e-5; a backer a third thicker: a third of the bow', () => {
    const layer = (thickness: number, stiffness: number, strain: number): StripLayer => ({
      thickness,
      stiffness,
      strain,
    })
    const even = bendStrip([layer(0.6, 800, 0.005), layer(18, 3000, 0), layer(0.6, 800, 0.005)])
    expect(even.curvature).toBe(0)
    within(4, even.stretch, 8.7336e-5)
    const uneven = (core: number): number =>
      bendStrip([layer(0.60476, 800, 0.005), layer(core, 3000, 0), layer(0.79375, 800, 0.005)]).curvature
    within(4, uneven(18), 4.6168e-6)
    within(4, uneven(6), 3.9511e-5)
    within(2, bowOver(uneven(18), 600), 0.208)
    within(2, bowOver(uneven(6), 600), 1.78)
  })
})

/** Walnut across its grain, as a sheet: table 5-1's ratios x 1.10 x bending modulus. */
const WALNUT: Stiffness = { along: 12760, across: 714.56, shear: 790, poisson: 0.476 }
const MAPLE: Stiffness = { along: 13860, across: 900.9, shear: 870, poisson: 0.476 }

const ply = (own: Stiffness, thickness: number, degrees: number, along: number, across: number): Ply => ({
  thickness,
  stiffness: stiffnessAt(own, degrees),
  strain: strainAt(along, across, degrees),
})

describe('symmetric panels', () => {
  it('[W2] any panel followed by its mirror image stays exactly flat', () => {
    const anyPly = fc
      .tuple(
        fc.constantFrom(WALNUT, MAPLE),
        fc.double({ min: 0.4, max: 20, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      )
      .map(([own, thickness, degrees, strain]) => ply(own, thickness, degrees, strain / 50, strain))
    fc.assert(
      fc.property(fc.array(anyPly, { minLength: 1, maxLength: 5 }), fc.boolean(), (half, middle) => {
        const { curvature } = bendLaminate([...half, ...[...half].reverse().slice(middle ? 1 : 0)])
        expect(Math.abs(curvature.x) + Math.abs(curvature.y) + Math.abs(curvature.xy)).toBe(0)
      }),
      { seed: 2 },
    )
  })
})

// A. K. Kaw, Mechanics of Composite Materials, chapter 4: graphite/epoxy, 5 mm plies; E 181 and 10.3 GPa, ν 0.28,
// G 7.17 GPa, expansion 0.02e-6 and 22.5e-6 per °C. Figures from memory, given to four digits in the book.
const GRAPHITE: Stiffness = { along: 181_000, across: 10_300, shear: 7_170, poisson: 0.28 }

describe('a textbook of composites', () => {
  it('[W3] stiffnesses of the [0/30/−45] laminate', () => {
    const { a, b, d } = panelStiffness([0, 30, -45].map((degrees) => ply(GRAPHITE, 5, degrees, 0, 0)))
    const close = (matrix: readonly (readonly number[])[], rows: number[][]): void =>
      rows.forEach((row, i) => row.forEach((value, j) => within(2.7, matrix[i]![j]!, value)))
    // N/mm, N and N mm for the book's Pa m, Pa m² and Pa m³
    close(a, [
      [1.739e6, 3.884e5, 5.663e4],
      [3.884e5, 4.533e5, -1.141e5],
      [5.663e4, -1.141e5, 4.525e5],
    ])
    close(b, [
      [-3.129e6, 9.855e5, -1.072e6],
      [9.855e5, 1.158e6, -1.072e6],
      [-1.072e6, -1.072e6, 9.855e5],
    ])
    close(d, [
      [3.343e7, 6.461e6, -5.24e6],
      [6.461e6, 9.32e6, -5.596e6],
      [-5.24e6, -5.596e6, 7.663e6],
    ])
  })

  it('[W3] the unsymmetric [0/90] laminate cooled by 75 °C bends into a saddle', () => {
    const cooled = [0, 90].map((degrees) => ply(GRAPHITE, 5, degrees, 0.02e-6 * -75, 22.5e-6 * -75))
    const { stretch, curvature } = bendLaminate(cooled)
    within(2.7, stretch.x, -3.907e-4)
    within(2.7, stretch.y, -3.907e-4)
    expect(stretch.xy).toBe(0)
    // 1/m in the book
    within(2.7, curvature.x, -1.276e-4)
    within(2.7, curvature.y, 1.276e-4)
    expect(curvature.xy).toBe(0)
  })
})

/** A ply as the energy sees it: its own directions, nothing rotated beforehand. */
interface RawPly {
  readonly own: Stiffness
  readonly thickness: number
  readonly degrees: number
  readonly along: number
  readonly across: number
}

const GAUSS = [
  { at: -Math.sqrt(3 / 5), weight: 5 / 9 },
  { at: 0, weight: 8 / 9 },
  { at: Math.sqrt(3 / 5), weight: 5 / 9 },
]

/**
 * Strain energy per area of a plate whose strain is x[0..2] + depth/height · x[3..5]: at points through each ply the
 * strain is read in the ply's own directions by a strain gauge's formula and the ply's own law is applied.
 */
function energy(plies: readonly RawPly[], x: readonly number[]): number {
  const height = plies.reduce((sum, { thickness }) => sum + thickness, 0)
  let top = -height / 2
  let sum = 0
  for (const { own, thickness, degrees, along, across } of plies) {
    const angle = (degrees * Math.PI) / 180
    for (const { at, weight } of GAUSS) {
      const z = (top + (thickness * (1 + at)) / 2) / height
      const [ex, ey, exy] = [x[0]! + z * x[3]!, x[1]! + z * x[4]!, x[2]! + z * x[5]!]
      const gauge = (a: number): number =>
        (ex + ey) / 2 + ((ex - ey) / 2) * Math.cos(2 * a) + (exy / 2) * Math.sin(2 * a)
      const e1 = gauge(angle) - along
      const e2 = gauge(angle + Math.PI / 2) - across
      const shear = -(ex - ey) * Math.sin(2 * angle) + exy * Math.cos(2 * angle)
      const minor = (own.poisson * own.across) / own.along
      const law =
        (own.along * e1 * e1 + 2 * own.poisson * own.across * e1 * e2 + own.across * e2 * e2) /
        (1 - own.poisson * minor)
      sum += ((law + own.shear * shear * shear) * weight * thickness) / 4
    }
    top += thickness
  }
  return sum
}

/** The least of a quadratic by conjugate gradients, knowing nothing but its values. */
function leastEnergy(of: (x: readonly number[]) => number): number[] {
  const step = 1e-2
  const moved = (x: readonly number[], d: readonly number[], by: number): number[] =>
    x.map((value, i) => value + by * d[i]!)
  const unit = (i: number): number[] => Array.from({ length: 6 }, (_, k) => (k === i ? 1 : 0))
  const slope = (x: readonly number[], d: readonly number[]): number =>
    (of(moved(x, d, step)) - of(moved(x, d, -step))) / (2 * step)
  const gradient = (x: readonly number[]): number[] => unit(0).map((_, i) => slope(x, unit(i)))
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + value * b[i]!, 0)
  let x = [0, 0, 0, 0, 0, 0]
  let g = gradient(x)
  let d = g.map((value) => -value)
  for (let round = 0; round < 60; round++) {
    const size = Math.sqrt(dot(d, d))
    if (size === 0) break
    const way = d.map((value) => value / size)
    const bend = (of(moved(x, way, step)) - 2 * of(x) + of(moved(x, way, -step))) / (step * step)
    x = moved(x, way, -slope(x, way) / bend)
    const next = gradient(x)
    // begun anew after as many steps as there are unknowns
    const keep = round % 6 === 5 ? 0 : dot(next, next) / dot(g, g)
    d = next.map((value, i) => -value + keep * d[i]!)
    g = next
  }
  return x
}

const LAY_UPS: { name: string; plies: RawPly[] }[] = [
  {
    name: 'walnut on MDF, one side',
    plies: [
      { own: WALNUT, thickness: 0.6, degrees: 90, along: -0.0001, across: -0.0055 },
      {
        own: { along: 3000, across: 3000, shear: 1200, poisson: 0.25 },
        thickness: 6,
        degrees: 0,
        along: -0.0006,
        across: -0.0006,
      },
    ],
  },
  {
    name: 'plies askew',
    plies: [
      { own: WALNUT, thickness: 0.6, degrees: 85, along: 0.0002, across: 0.008 },
      { own: MAPLE, thickness: 1.5, degrees: 20, along: 0.0001, across: 0.012 },
      { own: MAPLE, thickness: 2, degrees: -50, along: 0.0001, across: 0.009 },
    ],
  },
  {
    name: 'two leaves crossed',
    plies: [0, 90].map((degrees) => ({ own: MAPLE, thickness: 3, degrees, along: 0.0002, across: -0.01 })),
  },
]

describe('least energy', () => {
  it.each(LAY_UPS)('[W3] $name takes the shape found by minimising its energy', ({ plies }) => {
    const found = leastEnergy((x) => energy(plies, x))
    const { stretch, curvature } = bendLaminate(plies.map((p) => ply(p.own, p.thickness, p.degrees, p.along, p.across)))
    const height = plies.reduce((sum, { thickness }) => sum + thickness, 0)
    const wanted = [stretch.x, stretch.y, stretch.xy, curvature.x * height, curvature.y * height, curvature.xy * height]
    const size = Math.max(...wanted.map(Math.abs))
    expect(size).toBeGreaterThan(1e-4)
    wanted.forEach((value, i) => expect(Math.abs(found[i]! - value)).toBeLessThan(1e-7 * size))
  })

  it('[W3] turning every ply by an angle turns the curvature by it', () => {
    const { plies } = LAY_UPS[1]!
    const bendTurned = (by: number) =>
      bendLaminate(plies.map((p) => ply(p.own, p.thickness, p.degrees + by, p.along, p.across))).curvature
    const still = bendTurned(0)
    fc.assert(
      fc.property(fc.double({ min: -180, max: 180, noNaN: true }), (by) => {
        const k = bendTurned(by)
        const a = (by * Math.PI) / 180
        const along =
          (still.x + still.y) / 2 + ((still.x - still.y) / 2) * Math.cos(2 * a) - (still.xy / 2) * Math.sin(2 * a)
        expect(Math.abs(k.x - along)).toBeLessThan(1e-12)
        expect(Math.abs(k.x + k.y - still.x - still.y)).toBeLessThan(1e-12)
      }),
      { seed: 3 },
    )
  })
})

describe('a sheet with no single grain', () => {
  it('[W4] is the mean of all its directions', () => {
    const mean = everyWay(WALNUT, 0.0001, 0.0055)
    const turns = Array.from({ length: 36 }, (_, i) => 5 * i)
    const average = (of: (degrees: number) => number): number =>
      turns.reduce((sum, turn) => sum + of(turn) / turns.length, 0)
    for (const [i, j] of [
      [0, 0],
      [0, 1],
      [1, 1],
      [2, 2],
      [0, 2],
      [1, 2],
    ] as const)
      expect(mean.stiffness[i]![j]!).toBeCloseTo(
        average((degrees) => stiffnessAt(WALNUT, degrees)[i]![j]!),
        6,
      )
    const pull = average((degrees) => {
      const { stiffness, strain } = ply(WALNUT, 1, degrees, 0.0001, 0.0055)
      return stiffness[0]![0]! * strain.x + stiffness[0]![1]! * strain.y + stiffness[0]![2]! * strain.xy
    })
    expect((mean.stiffness[0]![0]! + mean.stiffness[0]![1]!) * mean.strain.x).toBeCloseTo(pull, 9)
  })
})
