/**
 * [W7] The bag presses with what the gauge shows; a pump reaches its share of the local air.
 * [W8] Force is pressure times area.
 */
import { describe, expect, it } from 'vitest'
import { clampsOf, padSpacing, pressureAtHand } from '../../src/core/press/cauls'
import {
  gramsFromLbPerThousand,
  inHgFromKpa,
  kpaFromInHg,
  KPA_PER_PSI,
  lbfFromNewton,
  NEWTON_PER_LBF,
  psiFromKpa,
} from '../../src/core/press/measures'
import { airAtGeopotential, airPressure, bagForce, bagPressure, forceOn } from '../../src/core/press/vacuum'

// U.S. Standard Atmosphere, 1976: kPa against geopotential and geometric height in m, worked out from its constants;
// the printed tables' 500, 1000, 2000 and 3000 m (geometric: 95 461, 89 876, 79 501, 70 121 Pa) are from memory
const ATMOSPHERE = [
  { metres: 0, geopotential: 101.325, geometric: 101.325 },
  { metres: 500, geopotential: 95.4608, geometric: 95.4613 },
  { metres: 1000, geopotential: 89.8746, geometric: 89.8763 },
  { metres: 1500, geopotential: 84.556, geometric: 84.5597 },
  { metres: 2000, geopotential: 79.4952, geometric: 79.5014 },
  { metres: 2500, geopotential: 74.6825, geometric: 74.6918 },
  { metres: 3000, geopotential: 70.1085, geometric: 70.1212 },
]

// inches of mercury, psi, kPa and lb/ft²: 1 inHg = 3.38639 kPa = 0.49115 psi
const GAUGES = [
  { inHg: 10, psi: 4.91, kpa: 33.86, perSquareFoot: 707 },
  { inHg: 15, psi: 7.37, kpa: 50.8, perSquareFoot: 1061 },
  { inHg: 20, psi: 9.82, kpa: 67.73, perSquareFoot: 1415 },
  { inHg: 24, psi: 11.79, kpa: 81.27, perSquareFoot: 1697 },
  { inHg: 25, psi: 12.28, kpa: 84.66, perSquareFoot: 1768 },
  { inHg: 26, psi: 12.77, kpa: 88.05, perSquareFoot: 1839 },
  { inHg: 29, psi: 14.24, kpa: 98.21, perSquareFoot: 2051 },
]

const INCH = 25.4
const SQUARE_FOOT = (12 * INCH) ** 2

describe('air', () => {
  it.each(ATMOSPHERE)('[W7] at $metres m: $geometric kPa', ({ metres, geopotential, geometric }) => {
    expect(Math.abs(airAtGeopotential(metres) - geopotential)).toBeLessThan(6e-5)
    expect(Math.abs(airPressure(metres) - geometric)).toBeLessThan(6e-5)
  })

  it.each([
    // an engineering reference: 12.228 psi at 5 000 ft, 10.108 at 10 000
    { feet: 5000, psi: 12.228 },
    { feet: 10000, psi: 10.108 },
  ])('[W7] at $feet ft: $psi psi', ({ feet, psi }) =>
    expect(psiFromKpa(airPressure(feet * 0.3048))).toBeCloseTo(psi, 3),
  )
})

describe('the bag', () => {
  it.each(GAUGES)('[W7] $inHg inHg: $psi psi, $kpa kPa, $perSquareFoot lb/ft²', ({ inHg, psi, kpa, perSquareFoot }) => {
    const force = bagForce({ by: 'gauge', inHg }, SQUARE_FOOT)
    expect(force.psi).toBeCloseTo(psi, 2)
    expect(force.kpa).toBeCloseTo(kpa, 2)
    expect(Math.round(force.lbf)).toBe(perSquareFoot)
  })

  it.each([
    { metres: 0, inHg: 25 },
    { metres: 500, inHg: 23.55 },
    { metres: 1000, inHg: 22.17 },
    { metres: 1500, inHg: 20.86 },
    { metres: 2000, inHg: 19.62 },
    { metres: 3000, inHg: 17.3 },
  ])('[W7] a pump that reaches 25 inHg at the sea reaches $inHg at $metres m', ({ metres, inHg }) => {
    const reached = inHgFromKpa(bagPressure({ by: 'pump', inHg: 25, altitude: metres }))
    expect(Math.abs(reached - inHg)).toBeLessThan(0.011)
    expect(kpaFromInHg(reached)).toBeLessThan(airPressure(metres))
  })

  it('[W8] 25 inHg on 24 x 48 in: 14 145 lbf; on 4 x 8 ft: 56 580', () => {
    expect(Math.round(bagForce({ by: 'gauge', inHg: 25 }, 24 * 48 * INCH ** 2).lbf)).toBe(14145)
    expect(Math.abs(bagForce({ by: 'gauge', inHg: 25 }, 32 * SQUARE_FOOT).lbf - 56580)).toBeLessThan(5)
  })
})

describe('clamps', () => {
  const area = 24 * 48 * INCH ** 2
  it.each([
    // 600 lbf for an F-clamp: a shop calculator's page; the rest is arithmetic
    { psi: 15, lbf: 17280, clamps: 29 },
    { psi: 100, lbf: 115200, clamps: 192 },
  ])('[W8] $psi psi on 24 x 48 in: $lbf lbf, $clamps clamps of 600 lbf', ({ psi, lbf, clamps }) => {
    const newton = forceOn(psi * KPA_PER_PSI, area)
    expect(lbfFromNewton(newton)).toBeCloseTo(lbf, 6)
    expect(clampsOf(newton, 600 * NEWTON_PER_LBF)).toBe(clamps)
  })

  it('[W8] 0.6 x 1.2 m: 72 kN at 0.1 MPa, 504 kN at 0.7', () => {
    expect(forceOn(100, 600 * 1200)).toBeCloseTo(72_000, 6)
    expect(forceOn(700, 600 * 1200)).toBeCloseTo(504_000, 6)
  })

  it('[W8] 45 degrees (common practice): pad 1½ in under 1½ in of caul reaches 4½ in; under 2 in, 5½', () => {
    expect(padSpacing(1.5, 1.5)).toBe(4.5)
    expect(padSpacing(1.5, 2)).toBe(5.5)
  })

  it('[W8] twelve F-clamps of 650 lbf on 600 x 560 mm give 103 kPa', () => {
    const clamps = { 'light bar': 0, 'F-clamp': 12, 'parallel-jaw': 0, pipe: 0, 'heavy C-clamp': 0 }
    expect(pressureAtHand(clamps, 600 * 560)).toBeCloseTo((12 * 650 * 4.4482216152605) / 336, 6)
  })
})

describe('spreads', () => {
  it.each([
    { lb: 20, grams: 97.6 },
    { lb: 25, grams: 122.1 },
    { lb: 30, grams: 146.5 },
    { lb: 35, grams: 170.9 },
    { lb: 40, grams: 195.3 },
    { lb: 45, grams: 219.7 },
    { lb: 50, grams: 244.1 },
    { lb: 60, grams: 292.9 },
  ])('[W9] $lb lb/1000 ft² are $grams g/m²', ({ lb, grams }) =>
    expect(gramsFromLbPerThousand(lb)).toBeCloseTo(grams, 1),
  )
})
