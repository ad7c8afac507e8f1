import type { BoardName } from './pressing'
import { memory, practice, seen, type Sourced } from './provenance'

/** A board from the merchant: stiffness in MPa, movement in its plane per 1 % of the *wood's* moisture, kg/m³. */
export interface BoardFigures {
  readonly along: Sourced
  readonly across: Sourced
  readonly shear: Sourced
  readonly poisson: Sourced
  readonly movement: Sourced
  readonly density: Sourced
  /** The ply species by which it is reckoned ply by ply; null: it has no plies. */
  readonly plySpecies: string | null
}

const BOARDS: Readonly<Record<BoardName, BoardFigures>> = {
  MDF: {
    along: seen(3000),
    across: seen(3000),
    shear: { value: 1200, mark: 'derived' },
    poisson: memory(0.25),
    movement: { value: 0.0003, mark: 'derived' },
    density: memory(740),
    plySpecies: null,
  },
  particleboard: {
    along: { value: 2000, mark: 'derived' },
    across: { value: 2000, mark: 'derived' },
    shear: { value: 800, mark: 'derived' },
    poisson: memory(0.25),
    movement: memory(0.0003),
    density: memory(680),
    plySpecies: null,
  },
  'birch plywood': {
    along: memory(9000),
    across: memory(7000),
    shear: memory(700),
    poisson: memory(0.1),
    movement: seen(0.0002),
    density: memory(680),
    plySpecies: 'Betula alleghaniensis',
  },
  'light plywood': {
    along: memory(6000),
    across: memory(4000),
    shear: memory(500),
    poisson: memory(0.1),
    movement: seen(0.0002),
    density: memory(520),
    plySpecies: 'Tilia americana',
  },
}

export const BOARD_NAMES = Object.keys(BOARDS) as readonly BoardName[]

export const boardFigures = (name: BoardName): BoardFigures => BOARDS[name]

export const hasPlies = (name: BoardName): boolean => BOARDS[name].plySpecies !== null

/** How much thinner or thicker than nominal a board may be, both as sizes. */
export interface Tolerance {
  readonly under: number
  readonly over: number
}

/** Sanded birch plywood by nominal thickness: under, over and number of plies; a plywood maker's table, seen. */
export const BIRCH: readonly {
  readonly nominal: number
  readonly tolerance: Tolerance
  readonly plies: number | null
}[] = [
  { nominal: 4, tolerance: { under: 0.5, over: 0.3 }, plies: 3 },
  { nominal: 6.5, tolerance: { under: 0.5, over: 0.4 }, plies: 5 },
  { nominal: 9, tolerance: { under: 0.5, over: 0.4 }, plies: 7 },
  { nominal: 12, tolerance: { under: 0.7, over: 0.5 }, plies: 9 },
  { nominal: 15, tolerance: { under: 0.8, over: 0.6 }, plies: null },
  { nominal: 18, tolerance: { under: 0.9, over: 0.7 }, plies: 13 },
  { nominal: 21, tolerance: { under: 1, over: 0.8 }, plies: null },
]

/** MDF to 30 mm and above by an industry site, seen; faced particleboard by EN 324, seen. */
export const MDF_TOLERANCE = { thin: seen(0.2), thick: seen(0.3), thinTo: 30 }
const PARTICLEBOARD: Tolerance = { under: 0.3, over: 0.5 }
/** Imported quarter-inch plywood is made to 5.0 to 5.2 mm (seen in a forum): ± 0.2 on either. */
export const LIGHT_PLYWOOD_TOLERANCE = practice(0.2)

/** What a board's thickness may be off. */
export function boardTolerance(name: BoardName, thickness: number): Tolerance {
  const even = (by: number): Tolerance => ({ under: by, over: by })
  if (name === 'particleboard') return PARTICLEBOARD
  if (name === 'light plywood') return even(LIGHT_PLYWOOD_TOLERANCE.value)
  if (name === 'MDF')
    return even(thickness <= MDF_TOLERANCE.thinTo ? MDF_TOLERANCE.thin.value : MDF_TOLERANCE.thick.value)
  return (BIRCH.find(({ nominal }) => thickness <= nominal + 0.25) ?? BIRCH[BIRCH.length - 1]!).tolerance
}

/** How many plies a board of this thickness usually has; null for boards without, odd for those with. */
export function usualPlies(name: BoardName, thickness: number): number | null {
  if (!hasPlies(name)) return null
  const known = BIRCH.find(({ nominal, plies }) => plies !== null && Math.abs(nominal - thickness) < 0.6)
  // birch plies are about 1.4 mm, those of light plywood about 1.7 (common practice)
  const ply = name === 'birch plywood' ? 1.4 : 1.7
  if (name === 'birch plywood' && known?.plies) return known.plies
  return Math.max(3, 2 * Math.round((thickness / ply - 1) / 2) + 1)
}
