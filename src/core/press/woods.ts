import type { Cut } from '../leaves/flitch'
import { checked, memory, seen, type Sourced } from './provenance'

/**
 * Wood by species. Shrinkage green to ovendry, %, by the Wood Handbook (FPL-GTR-190, 2010) tables 4-3 and 4-4; change
 * per 1 % of moisture between 6 and 14 % by its table 13-5; bending modulus at 12 %, MPa, table 5-3a; specific gravity.
 */
export interface Wood {
  readonly name: string
  readonly botanical: string
  readonly shrinkage: Directions
  /** null: the table has none. */
  readonly coefficient: Directions | null
  readonly bending: Sourced
  readonly gravity: Sourced
  /** Resinous or oily: wipe, and choose a glue that takes it (common practice). */
  readonly oily: boolean
}

export interface Directions {
  readonly radial: Sourced
  readonly tangential: Sourced
}

type Cell = number | Sourced
const cell = (value: Cell): Sourced => (typeof value === 'number' ? seen(value) : value)
const pair = ([radial, tangential]: readonly [Cell, Cell]): Directions => ({
  radial: cell(radial),
  tangential: cell(tangential),
})

/** A bare number has been seen in its table; the bending modulus in MPa is from memory unless it says otherwise. */
function wood(
  name: string,
  botanical: string,
  shrinkage: readonly [Cell, Cell],
  coefficient: readonly [Cell, Cell] | null,
  bending: Cell,
  gravity: Cell,
  oily = false,
): Wood {
  return {
    name,
    botanical,
    shrinkage: pair(shrinkage),
    coefficient: coefficient && pair(coefficient),
    bending: typeof bending === 'number' ? memory(bending) : bending,
    gravity: cell(gravity),
    oily,
  }
}

const m = memory
const c = checked

export const WOODS: readonly Wood[] = [
  wood('alder, red', 'Alnus rubra', [4.4, 7.3], [0.00151, 0.00256], 9500, 0.41),
  wood('ash, white', 'Fraxinus americana', [4.9, 7.8], [0.00169, 0.00274], 12000, 0.6),
  wood('aspen, quaking', 'Populus tremuloides', [3.5, 6.7], [0.00119, 0.00234], 8100, 0.38),
  wood('basswood', 'Tilia americana', [6.6, 9.3], [0.0023, 0.0033], 10100, 0.37),
  wood('beech, American', 'Fagus grandifolia', [5.5, 11.9], [0.0019, 0.00431], 11900, 0.64),
  wood('birch, paper', 'Betula papyrifera', [6.3, 8.6], [0.00219, 0.00304], 11000, 0.55),
  wood('birch, yellow', 'Betula alleghaniensis', [7.3, 9.5], [0.00256, 0.00338], 13900, 0.62),
  wood('butternut', 'Juglans cinerea', [3.4, 6.4], [0.00116, 0.00223], 8100, 0.38),
  wood('cherry, black', 'Prunus serotina', [3.7, 7.1], [0.00126, 0.00248], 10300, 0.5),
  wood('chestnut, American', 'Castanea dentata', [3.4, 6.7], [0.00116, 0.00234], 8500, 0.43),
  wood('elm, American', 'Ulmus americana', [4.2, 9.5], [0.00144, 0.00338], 9200, 0.5),
  wood('hickory, pecan', 'Carya illinoinensis', [4.9, 8.9], [0.00169, 0.00315], 11900, 0.66),
  wood('maple, bigleaf', 'Acer macrophyllum', [c(3.7), c(7.1)], [0.00126, 0.00248], 10000, 0.48),
  wood('maple, red', 'Acer rubrum', [c(4), c(8.2)], [0.00137, 0.00289], 11300, 0.54),
  wood('maple, silver', 'Acer saccharinum', [c(3), c(7.2)], [0.00102, 0.00252], 7900, m(0.47)),
  wood('maple, sugar', 'Acer saccharum', [4.8, 9.9], [0.00165, 0.00353], seen(12600), 0.63),
  wood('oak, northern red', 'Quercus rubra', [m(4), m(8.6)], [0.00158, 0.00369], 12500, m(0.63)),
  wood('oak, white', 'Quercus alba', [5.6, 10.5], [0.0018, 0.00365], 12300, 0.68),
  wood('sassafras', 'Sassafras albidum', [4, 6.2], [0.00137, 0.00216], 7700, m(0.46)),
  wood('sweetgum', 'Liquidambar styraciflua', [5.3, 10.2], [0.00183, 0.00365], 11300, m(0.52)),
  wood('sycamore, American', 'Platanus occidentalis', [5, 8.4], [0.00172, 0.00296], 9800, m(0.49)),
  wood('walnut, black', 'Juglans nigra', [5.5, 7.8], [0.0019, 0.00274], 11600, 0.55),
  wood('yellow-poplar', 'Liriodendron tulipifera', [4.6, 8.2], [c(0.00158), c(0.00289)], 10900, 0.42),
  wood('mahogany, true', 'Swietenia macrophylla', [3, 4.1], [m(0.00172), m(0.00238)], 10300, m(0.49)),
  wood('mahogany, African', 'Khaya spp.', [2.5, 4.5], [m(0.00141), m(0.00201)], 9700, m(0.48)),
  wood('teak', 'Tectona grandis', [m(2.5), m(5.8)], [m(0.00101), 0.00186], 10700, m(0.57), true),
  wood('sapele', 'Entandrophragma cylindricum', [m(4.6), m(7.4)], null, 12500, m(0.62)),
]

/** Imported woods, whose two tables do not agree through the formula: their figures are uncertain. */
export const UNCERTAIN: readonly string[] = ['mahogany, true', 'mahogany, African', 'teak', 'sapele']

const words = (name: string): readonly string[] =>
  name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '')
    .sort()

/** Each wood with the ways in which its name may be written. */
const NAMED = WOODS.map((wood) => ({
  wood,
  ways: [wood.name, wood.botanical, `${wood.name} ${wood.botanical}`].map(words),
}))

/** Whether the letters of a typed name are those of the wood's common or botanical name, the words in any order. */
export function findWood(name: string): Wood | null {
  const wanted = words(name)
  if (wanted.length === 0) return null
  const exact = NAMED.find(({ ways }) => ways.some((known) => known.join() === wanted.join()))
  const some = NAMED.filter(({ ways }) => ways.some((known) => wanted.every((word) => known.includes(word))))
  // `maple` could be four of them with quite different figures: that is not knowing
  return exact?.wood ?? (some.length === 1 ? some[0]!.wood : null)
}

/** Which direction of the log lies across a leaf of this cut: tangential on flat-cut, radial on quartered. */
export type AcrossIs = 'tangential' | 'radial' | 'between'

export const acrossIs = (cut: Cut): AcrossIs =>
  cut === 'quarter' ? 'radial' : cut === 'rift' ? 'between' : 'tangential'

/** Of a pair of figures the one for this cut; halfway on rift. */
export function acrossFigure(cut: Cut, radial: number, tangential: number): number {
  const is = acrossIs(cut)
  return is === 'radial' ? radial : is === 'tangential' ? tangential : (radial + tangential) / 2
}
