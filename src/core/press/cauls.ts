import { showForce, showPressure, NEWTON_PER_LBF } from './measures'
import type { ClampName } from './pressing'
import { between, practice, seen, type Sourced, type SourcedRange } from './provenance'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { forceOn } from './vacuum'

/** What one clamp gives when a hand tightens it well, lbf: for planning, from memory. */
export const CLAMPS: Readonly<Record<ClampName, SourcedRange>> = {
  'light bar': between(200, 400, 'from memory'),
  'F-clamp': between(500, 800, 'from memory'),
  'parallel-jaw': between(1000, 1500, 'from memory'),
  pipe: between(1000, 1800, 'from memory'),
  'heavy C-clamp': between(2000, 2000, 'from memory'),
}

export const CLAMP_NAMES = Object.keys(CLAMPS) as readonly ClampName[]

/** Newton that one clamp is reckoned with: the middle of its range. */
export const clampForce = (name: ClampName): number => ((CLAMPS[name].least + CLAMPS[name].most) / 2) * NEWTON_PER_LBF

/** Enough for a thin flat leaf under stiff cauls (as much as a good bag), and what glue sheets ask for; kPa. */
export const CAUL_PRESSURE: { readonly thin: Sourced; readonly sheet: Sourced } = {
  thin: practice(100),
  sheet: practice(700),
}

/** Clamps that it takes of each kind to press an area in mm² with so many kPa. */
export function clampsNeeded(kpa: number, area: number): Record<ClampName, number> {
  const count = (name: ClampName): number => Math.ceil(forceOn(kpa, area) / clampForce(name) - 1e-9)
  return Object.fromEntries(CLAMP_NAMES.map((name) => [name, count(name)])) as Record<ClampName, number>
}

/** Clamps of one kind of known force, N. */
export const clampsOf = (newton: number, eachNewton: number): number => Math.ceil(newton / eachNewton - 1e-9)

/** What the clamps at hand really give on an area in mm², kPa. */
export function pressureAtHand(clamps: Readonly<Record<ClampName, number>>, area: number): number {
  const newton = CLAMP_NAMES.reduce((sum, name) => sum + clamps[name] * clampForce(name), 0)
  return (newton / area) * 1000
}

/**
 * How far apart pads may stand so that their pressures meet: it spreads at 45 degrees through a stiff caul, so a pad
 * of this width under so much caul reaches twice the caul's thickness farther (common practice).
 */
export const padSpacing = (padWidth: number, caulThickness: number): number => padWidth + 2 * caulThickness

/** Rows and columns of pads that leave no place without pressure. */
export function padGrid(core: { width: number; length: number }, spacing: number): { across: number; along: number } {
  return { across: Math.max(1, Math.ceil(core.width / spacing)), along: Math.max(1, Math.ceil(core.length / spacing)) }
}

/** Crowned cauls: a hardwood bar 2 in wide, 1/16 in higher in the middle, one every 4 in above and below; seen. */
export const CROWNED = { width: seen(50.8), crown: seen(1.5875), every: seen(101.6) }

/** How many pairs of crowned cauls lie across a panel of this length. */
export const crownedPairs = (length: number): number => Math.max(2, Math.ceil(length / CROWNED.every.value))

/** Force, clamps and what those at hand give. */
export function clampSentences(
  core: { width: number; length: number },
  clamps: Readonly<Record<ClampName, number>>,
  unit: LengthUnit,
): string[] {
  const area = core.width * core.length
  const { thin, sheet } = CAUL_PRESSURE
  const have = pressureAtHand(clamps, area)
  const need = clampsNeeded(thin.value, area)
  const verdict =
    have >= thin.value
      ? 'enough for thin veneer under stiff cauls'
      : `too little: ${showPressure(thin.value)} needs ${need['F-clamp']} F-clamps or ${need['parallel-jaw']} parallel-jaw clamps`
  const every = showLength(CROWNED.every.value, unit, 'whole')
  return [
    `A thin leaf wants ${showForce(forceOn(thin.value, area))}, glue sheets ${showForce(forceOn(sheet.value, area))}.`,
    `The clamps at hand give ${showPressure(have)}: ${verdict}.`,
    `Crowned cauls above and below every ${every}: ${crownedPairs(core.length)} pairs, each ${showLength(CROWNED.crown.value, unit, 'seam')} higher in the middle. Tighten the middle first, then outwards.`,
    'Cauls at least as thick as 3/4 in board on both sides, the size of the panel, with waxed paper next to the work.',
  ]
}
