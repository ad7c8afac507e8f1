/**
 * A narrow strip of bonded layers, each wanting to change its length by its own amount. Source: lamination theory in
 * one direction; for two layers the same as Timoshenko, Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11, 233 (1925).
 */
export interface StripLayer {
  readonly thickness: number
  /** Modulus along the strip, MPa. */
  readonly stiffness: number
  /** The change of length it would have if it were free, as a fraction. */
  readonly strain: number
}

/** Curvature (1/mm, positive: hollow on the side of the first layer) and the stretch of the middle plane. */
export interface StripBend {
  readonly curvature: number
  readonly stretch: number
}

export function bendStrip(layers: readonly StripLayer[]): StripBend {
  const middles = middleDepths(layers)
  const sum = (of: (layer: StripLayer, depth: number) => number): number =>
    sumPaired(layers.map((layer, i) => of(layer, middles[i]!)))
  const a = sum(({ stiffness: e, thickness: t }) => e * t)
  const b = sum(({ stiffness: e, thickness: t }, z) => e * t * z)
  const d = sum(({ stiffness: e, thickness: t }, z) => e * t * (z * z + (t * t) / 12))
  const n = sum(({ stiffness: e, thickness: t, strain }) => e * t * strain)
  const m = sum(({ stiffness: e, thickness: t, strain }, z) => e * t * z * strain)
  const curvature = (a * m - b * n) / (a * d - b * b)
  return { curvature, stretch: (n - b * curvature) / a }
}

/** The two-layer strip in closed form: curvature from thickness, stiffness and the difference of the free strains. */
export function twoLayerCurvature(first: StripLayer, second: StripLayer): number {
  const m = first.thickness / second.thickness
  const n = first.stiffness / second.stiffness
  const height = first.thickness + second.thickness
  const top = 6 * (second.strain - first.strain) * (1 + m) ** 2
  return top / (height * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))))
}

/** How far a bow of this curvature stands off a straightedge of this length. */
export const bowOver = (curvature: number, span: number): number => (curvature * span * span) / 8

/**
 * Depth of each layer's middle below the middle plane. Reckoned from both faces, so that mirrored layers come out at
 * exactly opposite depths and a symmetric panel at exactly no curvature.
 */
export function middleDepths(layers: readonly { readonly thickness: number }[]): number[] {
  const above = sumsBefore(layers)
  const below = sumsBefore([...layers].reverse()).reverse()
  return layers.map((_, i) => (above[i]! - below[i]!) / 2)
}

function sumsBefore(layers: readonly { readonly thickness: number }[]): number[] {
  let sum = 0
  return layers.map(({ thickness }) => (sum += thickness) - thickness)
}

/** A sum taken in pairs from both ends, in which opposite terms cancel to nothing at all. */
export function sumPaired(terms: readonly number[]): number {
  let sum = 0
  for (let i = 0, j = terms.length - 1; i <= j; i++, j--) sum += i === j ? terms[i]! : terms[i]! + terms[j]!
  return sum
}
