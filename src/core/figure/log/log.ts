import { createNoise3D, type NoiseFunction3D } from 'simplex-noise'
import type { Box } from '../../geometry/box'
import { point } from '../../geometry/point'
import { invariant } from '../../invariant'
import type { KnotShape } from './knot'
import { mixedSeed, seededRandom } from './random'
import { earlyShare, growYears, ringDarkness, ringTable, type RingTable } from './ring-table'
import { acrossAt, type Slicing } from './slicing'
import { SPECIES, type Species, type SpeciesName } from './species'
import { findSpot, sectionAt, type Section, type Spot, type TrunkShape } from './trunk'

/** A crack from one end of the log, which some of the leaves show. */
export interface SplitShape {
  readonly end: 'numbered' | 'far'
  /** Where it meets the end, across the log. */
  readonly across: number
  readonly firstLeaf: number
  readonly lastLeaf: number
  /** Length on the leaf where it is longest. */
  readonly length: number
}

export interface LogOptions {
  /** The same seed gives the same log. */
  readonly seed: number
  readonly species: SpeciesName
  readonly slicing: Slicing
  readonly leaves: number
  readonly thickness: number
  readonly trunk: TrunkShape
  readonly knots: readonly KnotShape[]
  readonly splits: readonly SplitShape[]
}

/**
 * An invented log with its leaves: a test bench of known truth and a flitch to try things on. All leaves share one
 * frame (they are registered to the log): x across from 0, y along from the numbered end.
 */
export interface Log extends LogOptions {
  readonly wood: Species
  readonly noise: NoiseFunction3D
  readonly rings: {
    readonly darkness: RingTable
    readonly early: RingTable
    /** Two ways the colour may band along the rings, blended from place to place. */
    readonly pigments: readonly [RingTable, RingTable]
    /** Which way the fibre leans, by radius. */
    readonly lean: RingTable
  }
  /** How far left of the log's middle the leaf frame begins. */
  readonly left: number
  /** Room for every leaf, from x = 0. */
  readonly width: number
}

/** The frame that all leaves share. */
export const leafFrame = ({ width, trunk }: Log): Box<'leaf'> => ({ min: point(0, 0), max: point(width, trunk.length) })

/** Makes a log. Leaves are numbered from 1; `leaves` must be at least 1 and the knife must stay inside the log. */
export function makeLog(options: LogOptions): Log {
  const { seed, trunk, leaves, thickness } = options
  invariant(Number.isInteger(leaves) && leaves >= 1, `a log of ${leaves} leaves`)
  invariant(thickness > 0 && trunk.length > 0, `leaves ${thickness} thick and ${trunk.length} long`)
  const wood = SPECIES[options.species]
  const noise = createNoise3D(seededRandom(mixedSeed(seed, 1)))
  const bare: Log = { ...options, wood, noise, rings: growRings(seed, wood, trunk, noise), left: 0, width: 0 }
  const { from, to } = widestReach(bare)
  return { ...bare, left: -from, width: to - from }
}

function growRings(seed: number, wood: Species, trunk: TrunkShape, noise: NoiseFunction3D): Log['rings'] {
  const [from, to] = [-80, trunk.radius + 100]
  const years = growYears(from, to, wood.ring, seededRandom(mixedSeed(seed, 2)))
  const band = (row: number) => (radius: number) =>
    0.5 * noise(radius / 21, row, 0) +
    0.34 * noise(radius / 8, row, 9) +
    0.5 * Math.max(0, noise(radius / 5.5, row, 21)) ** 3
  return {
    darkness: ringDarkness(years, wood.ring),
    early: earlyShare(years),
    pigments: [ringTable(from, to, band(200)), ringTable(from, to, band(300))],
    lean: ringTable(from, to, (radius) => Math.tanh(2.2 * noise(radius / wood.ribbon.pitch, 400, 0))),
  }
}

/** How deep below leaf 1's numbered face a face of a leaf lies: the next leaf begins where this one ends. */
export const faceDepth = ({ thickness }: LogOptions, leaf: number, face: 'numbered' | 'other'): number =>
  (leaf - (face === 'numbered' ? 1 : 0)) * thickness

/** How deep under the bark the spot lies, `u` across a surface of the log; negative outside. */
export function barkDepth(log: Log, section: Section, sunk: number, u: number, spot: Spot): number {
  const { x, y } = acrossAt(log.slicing, sunk, u)
  findSpot(log.trunk, log.noise, section, x, y, spot)
  return spot.depth
}

/** The wood's edges on one cross-section of a surface, across the log; null where the knife misses the log. */
export function edgesAt(log: Log, sunk: number, z: number): { readonly from: number; readonly to: number } | null {
  const section = sectionAt(log.trunk, log.noise, z)
  const spot: Spot = { ring: 0, depth: 0 }
  const inside = (u: number) => barkDepth(log, section, sunk, u, spot) > 0
  const sawn = log.slicing.cut === 'quarter' ? log.slicing.innerEdge : null
  const start = sawn ?? section.middleX
  if (!inside(start)) return null
  const reach = 2 * log.trunk.radius
  return { from: sawn ?? edgeBetween(inside, start, start - reach), to: edgeBetween(inside, start, start + reach) }
}

/** The border between a place inside and one outside, to a hundredth. */
function edgeBetween(inside: (u: number) => boolean, within: number, beyond: number): number {
  let [a, b] = [within, beyond]
  while (Math.abs(b - a) > 0.02) {
    const middle = (a + b) / 2
    if (inside(middle)) a = middle
    else b = middle
  }
  return (a + b) / 2
}

/** The frame: whole millimetres round what the first, the middle and the last leaf take up, and a little room. */
function widestReach(log: Log): { from: number; to: number } {
  let [from, to] = [Infinity, -Infinity]
  for (const leaf of [0, log.leaves / 2, log.leaves]) {
    for (let z = 0; z <= log.trunk.length; z += 40) {
      const edges = edgesAt(log, leaf * log.thickness, z)
      if (!edges) continue
      from = Math.min(from, edges.from)
      to = Math.max(to, edges.to)
    }
  }
  invariant(to > from, 'the knife never meets the log')
  return { from: Math.floor(from - 1), to: Math.ceil(to + 1) }
}
