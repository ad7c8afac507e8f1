import { hasPlies } from './boards'
import { curveTrouble } from './curved-work'
import type { Climate, DataSheet, Layer, Pressing, PressRoom } from './pressing'
import { suctionTrouble } from './vacuum'

/** What a number here may be, ends included. */
interface Range {
  readonly least: number
  readonly most: number
  readonly unit: string
}

/** By what the number is, in the words of the sentence that refuses it. */
export const PRESS_RANGES = {
  thickness: { least: 0.01, most: 200, unit: 'mm' },
  glueLine: { least: 0, most: 2, unit: 'mm' },
  moisture: { least: 0, most: 30, unit: '%' },
  grain: { least: -360, most: 360, unit: '°' },
  plies: { least: 3, most: 31, unit: 'plies' },
  layers: { least: 1, most: 40, unit: 'layers' },
  edge: { least: 0.1, most: 100, unit: 'mm' },
  temperature: { least: -20, most: 60, unit: '°C' },
  humidity: { least: 0.01, most: 0.98, unit: '' },
  spread: { least: 20, most: 1000, unit: 'g/m²' },
  openMinutes: { least: 0.5, most: 600, unit: 'min' },
  pressHours: { least: 0, most: 240, unit: 'h' },
  leastTemperature: { least: -10, most: 60, unit: '°C' },
  cureDays: { least: 0, most: 60, unit: 'days' },
  density: { least: 0.5, most: 3, unit: 'g/ml' },
  pressure: { least: 0, most: 10, unit: 'MPa' },
  size: { least: 50, most: 20_000, unit: 'mm' },
  clamps: { least: 0, most: 500, unit: 'clamps' },
} as const satisfies Record<string, Range>

const outside = (what: string, value: number, { least, most, unit }: Range): string[] =>
  value >= least && value <= most
    ? []
    : [`${what} is ${value}${unit && ` ${unit}`}; it must be ${least} to ${most}${unit && ` ${unit}`}.`]

/** What can't be in a part's pressing, one sentence for each; empty when all is well. */
export function pressingTroubles({ layers, wantedThickness, dataSheet, edges, curve }: Pressing): string[] {
  const ranges = PRESS_RANGES
  return [
    ...outside('The number of layers', layers.length, ranges.layers),
    ...layers.flatMap((layer, i) => layerTroubles(layer, `Layer ${i + 1}`)),
    ...(wantedThickness === null ? [] : outside('The thickness wanted', wantedThickness, ranges.thickness)),
    ...sheetTroubles(dataSheet),
    ...Object.entries(edges).flatMap(([side, work]) =>
      work.edge === 'bare'
        ? []
        : outside(`The thickness of what goes on the ${side} edge`, work.thickness, ranges.edge),
    ),
    ...(curve === null ? [] : [curveTrouble(curve, layers, 'mm')].filter((trouble) => trouble !== null)),
  ]
}

function layerTroubles(layer: Layer, name: string): string[] {
  const ranges = PRESS_RANGES
  if (layer.kind === 'glue line') return outside(`${name}’s thickness`, layer.thickness, ranges.glueLine)
  return [
    ...outside(`${name}’s thickness`, layer.thickness, ranges.thickness),
    ...(layer.moisture === null ? [] : outside(`${name}’s moisture`, layer.moisture, ranges.moisture)),
    ...(layer.grain === 'no single grain' ? [] : outside(`${name}’s grain`, layer.grain, ranges.grain)),
    ...(layer.kind === 'board' && layer.plies !== null ? plyTroubles(layer, layer.plies, name) : []),
  ]
}

function plyTroubles({ board }: Extract<Layer, { kind: 'board' }>, plies: number, name: string): string[] {
  if (!hasPlies(board)) return [`${name} is ${board}, which has no plies: leave their number empty.`]
  if (!Number.isInteger(plies)) return [`${name} has ${plies} plies; it must be a whole number.`]
  return outside(`${name}’s number of plies`, plies, PRESS_RANGES.plies)
}

const SHEET_NAMES = {
  spread: 'The spread',
  openMinutes: 'The open time',
  pressHours: 'The press time',
  leastTemperature: 'The least temperature',
  cureDays: 'The time to stand',
  density: 'The density',
  pressure: 'The pressure',
} as const

function sheetTroubles(sheet: DataSheet): string[] {
  const keys = Object.keys(SHEET_NAMES) as (keyof typeof SHEET_NAMES)[]
  const ratio = sheet.ratio?.some((part) => !(part > 0 && part <= 1000))
    ? [`The mix of ${sheet.ratio.join(' to ')} can’t be: both parts must be above 0, at most 1000.`]
    : []
  return [
    ...keys.flatMap((key) => {
      const value = sheet[key]
      return value === null ? [] : outside(`${SHEET_NAMES[key]} from the data sheet`, value, PRESS_RANGES[key])
    }),
    ...ratio,
  ]
}

/** The same for what the shop has. */
export function roomTroubles(room: PressRoom): string[] {
  const ranges = PRESS_RANGES
  const size = (what: string, { width, length }: { width: number; length: number }): string[] => [
    ...outside(`The ${what}’s width`, width, ranges.size),
    ...outside(`The ${what}’s length`, length, ranges.size),
  ]
  return [
    ...climateTroubles(room.gluing, 'at gluing'),
    ...climateTroubles(room.driest, 'in the driest season'),
    ...climateTroubles(room.dampest, 'in the dampest season'),
    ...outside('The temperature of the cores', room.coreTemperature, ranges.temperature),
    ...[suctionTrouble(room.suction)].filter((trouble) => trouble !== null),
    ...size('platen', room.platen),
    ...size('bag', room.bag),
    ...Object.entries(room.clamps).flatMap(([name, count]) =>
      outside(`The number of ${name} clamps`, count, ranges.clamps),
    ),
  ]
}

const climateTroubles = ({ temperature, humidity }: Climate, when: string): string[] => [
  ...outside(`The temperature ${when}`, temperature, PRESS_RANGES.temperature),
  ...outside(`The humidity ${when}`, humidity, PRESS_RANGES.humidity),
]
