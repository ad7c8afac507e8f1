import type { Flitch } from '../leaves/flitch'
import type { Recipe } from '../patterns/recipe'
import { PRESS_RANGES } from './press-trouble'
import type { Grain, Layer, Pressing } from './pressing'
import { ALONG, usualPressing } from './usual-pressing'

type Leaves = Pick<Flitch, 'species' | 'thickness' | 'cut'>

/** The grain of a face laid in this pattern: along the panel, or of no single direction. */
export const faceGrain = (pattern: Recipe['pattern']): Grain =>
  ['radial', 'diamond', 'box', 'herringbone', 'parquet'].includes(pattern) ? 'no single grain' : ALONG

/** Face and backer from these leaves on a plain core, laid as the pattern lays them. */
export function pressingFrom({ species, thickness, cut }: Leaves, pattern: Recipe['pattern']): Pressing {
  const plain = usualPressing(species, thickness, cut)
  const grain = faceGrain(pattern)
  return {
    ...plain,
    layers: plain.layers.map((layer) => (layer.kind === 'veneer' ? { ...layer, grain } : layer)),
  }
}

/** The same pressing where leaves of one flitch give way to those of another; other veneers stay. */
export function pressingFollows(pressing: Pressing, before: Leaves, after: Leaves): Pressing {
  const thickness = pressedAs(after)
  const layers = pressing.layers.map((layer) =>
    layer.kind === 'veneer' && isOf(layer, before)
      ? { ...layer, species: after.species, cut: after.cut, thickness }
      : layer,
  )
  return layers.every((layer, i) => layer === pressing.layers[i]) ? pressing : { ...pressing, layers }
}

/** The same pressing where the face comes to be laid in another pattern; a grain typed by hand stays. */
export function pressingRelaid(pressing: Pressing, before: Recipe['pattern'], after: Recipe['pattern']): Pressing {
  const [was, grain] = [faceGrain(before), faceGrain(after)]
  const [face, ...behind] = pressing.layers
  if (was === grain || face?.kind !== 'veneer' || face.grain !== was) return pressing
  return { ...pressing, layers: [{ ...face, grain }, ...behind] }
}

const pressedAs = ({ thickness }: Leaves): number => Math.max(thickness, PRESS_RANGES.thickness.least)

const isOf = (layer: Layer & { readonly kind: 'veneer' | 'solid' }, leaves: Leaves): boolean =>
  layer.species === leaves.species && layer.cut === leaves.cut && layer.thickness === pressedAs(leaves)
