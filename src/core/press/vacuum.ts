import { inHgFromKpa, kpaFromInHg, lbfFromNewton, psiFromKpa, showForce, showPressure } from './measures'
import type { Layer, Suction } from './pressing'

/** Standard pressure at sea level, kPa. */
export const SEA_LEVEL = 101.325
/** Earth's radius in the definition of geopotential height, m. */
const EARTH = 6_356_766

/**
 * Pressure of the air, kPa, at a geopotential height in metres up to 11 000: U.S. Standard Atmosphere, 1976, troposphere
 * (g0 = 9.80665 m/s², M = 28.9644 g/mol, R* = 8.31432 J/(mol K), lapse 6.5 K/km).
 */
export const airAtGeopotential = (metres: number): number =>
  SEA_LEVEL * ((288.15 - 0.0065 * metres) / 288.15) ** ((9.80665 * 0.0289644) / (8.31432 * 0.0065))

/** The same at a height above the sea as a map shows it. */
export const airPressure = (metres: number): number => airAtGeopotential((EARTH * metres) / (EARTH + metres))

/** Pressure on the work in kPa: what the gauge shows, or the share of the local air that the pump can take away. */
export function bagPressure(suction: Suction): number {
  if (suction.by === 'gauge') return kpaFromInHg(suction.inHg)
  return (kpaFromInHg(suction.inHg) / SEA_LEVEL) * airPressure(suction.altitude)
}

/** Force on an area in mm², newton. */
export const forceOn = (kpa: number, area: number): number => (kpa * area) / 1000

export interface BagForce {
  readonly kpa: number
  readonly psi: number
  readonly inHg: number
  readonly newton: number
  readonly lbf: number
}

/** Pressure and total force on a panel of this area, mm². */
export function bagForce(suction: Suction, area: number): BagForce {
  const kpa = bagPressure(suction)
  const newton = forceOn(kpa, area)
  return { kpa, psi: psiFromKpa(kpa), inHg: inHgFromKpa(kpa), newton, lbf: lbfFromNewton(newton) }
}

/** A gauge below this pulls a leaf flat but leaves little to spare (common practice). */
const LEAST_GAUGE = 18

/** A leaf thicker than this has stiffness of its own (common practice: about 1/16 in). */
const STIFF_LEAF = 1.6

/** What to know about the pressure: how much there is, and whether it will do. */
export function pressureSentences(
  suction: Suction,
  area: number,
  layers: readonly Layer[],
  asked: number | null,
): string[] {
  const { kpa, inHg, newton } = bagForce(suction, area)
  const have = `The bag presses with ${showPressure(kpa)}, ${inHg.toFixed(1)} inHg: ${showForce(newton)} on this panel.`
  const stiff = layers.some(({ kind, thickness }) => kind === 'veneer' && thickness > STIFF_LEAF)
  const sheet =
    asked === null ? 'Glue sheets ask for ten times as much' : `The glue’s sheet asks for ${showPressure(asked * 1000)}`
  const why = stiff
    ? `${sheet}: that is meant for stiff stuff, and the thick leaves here are stiffer than veneer. Fit them well, and put a foam sheet or a stout caul above.`
    : `${sheet}: that is meant for stiff boards that must be bent to meet. A thin leaf needs only to be drawn flat, everywhere alike, and for that this is enough.`
  const low = inHg < LEAST_GAUGE ? ['That is little: look for a leak before you spread glue.'] : []
  return [have, why, ...low, ...altitudeSentence(suction)]
}

function altitudeSentence(suction: Suction): string[] {
  if (suction.by === 'gauge') return []
  const here = inHgFromKpa(bagPressure(suction))
  if (suction.inHg - here < 0.5) return []
  return [
    `At ${Math.round(suction.altitude)} m the same pump reaches ${here.toFixed(1)} inHg instead of ${suction.inHg}.`,
  ]
}

/** A pump can't be better than all the air there is, nor a gauge show more. */
export function suctionTrouble(suction: Suction): string | null {
  if (!Number.isFinite(suction.inHg) || suction.inHg < 0)
    return `A vacuum of ${suction.inHg} inHg can’t be: give 0 to 29.9.`
  if (suction.inHg > inHgFromKpa(SEA_LEVEL))
    return `A vacuum of ${suction.inHg} inHg is more than all the air there is: 29.9 inHg at sea level.`
  if (suction.by === 'pump' && !(suction.altitude >= -500 && suction.altitude <= 6000))
    return `A height of ${suction.altitude} m is no place for a workshop: give −500 to 6000 m.`
  return null
}
