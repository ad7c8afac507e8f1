import { describe, expect, it } from 'vitest'
import { bareLength, lengthPieces, showLength, showWarp, type Grain } from './show-length'
import { stepLength } from './step'
import type { LengthUnit } from './unit'

// [U6] Places on a leaf are shown in whole mm or 1/32 in, seams and trims to 0.5 mm or 1/64 in, depths to 0.1 mm.
// [U7] A fraction is reduced, and marked with ≈ when it is off by more than 0.01 mm.
// [U8] Less than nothing has a true minus sign, and nothing has none.

describe('lengths as people read them', () => {
  it.each<[length: number, unit: LengthUnit, grain: Grain, text: string]>([
    [441.4, 'mm', 'place', '441 mm'],
    [441.4, 'mm', 'seam', '441.5 mm'],
    [441.4, 'mm', 'whole', '441 mm'],
    [441.4, 'mm', 'exact', '441.4 mm'],
    [0.6, 'mm', 'exact', '0.6 mm'],
    [1.2, 'mm', 'depth', '1.2 mm'],
    [2.04, 'mm', 'depth', '2 mm'],
    [1.2, 'in', 'depth', '0.047 in'],
    [100, 'mm', 'exact', '100 mm'],
    [1500.1, 'in', 'whole', '≈ 59 1/16 in'],
    [441.325, 'in', 'place', '17 3/8 in'],
    [441.325 + 0.009, 'in', 'place', '17 3/8 in'],
    [441.325 + 0.011, 'in', 'place', '≈ 17 3/8 in'],
    [441.325 + 25.4 / 64, 'in', 'seam', '17 25/64 in'],
    [6.35, 'in', 'seam', '1/4 in'],
    [25.4, 'in', 'place', '1 in'],
    [25.39, 'in', 'place', '1 in'],
    [0, 'in', 'place', '0 in'],
    [0.1, 'in', 'place', '≈ 0 in'],
    [0.6, 'in', 'exact', '0.0236 in'],
    [12.7, 'in', 'exact', '1/2 in'],
  ])('[U6][U7] %d mm in %s, %s: %s', (length, unit, grain, text) => {
    expect(showLength(length, unit, grain)).toBe(text)
  })

  it.each<[length: number, unit: LengthUnit, text: string]>([
    [-0.5, 'mm', '−0.5 mm'],
    [-441.325, 'in', '−17 3/8 in'],
    [-0.2, 'mm', '0 mm'],
    [-0, 'in', '0 in'],
  ])('[U8] %d mm in %s: %s', (length, unit, text) => {
    expect(showLength(length, unit, 'seam')).toBe(text)
  })

  it('a table names the unit in its head, and a page may set the fraction itself', () => {
    expect(bareLength(441.325, 'in', 'place')).toBe('17 3/8')
    expect(lengthPieces(-6.35, 'in', 'place')).toEqual({
      about: false,
      minus: true,
      whole: '',
      fraction: '1/4',
      unit: 'in',
    })
  })

  it.each<[length: number, unit: LengthUnit, text: string]>([
    [0.31, 'mm', 'about ½ mm at most'],
    [-0.5, 'mm', 'about ½ mm at most'],
    [0.51, 'mm', 'about 1 mm at most'],
    [1.2, 'mm', 'about 1½ mm at most'],
    [0.5, 'in', 'about 1/32 in at most'],
    [27, 'in', 'about 1 3/32 in at most'],
    [0, 'mm', '0 mm'],
  ])('warp of %d mm in %s: %s', (length, unit, text) => {
    expect(showWarp(length, unit)).toBe(text)
  })

  it('an arrow key moves by 1, 10 or 0.2 mm, or by 1/16, 1/2 or 1/64 in', () => {
    const steps = (unit: LengthUnit) => (['plain', 'large', 'small'] as const).map((size) => stepLength(unit, size))
    expect(steps('mm')).toEqual([1, 10, 0.2])
    expect(steps('in').map((step) => showLength(step, 'in', 'seam'))).toEqual(['1/16 in', '1/2 in', '1/64 in'])
  })
})
