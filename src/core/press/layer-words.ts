import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { Grain, Layer } from './pressing'
import { findWood } from './woods'

/** What a layer is called in a sentence, by its place: `the face`, `the backer`, `the MDF`. */
export function layerName(layers: readonly Layer[], place: number): string {
  const layer = layers[place]!
  if (layer.kind === 'board') return `the ${layer.board}`
  if (layer.kind === 'glue line') return 'the glue line'
  if (layer.kind === 'solid') return `the solid ${layer.species}`
  if (layers.length === 1) return 'the leaf'
  const before = layers.slice(0, place).some(isCore)
  const behind = layers.slice(place + 1).some(isCore)
  if (before && behind) return 'the sheet between the boards'
  const front = before === behind ? place < layers.length / 2 : behind
  if (place === 0 || place === layers.length - 1) return front ? 'the face' : 'the backer'
  return front ? 'the cross-band under the face' : 'the cross-band under the backer'
}

const isCore = ({ kind }: Layer): boolean => kind === 'board' || kind === 'solid'

/** A layer as a line of a list: what, how thick, how it lies. */
export function layerLine(layer: Layer, unit: LengthUnit): string {
  const thick = showLength(layer.thickness, unit, 'exact')
  if (layer.kind === 'glue line') return `glue line, ${thick}`
  if (layer.kind === 'board') {
    const grain = layer.board.includes('plywood') ? `, outer plies ${grainWords(layer.grain)}` : ''
    return `${layer.board}, ${thick}${grain}`
  }
  const name = woodName(layer.species)
  const what = layer.kind === 'solid' ? `solid ${name}` : `${name}, ${layer.cut} cut`
  return `${what}, ${thick}, ${grainWords(layer.grain)}`
}

/** A wood as it is spoken of, `black walnut`, where the tables list it as `walnut, black`. */
export function woodName(species: string): string {
  const listed = findWood(species)?.name ?? (species.trim() || 'unnamed wood')
  const [kind, of] = listed.split(', ')
  return kind && of ? `${of} ${kind}` : listed
}

/** How a grain lies on the panel. */
export function grainWords(grain: Grain): string {
  if (grain === 'no single grain') return 'grain every way'
  const turned = ((grain % 180) + 180) % 180
  if (turned === 90) return 'grain along the length'
  if (turned === 0) return 'grain across'
  return `grain at ${turned}° to the width`
}

/** The angle between two grains, 0 to 90 degrees. */
export function grainsApart(a: number, b: number): number {
  const apart = Math.abs((((a - b) % 180) + 180) % 180)
  return Math.min(apart, 180 - apart)
}
