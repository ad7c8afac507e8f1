/** The two ways in which people use the comma: `2.440,5` or `2,440.5`. */
export type Comma = 'decimal' | 'groups'

const PLAIN = /^\d+$/
const SPACED = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?$/
const POINT_DECIMAL = /^(?:\d+|[1-9]\d{0,2}(?:,\d{3})+)?(?:\.\d*)?$/
const COMMA_DECIMAL = /^(?:\d+|[1-9]\d{0,2}(?:\.\d{3})+)?,\d*$/
const POINT_GROUPS = /^[1-9]\d{0,2}(?:\.\d{3}){2,}$/

/**
 * The value of an unsigned numeral such as `2440.5`, `2 440,5` or `1,234.5`, or null where it is none under
 * this use of the comma. A point alone is decimal under both; a group has three digits, and none starts with 0.
 */
export function numeralValue(numeral: string, comma: Comma): number | null {
  if (!/\d/.test(numeral)) return null
  if (PLAIN.test(numeral)) return Number(numeral)
  if (SPACED.test(numeral)) return Number(numeral.replace(/ /g, '').replace(',', '.'))
  if (comma === 'groups') return POINT_DECIMAL.test(numeral) ? Number(numeral.replace(/,/g, '')) : null
  if (COMMA_DECIMAL.test(numeral)) return Number(numeral.replace(/\./g, '').replace(',', '.'))
  if (POINT_GROUPS.test(numeral)) return Number(numeral.replace(/\./g, ''))
  return /^\d*\.\d*$/.test(numeral) ? Number(numeral) : null
}
