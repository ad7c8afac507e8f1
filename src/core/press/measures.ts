/** Units of pressure, force, spread and volume that the trade's gauges and data sheets use; exact unless said otherwise. */

/** One inch of mercury (conventional, at 0 °C), in kPa. */
export const KPA_PER_INHG = 3.386389
/** One pound-force per square inch, in kPa. */
export const KPA_PER_PSI = 6.894757293168
export const NEWTON_PER_LBF = 4.4482216152605
export const GRAM_PER_LB = 453.59237
export const SQUARE_METRE_PER_SQUARE_FOOT = 0.09290304
export const MILLILITRE_PER_FL_OZ = 29.5735295625

export const kpaFromInHg = (inHg: number): number => inHg * KPA_PER_INHG
export const psiFromKpa = (kpa: number): number => kpa / KPA_PER_PSI
export const inHgFromKpa = (kpa: number): number => kpa / KPA_PER_INHG
export const lbfFromNewton = (newton: number): number => newton / NEWTON_PER_LBF

/** Spread in pounds per thousand square feet from g/m², and back. */
export const lbPerThousandFromGrams = (gramsPerSquareMetre: number): number =>
  gramsPerSquareMetre / GRAMS_PER_LB_THOUSAND
export const gramsFromLbPerThousand = (lb: number): number => lb * GRAMS_PER_LB_THOUSAND
const GRAMS_PER_LB_THOUSAND = GRAM_PER_LB / (1000 * SQUARE_METRE_PER_SQUARE_FOOT)

export const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32
export const celsius = (degreesFahrenheit: number): number => ((degreesFahrenheit - 32) * 5) / 9

/** `21 °C (70 °F)`; both, since data sheets come in either. */
export const showTemperature = (degrees: number): string =>
  `${Math.round(degrees)} °C (${Math.round(fahrenheit(degrees))} °F)`

/** `16 kN (3 600 lbf)` in two figures or so: a clamp is no scale. */
export function showForce(newton: number): string {
  const kn = newton / 1000
  const lbf =
    Math.round(lbfFromNewton(newton) / 10 ** lastPlace(lbfFromNewton(newton))) * 10 ** lastPlace(lbfFromNewton(newton))
  return `${kn < 10 ? kn.toFixed(1) : Math.round(kn)} kN (${grouped(lbf)} lbf)`
}

const lastPlace = (value: number): number => Math.max(0, Math.floor(Math.log10(Math.max(1, value))) - 2)

/** Thousands set apart by a thin space. */
export const grouped = (value: number): string => String(Math.round(value)).replace(/\B(?=(\d{3})+(?!\d))/g, '\u2009')

/** `83 kPa (12.0 psi)` */
export const showPressure = (kpa: number): string => `${Math.round(kpa)} kPa (${psiFromKpa(kpa).toFixed(1)} psi)`

/** Minutes or hours as people say them: `20 min`, `3½ h`, `2 days`. */
export function showHours(hours: number): string {
  if (hours < 1.5) return `${Math.round(hours * 60)} min`
  if (hours >= 48) return `${Math.round(hours / 24)} days`
  const halves = Math.round(hours * 2)
  return `${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''} h`
}
