/** A number as the writers print it: at most `places` decimals, no exponent, no trailing zeros, never `-0`. */
export function numeral(value: number, places: number): string {
  const fixed = value.toFixed(places)
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed
  return trimmed === '-0' ? '0' : trimmed
}
