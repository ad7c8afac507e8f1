import { hasPlies, usualPlies } from '../../core/press/boards'
import { grainWords, woodName } from '../../core/press/layer-words'
import { sectionBands, type SectionBand } from '../../core/press/section'
import { glueLines } from '../../core/press/glue-amount'
import type { EdgeWork, Layer, Pressing } from '../../core/press/pressing'
import { showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'

/** What stands at one edge of a layer in the section: the panel itself, or what is glued on there. */
export type EdgeBlock = 'none' | 'lipping' | 'veneer'

/** One row of the section as it is drawn, from the show face down. */
export interface SectionRow {
  readonly layer: number
  readonly name: string
  readonly line: string
  readonly thickness: string
  /** Height in px, thin layers drawn thicker than they are. */
  readonly height: number
  readonly grain: SectionBand['grain']
  readonly stuff: 'leaf' | 'solid' | 'MDF' | 'particleboard' | 'plywood'
  /** Steepness of the growth rings in the end grain: lying, slanted or upright. */
  readonly rings: 'lying' | 'slanted' | 'upright'
  readonly plies: number
  readonly left: EdgeBlock
  readonly right: EdgeBlock
  /** The glue line in front of it; null before the first sheet. */
  readonly glue: 'this pressing' | 'before' | null
}

const HEIGHT = 220

export function sectionRows(pressing: Pressing, unit: LengthUnit): SectionRow[] {
  const { layers, edges } = pressing
  const now = glueLines(pressing)
  return sectionBands(layers, HEIGHT).map((band, nth): SectionRow => {
    const layer = layers[band.layer]!
    const inner = isInner(layers, band.layer)
    return {
      layer: band.layer,
      name: band.name.replace(/^the /, ''),
      line: lineOf(layer),
      thickness: showLength(layer.thickness, unit, 'exact'),
      height: band.shownTo - band.shownFrom,
      grain: band.grain,
      stuff: stuffOf(layer),
      rings: ringsOf(layer),
      plies: pliesShown(layer),
      left: blockAt(edges.left, inner),
      right: blockAt(edges.right, inner),
      glue: nth === 0 ? null : now.includes(nth - 1) ? 'this pressing' : 'before',
    }
  })
}

/** What a layer is and how it lies; its thickness stands beside its name. */
function lineOf(layer: Layer): string {
  if (layer.kind === 'glue line') return ''
  if (layer.kind === 'board') {
    const plies = pliesShown(layer)
    return plies > 1 ? `${layer.plies ?? `about ${plies}`} plies, outer ${grainWords(layer.grain)}` : 'no grain'
  }
  return `${woodName(layer.species)}, ${layer.cut} cut, ${grainWords(layer.grain)}`
}

/** Whether a layer is of the core, which edges put on first stand beside; the veneers go over them. */
function isInner(layers: readonly Layer[], place: number): boolean {
  const isCore = ({ kind }: Layer): boolean => kind === 'board' || kind === 'solid'
  return place >= layers.findIndex(isCore) && place <= layers.findLastIndex(isCore)
}

function blockAt(work: EdgeWork, inner: boolean): EdgeBlock {
  switch (work.edge) {
    case 'bare':
      return 'none'
    case 'lipped before':
      return inner ? 'lipping' : 'none'
    case 'edge veneer first':
      return inner ? 'veneer' : 'none'
    case 'lipped after':
      return 'lipping'
    case 'edge veneer last':
      return 'veneer'
  }
}

function stuffOf(layer: Layer): SectionRow['stuff'] {
  if (layer.kind === 'board') return hasPlies(layer.board) ? 'plywood' : layer.board === 'MDF' ? 'MDF' : 'particleboard'
  return layer.kind === 'solid' ? 'solid' : 'leaf'
}

function ringsOf(layer: Layer): SectionRow['rings'] {
  if (layer.kind !== 'veneer' && layer.kind !== 'solid') return 'lying'
  return layer.cut === 'quarter' ? 'upright' : layer.cut === 'rift' ? 'slanted' : 'lying'
}

const pliesShown = (layer: Layer): number =>
  layer.kind === 'board' ? (layer.plies ?? usualPlies(layer.board, layer.thickness) ?? 1) : 1
