import { describe, expect, it } from 'vitest'
import { readNumber, showNumber, type NumberKind } from '../units/read-number'
import {
  altitudeKind,
  DAYS_KIND,
  HOURS_KIND,
  HUMIDITY_KIND,
  pressureKind,
  spreadKind,
  suctionKind,
  temperatureKind,
} from './number-kinds'

// [W40] A number of the press is shown in the units of the job, and read in any that its gauges and sheets use.

const anything = { least: -1e6, most: 1e6 }

describe('[W40] the numbers of the press', () => {
  it.each<[string, NumberKind, number]>([
    ['21', temperatureKind('mm'), 21],
    ['70', temperatureKind('in'), 21.1111],
    ['21 c', temperatureKind('in'), 21],
    ['45', HUMIDITY_KIND, 0.45],
    ['45 % RH', HUMIDITY_KIND, 0.45],
    ['24', suctionKind('in'), 24],
    ['24"', suctionKind('mm'), 24],
    // 1 inHg = 3.386389 kPa
    ['81.2733', suctionKind('mm'), 24],
    ['813 mbar', suctionKind('in'), 24.0079],
    ['0.8127 bar', suctionKind('mm'), 23.999],
    ['5280 ft', altitudeKind('mm'), 1609.344],
    // 1 lb/1000 ft² = 4.8824 g/m²
    ['35', spreadKind('in'), 170.885],
    ['170 gsm', spreadKind('in'), 170],
    ['150 psi', pressureKind('mm'), 1.03421],
    ['30 min', HOURS_KIND, 0.5],
    ['36 h', DAYS_KIND, 1.5],
  ])('%s', (typed, kind, kept) => {
    const read = readNumber(typed, kind, anything)
    expect(read.ok && read.value).toBeCloseTo(kept, 2)
  })

  it('is shown in the units of the job', () => {
    expect(showNumber(21, temperatureKind('mm'))).toBe('21 °C')
    expect(showNumber(21, temperatureKind('in'))).toBe('70 °F')
    expect(showNumber(24, suctionKind('mm'))).toBe('81.3 kPa')
    expect(showNumber(24, suctionKind('in'))).toBe('24 inHg')
    expect(showNumber(0.45, HUMIDITY_KIND)).toBe('45 %')
    expect(showNumber(170, spreadKind('in'))).toBe('35 lb/1000 ft²')
  })
})
