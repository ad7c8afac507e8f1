import { hasPlies } from './boards'
import { showLength } from '../units/show-length'
import { curveTrouble, type SayLength } from './curved-work'
import type { Climate, Curve, DataSheet, GlueName, Layer, Pressing, PressRoom } from './pressing'
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
  plies: { least: 3, most: 31, unit: '' },
  layers: { least: 1, most: 40, unit: '' },
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
  clamps: { least: 0, most: 500, unit: '' },
  hands: { least: 1, most: 12, unit: '' },
  curve: { least: 0, most: 20_000, unit: 'mm' },
  species: { least: 0, most: 200, unit: 'characters' },
} as const satisfies Record<string, Range>

type Outside = (what: string, value: number, range: Range) => string[]

/** A sentence for a number that lies outside its range; lengths are told as `say` tells them. */
const outsideIn =
  (say: SayLength): Outside =>
  (what, value, { least, most, unit }) => {
    const words = (n: number): string => (unit === 'mm' ? say(n) : `${n}${unit && ` ${unit}`}`)
    const from = unit === 'mm' ? say(least) : String(least)
    return value >= least && value <= most ? [] : [`${what} is ${words(value)}; it must be ${from} to ${words(most)}.`]
  }

const inMillimetres: SayLength = (length) => showLength(length, 'mm', 'exact')

/** What can't be in a part's pressing, one sentence for each; empty when all is well. */
export function pressingTroubles(pressing: Pressing, say: SayLength = inMillimetres): string[] {
  const { layers, wantedThickness, edges, curve } = pressing
  const ranges = PRESS_RANGES
  const outside = outsideIn(say)
  return [
    ...outside('The number of layers', layers.length, ranges.layers),
    ...layers.flatMap((layer, i) => layerTroubles(layer, `Layer ${i + 1}`, outside)),
    ...gluedTroubles(pressing),
    ...(wantedThickness === null ? [] : outside('The thickness wanted', wantedThickness, ranges.thickness)),
    ...Object.entries(edges).flatMap(([side, work]) =>
      work.edge === 'bare'
        ? []
        : outside(`The thickness of what goes on the ${side} edge`, work.thickness, ranges.edge),
    ),
    ...(curve === null ? [] : curveTroubles(curve, layers, outside, say)),
  ]
}

/** Glue lines are counted between the sheets; what is no such place, or stands twice, says nothing. */
function gluedTroubles({ layers, gluedBefore }: Pressing): string[] {
  const lines = layers.filter(({ kind }) => kind !== 'glue line').length - 1
  const wrong = gluedBefore.find(
    (line, i) => !(Number.isInteger(line) && line >= 0 && line < lines) || gluedBefore.indexOf(line) !== i,
  )
  return wrong === undefined
    ? []
    : [
        `The glue line made before is number ${wrong}; there are ${Math.max(0, lines)}, counted from 0, each named once.`,
      ]
}

function curveTroubles(curve: Curve, layers: readonly Layer[], outside: Outside, say: SayLength): string[] {
  const bend = curve.by === 'rise' ? curve.rise : curve.radius
  const far = [
    ...outside('The chord', curve.chord, PRESS_RANGES.curve),
    ...outside(`The ${curve.by}`, bend, PRESS_RANGES.curve),
  ]
  return far.length > 0 ? far : [curveTrouble(curve, layers, say)].filter((trouble) => trouble !== null)
}

function layerTroubles(layer: Layer, name: string, outside: Outside): string[] {
  const ranges = PRESS_RANGES
  if (layer.kind === 'glue line') return outside(`${name}’s thickness`, layer.thickness, ranges.glueLine)
  return [
    ...outside(`${name}’s thickness`, layer.thickness, ranges.thickness),
    ...('species' in layer ? outside(`${name}’s name of the wood`, layer.species.length, ranges.species) : []),
    ...(layer.moisture === null ? [] : outside(`${name}’s moisture`, layer.moisture, ranges.moisture)),
    ...(layer.grain === 'no single grain' ? [] : outside(`${name}’s grain`, layer.grain, ranges.grain)),
    ...(layer.kind === 'board' && layer.plies !== null ? plyTroubles(layer, layer.plies, name, outside) : []),
  ]
}

function plyTroubles(
  { board }: Extract<Layer, { kind: 'board' }>,
  plies: number,
  name: string,
  outside: Outside,
): string[] {
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

function sheetTroubles(glue: GlueName, sheet: DataSheet, outside: Outside): string[] {
  const keys = Object.keys(SHEET_NAMES) as (keyof typeof SHEET_NAMES)[]
  const ratio = sheet.ratio?.some((part) => !(part > 0 && part <= 1000))
    ? [
        `The mix of ${sheet.ratio.join(' to ')} from the data sheet of ${glue} can’t be: both parts must be above 0, at most 1000.`,
      ]
    : []
  return [
    ...keys.flatMap((key) => {
      const value = sheet[key]
      return value === null
        ? []
        : outside(`${SHEET_NAMES[key]} from the data sheet of ${glue}`, value, PRESS_RANGES[key])
    }),
    ...ratio,
  ]
}

/** The same for what the shop has. */
export function roomTroubles(room: PressRoom, say: SayLength = inMillimetres): string[] {
  const ranges = PRESS_RANGES
  const outside = outsideIn(say)
  const size = (what: string, { width, length }: { width: number; length: number }): string[] => [
    ...outside(`The ${what}’s width`, width, ranges.size),
    ...outside(`The ${what}’s length`, length, ranges.size),
  ]
  return [
    ...climateTroubles(room.gluing, 'at gluing', outside),
    ...climateTroubles(room.driest, 'in the driest season', outside),
    ...climateTroubles(room.dampest, 'in the dampest season', outside),
    ...outside('The temperature of the cores', room.coreTemperature, ranges.temperature),
    ...(Object.entries(room.dataSheets) as [GlueName, DataSheet][]).flatMap(([glue, sheet]) =>
      sheetTroubles(glue, sheet, outside),
    ),
    ...[suctionTrouble(room.suction)].filter((trouble) => trouble !== null),
    ...size('platen', room.platen),
    ...size('bag', room.bag),
    ...wholeTroubles('The number of people at the press', room.hands, ranges.hands, outside),
    ...Object.entries(room.clamps).flatMap(([name, count]) =>
      wholeTroubles(`The number of ${name} clamps`, count, ranges.clamps, outside),
    ),
  ]
}

const wholeTroubles = (what: string, value: number, range: Range, outside: Outside): string[] =>
  Number.isFinite(value) && !Number.isInteger(value)
    ? [`${what} is ${value}; it must be a whole number.`]
    : outside(what, value, range)

const climateTroubles = ({ temperature, humidity }: Climate, when: string, outside: Outside): string[] => [
  ...outside(`The temperature ${when}`, temperature, PRESS_RANGES.temperature),
  ...outside(`The humidity ${when}`, humidity, PRESS_RANGES.humidity),
]
