import { layerName } from './layer-words'
import type { Layer } from './pressing'

/** One layer in a picture of the section, from the show face down. */
export interface SectionBand {
  readonly layer: number
  readonly name: string
  /** True depths, mm. */
  readonly from: number
  readonly to: number
  /** Depths in the picture, where thin layers are drawn thicker than they are so that they can be seen. */
  readonly shownFrom: number
  readonly shownTo: number
  /** How the grain is drawn: as end grain, lengthwise, askew, every way; or none. The cut runs across the panel. */
  readonly grain: 'end' | 'lengthwise' | 'askew' | 'every way' | 'none'
}

/** Glue lines are left out; no band is shown thinner than this share of the picture. */
const LEAST_SHARE = 0.06

/** The layers as bands of a picture so high, mm. */
export function sectionBands(layers: readonly Layer[], height: number): SectionBand[] {
  const sheets = layers.flatMap((layer, place) => (layer.kind === 'glue line' ? [] : [{ layer, place }]))
  const total = sheets.reduce((sum, { layer }) => sum + layer.thickness, 0)
  const least = Math.min(LEAST_SHARE, 1 / Math.max(1, sheets.length))
  const shares = sheets.map(({ layer }) => Math.max(least, layer.thickness / total))
  // what the thin ones take beyond their due comes off the thick ones, each by its excess
  const over = shares.reduce((sum, share) => sum + share, 0) - 1
  const spare = shares.reduce((sum, share) => sum + share - least, 0)
  const shown = shares.map((share) => (spare > 0 ? share - (over * (share - least)) / spare : share) * height)
  let [depth, shownDepth] = [0, 0]
  return sheets.map(({ layer, place }, i) => {
    const band = { from: depth, to: depth + layer.thickness, shownFrom: shownDepth, shownTo: shownDepth + shown[i]! }
    depth = band.to
    shownDepth = band.shownTo
    return { layer: place, name: layerName(layers, place), ...band, grain: grainInSection(layer) }
  })
}

function grainInSection(layer: Exclude<Layer, { kind: 'glue line' }>): SectionBand['grain'] {
  if (layer.kind === 'board' && !layer.board.includes('plywood')) return 'none'
  if (layer.grain === 'no single grain') return 'every way'
  const turned = ((layer.grain % 180) + 180) % 180
  return turned === 90 ? 'end' : turned === 0 ? 'lengthwise' : 'askew'
}
