import { bendLaminate, everyWay, NO_STIFFNESS, NO_STRAIN, stiffnessAt, strainAt, type Bend, type Ply } from './laminate'
import { boardFigures } from './boards'
import { acrossCoefficient, layerMovement, LENGTHWISE } from './moisture'
import type { Layer } from './pressing'
import { boardStiffness, woodStiffness } from './stiffness'
import { findWood } from './woods'

/** How far the moisture of each layer has moved since it was glued, in %; one number per layer. */
export type MoistureChange = readonly number[]

/** The plies of a build-up, layer by layer: a plywood reckoned ply by ply gives several. */
export const pliesOf = (layers: readonly Layer[], change: MoistureChange): Ply[][] =>
  layers.map((layer, i) => pliesOfLayer(layer, change[i] ?? 0))

/** The shape a build-up takes when its layers' moisture has changed. */
export const bendOf = (layers: readonly Layer[], change: MoistureChange): Bend =>
  bendLaminate(pliesOf(layers, change).flat())

function pliesOfLayer(layer: Layer, change: number): Ply[] {
  const { thickness } = layer
  if (layer.kind === 'glue line') return [{ thickness, stiffness: NO_STIFFNESS, strain: NO_STRAIN }]
  if (layer.kind === 'board' && layer.plies !== null) return plywoodPlies(layer, layer.plies, change)
  const stiffness =
    layer.kind === 'board' ? boardStiffness(layer.board) : woodStiffness(findWood(layer.species), layer.cut)
  const { along, across } = layerMovement(layer)
  if (layer.grain === 'no single grain') return [{ thickness, ...everyWay(stiffness, along * change, across * change) }]
  return [
    {
      thickness,
      stiffness: stiffnessAt(stiffness, layer.grain),
      strain: strainAt(along * change, across * change, layer.grain),
    },
  ]
}

/** Equal plies of rotary veneer, each across the last; the outer ones lie with the board's grain. */
function plywoodPlies(layer: Extract<Layer, { kind: 'board' }>, count: number, change: number): Ply[] {
  const wood = findWood(boardFigures(layer.board).plySpecies ?? '')
  const stiffness = woodStiffness(wood, 'rotary')
  const across = acrossCoefficient(wood, 'rotary')
  return Array.from({ length: count }, (_, i) => {
    const grain = layer.grain + (i % 2 === 0 ? 0 : 90)
    return {
      thickness: layer.thickness / count,
      stiffness: stiffnessAt(stiffness, grain),
      strain: strainAt(LENGTHWISE.value * change, across * change, grain),
    }
  })
}
