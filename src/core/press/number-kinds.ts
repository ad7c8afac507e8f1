import type { NumberKind, NumberUnit } from '../units/read-number'
import type { LengthUnit } from '../units/unit'
import {
  celsius,
  fahrenheit,
  gramsFromLbPerThousand,
  inHgFromKpa,
  kpaFromInHg,
  KPA_PER_PSI,
  lbPerThousandFromGrams,
} from './measures'

/** The numbers of the press as a shop types them: by the job's unit of length, but any of their units is taken. */

const same = (value: number): number => value

const unit = (
  sign: string,
  places: number,
  written: readonly string[] = [],
  toKept: NumberUnit['toKept'] = same,
  toShown: NumberUnit['toShown'] = same,
): NumberUnit => ({ sign, places, written, toKept, toShown })

const times = (sign: string, places: number, factor: number, written: readonly string[] = []): NumberUnit =>
  unit(
    sign,
    places,
    written,
    (shown) => shown * factor,
    (kept) => kept / factor,
  )

const only = (sign: string, places: number, written: readonly string[] = []): NumberKind => ({
  units: [unit(sign, places, written)],
})

/** The metric unit first where the job is in mm, else the other first. */
const either =
  (metric: NumberUnit, customary: NumberUnit, ...more: readonly NumberUnit[]) =>
  (job: LengthUnit): NumberKind => ({
    units: job === 'mm' ? [metric, customary, ...more] : [customary, metric, ...more],
  })

/** Kept in °C. */
export const temperatureKind = either(
  unit('°C', 1, ['c', 'celsius']),
  unit('°F', 0, ['f', 'fahrenheit'], celsius, fahrenheit),
)

/** Relative, kept from 0 to 1. */
export const HUMIDITY_KIND: NumberKind = { units: [times('%', 0, 0.01, ['percent', 'rh', '%rh'])] }

/** A vacuum, kept in inches of mercury. */
export const suctionKind = either(
  unit('kPa', 1, [], inHgFromKpa, kpaFromInHg),
  unit('inHg', 1, ['"hg', 'in hg', '"', 'in']),
  unit(
    'mbar',
    0,
    ['hpa'],
    (mbar) => inHgFromKpa(mbar / 10),
    (inHg) => kpaFromInHg(inHg) * 10,
  ),
  unit(
    'bar',
    2,
    [],
    (bar) => inHgFromKpa(bar * 100),
    (inHg) => kpaFromInHg(inHg) / 100,
  ),
)

/** Above the sea, kept in metres. */
export const altitudeKind = either(unit('m', 0, ['metres', 'meters']), times('ft', 0, 0.3048, ["'", 'feet']))

/** Glue on one glue line, kept in g/m². */
export const spreadKind = either(
  unit('g/m²', 0, ['g/m2', 'gsm']),
  unit('lb/1000 ft²', 0, ['lb', 'lbs', 'lb/msgl'], gramsFromLbPerThousand, lbPerThousandFromGrams),
)

/** What a data sheet asks for, kept in MPa. */
export const pressureKind = either(
  unit('MPa', 2, ['n/mm2']),
  times('psi', 0, KPA_PER_PSI / 1000),
  times('kPa', 0, 1 / 1000),
  times('bar', 1, 0.1),
)

export const MOISTURE_KIND = only('%', 1, ['percent'])
export const MINUTES_KIND = only('min', 1, ['minutes', 'minute', 'm'])
export const HOURS_KIND: NumberKind = {
  units: [unit('h', 1, ['hours', 'hour', 'hrs', 'hr']), times('min', 0, 1 / 60, ['minutes', 'minute'])],
}
export const DAYS_KIND: NumberKind = {
  units: [unit('days', 1, ['d', 'day']), times('h', 0, 1 / 24, ['hours', 'hour'])],
}
export const DENSITY_KIND = only('g/ml', 2, ['g/cm3', 'kg/l'])
/** Parts by weight. */
export const PARTS_KIND = only('', 2)
