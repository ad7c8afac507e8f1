import { ALONG, ACROSS, leafLayer } from '../../core/press/usual-pressing'
import { BOARD_NAMES, BIRCH } from '../../core/press/boards'
import type { BoardName, Grain, Layer } from '../../core/press/pressing'
import { findWood, WOODS } from '../../core/press/woods'
import type { Cut } from '../../core/leaves/flitch'
import { MM_PER, type LengthUnit } from '../../core/units/unit'
import { showLength } from '../../core/units/show-length'

/** What a layer is, as one choice. */
export type Stuff = 'veneer' | 'solid' | 'glue line' | BoardName

const NAMES: Readonly<Record<Stuff, string>> = {
  veneer: 'veneer',
  solid: 'solid wood',
  MDF: 'MDF',
  particleboard: 'particleboard',
  'birch plywood': 'birch plywood',
  'light plywood': 'light plywood',
  'glue line': 'a thick glue line',
}

export const STUFFS = (['veneer', ...BOARD_NAMES, 'solid', 'glue line'] as const).map((value) => ({
  value,
  name: NAMES[value],
}))

export const stuffOf = (layer: Layer): Stuff => (layer.kind === 'board' ? layer.board : layer.kind)

const USUAL_THICKNESS: Readonly<Record<Stuff, number>> = {
  veneer: 0.6,
  solid: 20,
  MDF: 18,
  particleboard: 19,
  'birch plywood': 18,
  'light plywood': 5,
  'glue line': 0.1,
}

/** The same place in the build-up, of other stuff: what both have is kept. `species` is that of the part's leaves. */
export function ofStuff(layer: Layer, stuff: Stuff, species: string): Layer {
  const thickness = USUAL_THICKNESS[stuff]
  if (stuff === 'glue line') return { kind: 'glue line', thickness }
  if (stuff === 'veneer' || stuff === 'solid') {
    const wood = layer.kind === 'veneer' || layer.kind === 'solid' ? layer : woodOf(species)
    return { ...wood, kind: stuff, thickness }
  }
  const grain = layer.kind === 'glue line' || layer.grain === 'no single grain' ? ALONG : layer.grain
  const moisture = layer.kind === 'glue line' ? null : layer.moisture
  return { kind: 'board', board: stuff, thickness, grain, plies: null, moisture }
}

const woodOf = (species: string): Extract<Layer, { kind: 'veneer' | 'solid' }> => ({
  kind: 'veneer',
  species,
  cut: 'flat',
  thickness: USUAL_THICKNESS.veneer,
  grain: ALONG,
  moisture: null,
})

/** The ways of cutting leaves from a log; solid wood is sawn in the same. */
export const CUTS: readonly { readonly value: Cut; readonly name: string }[] = [
  { value: 'flat', name: 'flat' },
  { value: 'quarter', name: 'quarter' },
  { value: 'rift', name: 'rift' },
  { value: 'half round', name: 'half round' },
  { value: 'rotary', name: 'rotary' },
  { value: 'sawn', name: 'sawn' },
]

/** How the grain lies, as one choice. */
export type GrainWay = 'along' | 'across' | 'askew' | 'every way'

export const GRAIN_WAYS: readonly { readonly value: GrainWay; readonly name: string }[] = [
  { value: 'along', name: 'along the length' },
  { value: 'across', name: 'across' },
  { value: 'askew', name: 'at an angle' },
  { value: 'every way', name: 'every way' },
]

export function grainWay(grain: Grain): GrainWay {
  if (grain === 'no single grain') return 'every way'
  const turned = ((grain % 180) + 180) % 180
  return turned === ALONG ? 'along' : turned === ACROSS ? 'across' : 'askew'
}

export const ofWay = (way: GrainWay): Grain =>
  way === 'along' ? ALONG : way === 'across' ? ACROSS : way === 'askew' ? 45 : 'no single grain'

/** Nominal thicknesses that are sold, mm: leaves by parts of an inch and by mm, boards by their makers' tables. */
const NOMINAL: Readonly<Record<Stuff, readonly number[]>> = {
  veneer: [0.5, 0.6, MM_PER.in / 42, 0.7, MM_PER.in / 28, 1, 1.5, MM_PER.in / 16, 2.5],
  solid: [],
  MDF: [3, 4, 6, 8, 9, 10, 12, 15, 16, 18, 19, 22, 25, 30],
  particleboard: [13, 16, 19, 22, 25],
  'birch plywood': BIRCH.map(({ nominal }) => nominal),
  'light plywood': [3, 5, 5.2, 9, 12, 15, 18],
  'glue line': [],
}

const PARTS_OF_INCH = [42, 28, 16]

/** A nominal thickness as it is called and as it measures: `1/42 in, 0.6 mm`, `5 mm, 0.1969 in`. */
export function nominalName(thickness: number, unit: LengthUnit): string {
  const part = PARTS_OF_INCH.find((n) => Math.abs(MM_PER.in / n - thickness) < 1e-9)
  const called = part ? `1/${part} in` : showLength(thickness, 'mm', 'exact')
  if (!part && unit === 'mm') return called
  return `${called}, ${thicknessShown(thickness, part ? 'mm' : 'in')}`
}

export const nominalsOf = (stuff: Stuff): readonly number[] => NOMINAL[stuff]

/** A thickness as it is measured: to a hundredth of a mm, or in inches to a ten-thousandth where no fraction is true. */
export const thicknessShown = (thickness: number, unit: LengthUnit): string => showLength(thickness, unit, 'exact')

/** The woods of the tables, and the one that stands there where it is not among them. */
export const speciesChoices = (species: string) => [
  ...(findWood(species) ? [] : [{ value: species, name: species.trim() || 'not said' }]),
  ...WOODS.map(({ name }) => ({ value: name, name })),
]

/** The name under which a species stands among the choices. */
export const speciesChosen = (species: string): string => findWood(species)?.name ?? species

/** The front veneers, repeated behind the core; null where there is no core or nothing in front of it. */
export function backedAlike(layers: readonly Layer[]): readonly Layer[] | null {
  const isFacing = ({ kind }: Layer): boolean => kind === 'veneer' || kind === 'glue line'
  const first = layers.findIndex((layer) => !isFacing(layer))
  const last = layers.findLastIndex((layer) => !isFacing(layer))
  if (first <= 0) return null
  return [...layers.slice(0, last + 1), ...layers.slice(0, first).reverse()]
}

/** A cross-band under each of the two outer sheets. */
export function crossBanded(layers: readonly Layer[], species: string): readonly Layer[] | null {
  const last = layers.length - 1
  if (last < 2 || layers[0]!.kind !== 'veneer' || layers[last]!.kind !== 'veneer') return null
  const band = leafLayer(species, layers[0]!.thickness, ACROSS)
  return [layers[0]!, band, ...layers.slice(1, last), band, layers[last]!]
}
