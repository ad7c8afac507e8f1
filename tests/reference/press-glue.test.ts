/**
 * [W9] Glue is the sum over this pressing's glue lines of area x spread x (1 + loss), in whatever unit.
 * [W10] Figures of a glue are those of the project's table unless the data sheet has them.
 * Thicknesses are checked here too, since their inch names are the trade's.
 */
import { describe, expect, it } from 'vitest'
import { glueInUse, pressHoursAt } from '../../src/core/press/glues'
import { glueNeed, waterIntoLeaf } from '../../src/core/press/glue-amount'
import { celsius, fahrenheit } from '../../src/core/press/measures'
import { NO_DATA_SHEET } from '../../src/core/press/pressing'
import { besideFraction } from '../../src/core/press/thickness'

const INCH = 25.4
const PVA = glueInUse('PVA', { ...NO_DATA_SHEET, spread: 170 })
const resin = glueInUse('plastic resin, powder', NO_DATA_SHEET)

describe('amounts', () => {
  it('[W9] both faces of 24 x 48 in at 170 g/m²: 1.4864 m², 252.7 g', () => {
    const need = glueNeed([0, 1], 24 * 48 * INCH ** 2, PVA, 0)
    expect(need.area).toBeCloseTo(1.4864, 4)
    expect(need.grams).toBeCloseTo(252.7, 1)
  })

  it('[W9] 6 mil wet: 267 ft² to a US gallon of 3.785 411 784 l', () => {
    // 6 thousandths of an inch over 267 ft²
    const litres = 0.006 * INCH * 267 * 0.09290304
    expect(litres).toBeCloseTo(3.785, 1)
    // and in weight, by a density of 1.1: about 168 g/m², the 160 to 170 that is seen
    expect(0.006 * INCH * 1000 * PVA.density.value).toBeCloseTo(167.6, 1)
  })

  it('[W9] a loss of a tenth is put on top, and a mix of 57.5 parts of water to 100 of powder split', () => {
    const need = glueNeed([0], 1e6, resin, 0.1)
    expect(need.grams).toBeCloseTo(187, 6)
    expect(need.mix!.first + need.mix!.second).toBeCloseTo(187, 6)
    expect(need.mix!.second / need.mix!.first).toBeCloseTo(0.575, 9)
    expect(need.millilitres).toBeCloseTo(187 / 1.25, 6)
    expect(need.fluidOunces * 29.5735295625).toBeCloseTo(need.millilitres, 9)
    expect(need.pounds * 453.59237).toBeCloseTo(187, 6)
  })

  it('[W9] half the water of 170 g/m², half of which is water, moistens a 0.6 mm leaf of 600 kg/m³ by about 12 points', () =>
    expect(waterIntoLeaf(170, 0.5, { thickness: 0.6 }, 600)).toBeCloseTo(11.8, 1))
})

describe('figures', () => {
  it.each([
    // plastic resin: 70 °F in one text, 72 and 75 in others; a label, quoted: 13 h at 70 °F, 3½ h at 100 °F
    { at: 70, hours: 13 },
    { at: 100, hours: 3.5 },
    { at: 85, hours: Math.sqrt(13 * 3.5) },
  ])('[W10] plastic resin at $at °F (seen): $hours h', ({ at, hours }) =>
    expect(pressHoursAt(resin, celsius(at))).toBeCloseTo(hours, 2),
  )

  it('[W10] plastic resin needs 70 °F and won’t set below it', () => {
    expect(Math.round(fahrenheit(resin.leastTemperature.value))).toBe(70)
    expect(pressHoursAt(resin, celsius(65))).toBeNull()
  })

  it('[W10] epoxy stays in the press for about 24 h (common practice)', () => {
    const { pressHours } = glueInUse('epoxy', NO_DATA_SHEET)
    expect(pressHours).toEqual({ value: 24, from: 'common practice' })
  })

  it('[W10] PVA chalks below 50 to 55 °F (seen): the upper is kept', () =>
    expect(Math.round(fahrenheit(PVA.leastTemperature.value))).toBe(55))

  it('[W10] the data sheet goes before the table, figure by figure', () => {
    const own = glueInUse('epoxy', { ...NO_DATA_SHEET, openMinutes: 40, ratio: [100, 45] })
    expect(own.openMinutes).toEqual({ value: 40, from: 'data sheet' })
    expect(own.openAtMost).toBe(40)
    expect(own.ratio).toBe(0.45)
    expect(own.spread.from).toBe('common practice')
  })
})

describe('thicknesses in inches', () => {
  it.each([
    { name: '1/42 in', mm: INCH / 42, wanted: 0.60476 },
    { name: '18 mm in inches', mm: 18 / INCH, wanted: 0.70866 },
    { name: '5 mm: 197 thousandths', mm: 5 / INCH, wanted: 0.19685 },
    { name: '5.2 mm', mm: 5.2 / INCH, wanted: 0.2047 },
  ])('[W10] $name: $wanted', ({ mm, wanted }) => expect(Math.abs(mm - wanted)).toBeLessThan(3e-5))

  it.each([
    { layers: 'two 5 mm boards and two 0.6 mm faces', mm: 11.2, words: 'a hair over 7/16 in' },
    { layers: 'with a leaf between them', mm: 11.8, words: 'a shade under 15/32 in' },
    { layers: '19.05 mm', mm: 19.05, words: '3/4 in' },
  ])('[W11] $layers: $words', ({ mm, words }) => expect(besideFraction(mm)).toBe(words))
})
