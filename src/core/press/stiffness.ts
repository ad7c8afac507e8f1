import type { Cut } from '../leaves/flitch'
import type { BoardName } from './pressing'
import { memory, seen, type Sourced } from './provenance'
import { boardFigures } from './boards'
import { acrossFigure, acrossIs, type Wood } from './woods'

/** Stiffness in the plane of a sheet, MPa: along and across its grain; `poisson` is the shortening across when pulled along. */
export interface Stiffness {
  readonly along: number
  readonly across: number
  readonly shear: number
  readonly poisson: number
}

/** Ratios to the modulus along the grain, Wood Handbook table 5-1, about 12 % moisture; null: not in the table. */
export interface ElasticRatios {
  readonly tangential: Sourced
  readonly radial: Sourced
  readonly shearRadial: Sourced
  readonly shearTangential: Sourced | null
}

const all = (
  of: (value: number) => Sourced,
  values: readonly [number, number, number, number | null],
): ElasticRatios => ({
  tangential: of(values[0]),
  radial: of(values[1]),
  shearRadial: of(values[2]),
  shearTangential: values[3] === null ? null : of(values[3]),
})

/** By botanical name; in the rows of the oaks the first two have been seen, the shear from memory. */
export const RATIOS: Readonly<Record<string, ElasticRatios>> = {
  'Fraxinus americana': all(memory, [0.08, 0.125, 0.109, 0.077]),
  'Tilia americana': all(memory, [0.027, 0.066, 0.056, 0.046]),
  'Betula alleghaniensis': all(memory, [0.05, 0.078, 0.074, 0.068]),
  'Prunus serotina': all(memory, [0.086, 0.197, 0.147, 0.097]),
  'Khaya spp.': all(memory, [0.05, 0.111, 0.088, 0.059]),
  'Swietenia macrophylla': all(memory, [0.064, 0.107, 0.066, 0.086]),
  'Acer rubrum': all(memory, [0.067, 0.14, 0.133, 0.074]),
  'Acer saccharum': all(seen, [0.065, 0.132, 0.111, 0.063]),
  'Quercus rubra': { ...all(memory, [0.082, 0.154, 0.089, 0.081]), tangential: seen(0.082), radial: seen(0.154) },
  'Quercus alba': { ...all(memory, [0.072, 0.163, 0.086, null]), tangential: seen(0.072), radial: seen(0.163) },
  'Liquidambar styraciflua': all(memory, [0.05, 0.115, 0.089, 0.061]),
  'Juglans nigra': all(memory, [0.056, 0.106, 0.085, 0.062]),
  'Liriodendron tulipifera': all(memory, [0.043, 0.092, 0.075, 0.069]),
}

/** The modulus along the grain is this much above the bending one, which contains some shear; note to table 5-1, seen. */
export const TRUE_ALONG = seen(1.1)

/** Sugar maple's ratios, seen in a digest of the Wood Handbook; used for every species, the answers hardly feel them. */
export const POISSON = { radial: seen(0.424), tangential: seen(0.476) }

/** A hardwood of which nothing is known: a middling furniture wood. */
export const AVERAGE_BENDING = memory(11_000)

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** The ratios of a species; the mean of the table's hardwoods where it has none. */
export function ratiosOf(wood: Wood | null): {
  tangential: number
  radial: number
  shearTangential: number
  shearRadial: number
} {
  const row = wood && RATIOS[wood.botanical]
  const rows = Object.values(RATIOS)
  const average = (of: (ratios: ElasticRatios) => Sourced | null): number =>
    mean(rows.flatMap((ratios) => of(ratios)?.value ?? []))
  const figure = (of: (ratios: ElasticRatios) => Sourced | null): number => (row && of(row)?.value) || average(of)
  return {
    tangential: figure((ratios) => ratios.tangential),
    radial: figure((ratios) => ratios.radial),
    shearTangential: figure((ratios) => ratios.shearTangential),
    shearRadial: figure((ratios) => ratios.shearRadial),
  }
}

/** Of a leaf or a board of solid wood; null stands for a wood that is not in the table. */
export function woodStiffness(wood: Wood | null, cut: Cut): Stiffness {
  const ratios = ratiosOf(wood)
  const along = TRUE_ALONG.value * (wood ?? { bending: AVERAGE_BENDING }).bending.value
  return {
    along,
    across: along * acrossFigure(cut, ratios.radial, ratios.tangential),
    shear: along * acrossFigure(cut, ratios.shearRadial, ratios.shearTangential),
    poisson: acrossIs(cut) === 'radial' ? POISSON.radial.value : POISSON.tangential.value,
  }
}

/** Of a whole board, along and across the grain of its outer ply. */
export function boardStiffness(name: BoardName): Stiffness {
  const { along, across, poisson, shear } = boardFigures(name)
  return { along: along.value, across: across.value, poisson: poisson.value, shear: shear.value }
}
