/**
 * [W5] Wood comes to the moisture that the Wood Handbook gives for the air's temperature and humidity.
 * [W6] Movement follows the Wood Handbook's coefficients, and these its shrinkage table, where they say they do.
 */
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { celsius } from '../../src/core/press/measures'
import { boardFigures } from '../../src/core/press/boards'
import {
  acrossCoefficient,
  coefficientFromShrinkage,
  movement,
  movementByShrinkage,
  woodMoisture,
} from '../../src/core/press/moisture'
import { woodStiffness } from '../../src/core/press/stiffness'
import { findWood, UNCERTAIN, WOODS } from '../../src/core/press/woods'

// Wood Handbook (FPL-GTR-190) table 4-2, the row of 21.1 °C (70 °F), for 5 % of humidity to 95 % by fives; from memory,
// and agreeing with the published formula to the tenth that it is rounded to
const TABLE_4_2 = [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11, 12, 13.1, 14.4, 16, 17.9, 20.5, 23.9]

// Worked out by hand from the formula in °C of FPL-RN-0268
const BY_FORMULA: readonly (readonly [temperature: number, humidity: number, moisture: number])[] = [
  [10, 0.2, 4.6],
  [10, 0.8, 16.38],
  [15, 0.5, 9.38],
  [20, 0.3, 6.19],
  [20, 0.5, 9.27],
  [20, 0.6, 11],
  [21.1, 0.65, 11.96],
  [25, 0.3, 6.1],
  [25, 0.45, 8.36],
  [30, 0.7, 12.71],
  [30, 0.8, 15.55],
]

describe('moisture of wood in air', () => {
  it.each(TABLE_4_2.map((wanted, i) => ({ humidity: 5 * (i + 1), wanted })))(
    '[W5] 70 °F and $humidity %: $wanted %',
    ({ humidity, wanted }) => {
      const off = Math.abs(woodMoisture({ temperature: celsius(70), humidity: humidity / 100 }) - wanted)
      // rounded to a tenth; the formula gives 17.95 where 17.9 stands in the table
      expect(off).toBeLessThan(0.053)
    },
  )

  it.each(BY_FORMULA)('[W5] %s °C, humidity %s: %s %%', (temperature, humidity, moisture) =>
    expect(woodMoisture({ temperature, humidity })).toBeCloseTo(moisture, 2),
  )

  it('[W5] the fit in °F (FPL-RN-0268, from memory) agrees within 0.02 at 70 °F', () => {
    const inFahrenheit = (t: number, h: number): number => {
      const w = 330 + 0.452 * t + 0.00415 * t * t
      const k = (0.791 + 0.000463 * t - 0.000000844 * t * t) * h
      const k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t
      const k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t
      return (1800 / w) * (k / (1 - k) + (k1 * k + 2 * k1 * k2 * k * k) / (1 + k1 * k + k1 * k2 * k * k))
    }
    for (const humidity of [0.2, 0.4, 0.6, 0.8])
      expect(Math.abs(woodMoisture({ temperature: celsius(70), humidity }) - inFahrenheit(70, humidity))).toBeLessThan(
        0.02,
      )
  })

  it('[W5] rises with humidity and, from 10 °C up, falls with temperature', () => {
    const air = fc.record({ temperature: fc.integer({ min: 10, max: 45 }), humidity: fc.integer({ min: 0, max: 95 }) })
    fc.assert(
      fc.property(air, ({ temperature, humidity }) => {
        const here = woodMoisture({ temperature, humidity: humidity / 100 })
        expect(woodMoisture({ temperature, humidity: (humidity + 1) / 100 })).toBeGreaterThan(here)
        if (humidity > 10)
          expect(woodMoisture({ temperature: temperature + 1, humidity: humidity / 100 })).toBeLessThan(here)
      }),
      { seed: 5 },
    )
  })
})

/** Rows in which tables 4-3 and 13-5 do not agree: groups of oaks, and sycamore's tangential by one in the last place. */
const EXCEPTIONS: Readonly<Record<string, readonly ('radial' | 'tangential')[]>> = {
  'oak, northern red': ['radial', 'tangential'],
  'oak, white': ['radial', 'tangential'],
  'sycamore, American': ['tangential'],
}

const domestic = WOODS.filter(({ name }) => !UNCERTAIN.includes(name))

describe('movement', () => {
  it.each(
    domestic.flatMap((wood) =>
      (['radial', 'tangential'] as const).map((direction) => ({ name: wood.name, direction, wood })),
    ),
  )('[W6] $name, $direction: C = 1/(3000/S − 20), or a named exception', ({ name, direction, wood }) => {
    const found = coefficientFromShrinkage(wood.shrinkage[direction].value)
    const agrees = found.toFixed(5) === wood.coefficient![direction].value.toFixed(5)
    expect(agrees).toBe(!EXCEPTIONS[name]?.includes(direction))
  })

  it('[W6] 23 domestic woods are compared', () => expect(domestic).toHaveLength(23))

  it.each([
    // Wood Handbook, chapter 13: sugar maple, flat, 9 in from 8 to 6 %
    {
      what: 'sugar maple',
      found: movement(9, acrossCoefficient(findWood('sugar maple'), 'flat'), 8, 6),
      wanted: -0.0635,
    },
    // a flooring association's table: mesquite, 5 in, three points
    { what: 'mesquite', found: movement(5, 0.00129, 6, 9), wanted: 0.019 },
    // cherry, 48 in, from 30 to 60 % at 20 °C: free, and held by MDF
    {
      what: 'free cherry',
      found: movement(48, acrossCoefficient(findWood('Prunus serotina'), 'flat'), 6.19, 11),
      wanted: 0.573,
    },
    { what: 'MDF', found: movement(48, boardFigures('MDF').movement.value, 6.19, 11), wanted: 0.069 },
  ])('[W6] $what moves by $wanted', ({ found, wanted }) => expect(Math.abs(found - wanted)).toBeLessThan(6e-4))

  it('[W6] shrinkage and coefficient agree about 10 %', () =>
    expect(movementByShrinkage(1000, 7.8, 10, 12)).toBeCloseTo(
      movement(1000, coefficientFromShrinkage(7.8), 10, 12),
      9,
    ))
})

describe('stiffness of leaves', () => {
  it.each([
    // E_T/E_L of table 5-1 x 1.10 x bending modulus of table 5-3a
    { name: 'black walnut', across: 714.56 },
    { name: 'sugar maple', across: 900.9 },
  ])('[W6] $name, flat cut: $across MPa across', ({ name, across }) =>
    expect(woodStiffness(findWood(name), 'flat').across).toBeCloseTo(across, 6),
  )

  it('[W6] a wood by its botanical name, in any case; an ambiguous or unknown one is not guessed', () => {
    expect(findWood('Juglans Nigra')?.name).toBe('walnut, black')
    expect(findWood('walnut')?.name).toBe('walnut, black')
    expect(findWood('maple')).toBeNull()
    expect(findWood('')).toBeNull()
    expect(findWood('plasterboard')).toBeNull()
  })
})
