import { describe, expect, it } from 'vitest'
import { readLength } from '../../src/core/units/read-length'
import { MM_PER } from '../../src/core/units/unit'

const millimetres = (text: string): number => {
  const read = readLength(text, 'in')
  return read.ok ? read.value : NaN
}

describe('the inch', () => {
  // Refinement of values for the yard and the pound, US Federal Register notice of 30 June 1959 (effective 1 July
  // 1959): 1 yard = 0.9144 metre exactly, so that 1 inch = 25.4 mm and 1 foot = 304.8 mm exactly.
  it('[U1] is a 36th of the international yard of 0.9144 m', () => {
    expect(millimetres('36 in')).toBe(914.4)
    expect(millimetres('1 in')).toBe(25.4)
    expect(millimetres("3'")).toBe(914.4)
    expect(MM_PER.in * 36).toBeCloseTo(MM_PER.m * 0.9144, 9)
  })

  // Decimal equivalents as printed in common millimetre-to-inch tables, five places: 5 mm = 0.19685 in, 18 mm =
  // 0.70866 in; half a unit of the last place is 0.000005 in = 0.000127 mm.
  it.each([
    ['0.19685 in', 5],
    ['0.70866 in', 18],
  ])('[U1] %s is %d mm to the places printed', (text, length) => {
    expect(Math.abs(millimetres(text) - length)).toBeLessThan(0.000_127 + 1e-6)
  })

  // 1/42 in is a common nominal thickness of sliced veneer; 25.4 / 42 = 0.60476 mm by the definition above.
  it('[U1] 1/42 in is 0.60476 mm', () => {
    expect(millimetres('1/42 in')).toBeCloseTo(0.60476, 5)
  })
})
