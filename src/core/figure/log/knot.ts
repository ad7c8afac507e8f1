/** A branch that the knife cuts across in some of the leaves. */
export interface KnotShape {
  /** Place on the middle leaf of those it shows in: across the log, and along from the numbered end. */
  readonly across: number
  readonly along: number
  readonly firstLeaf: number
  readonly lastLeaf: number
  /** Where it is thickest. */
  readonly radius: number
  /** How far it moves from leaf to leaf. */
  readonly step: { readonly across: number; readonly along: number }
}

/** A knot as one surface shows it: the fibre sweeps round it even where the branch itself does not come through. */
export interface KnotTrace {
  readonly u: number
  readonly z: number
  /** 0 where only the sweep of the fibre is left. */
  readonly radius: number
  readonly sweep: number
}

/** Knots are drawn out along the grain by this much. */
const DRAWN_OUT = 1.25

/** The trace on the surface that lies `leaf` leaves deep (leaf 1's numbered face is 1; fractions are fine). */
export function knotTrace(knot: KnotShape, leaf: number): KnotTrace {
  const middle = (knot.firstLeaf + knot.lastLeaf) / 2
  const half = (knot.lastLeaf - knot.firstLeaf) / 2 + 0.75
  const off = (leaf - middle) / half
  return {
    u: knot.across + (leaf - middle) * knot.step.across,
    z: knot.along + (leaf - middle) * knot.step.along,
    radius: Math.abs(off) < 1 ? knot.radius * Math.sqrt(1 - off * off) : 0,
    sweep: 1.5 * knot.radius * Math.exp(-0.35 * off * off),
  }
}

/** Distance from the knot's middle, measured so that its rim is a circle. */
export const knotDistance = (trace: KnotTrace, u: number, z: number): number =>
  Math.hypot(u - trace.u, (z - trace.z) / DRAWN_OUT)

/** Where the fibre that passes at (u, z) would lie across the leaf if there were no knot. */
export function straightened(trace: KnotTrace, u: number, z: number): number {
  const dx = u - trace.u
  const dz = (z - trace.z) / 2.6
  const sweep = trace.sweep * trace.sweep
  return trace.u + (dx * (dx * dx + dz * dz + 0.04 * sweep)) / (dx * dx + dz * dz + 0.62 * sweep)
}
