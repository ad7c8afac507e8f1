import { centredCorners, drawnBox, movesOf, regularProportion, type PanelOutline } from '../geometry/panel-outline'
import { boxHeight, boxWidth } from '../geometry/box'
import { GRID } from '../geometry/tolerance'
import type { Part } from './job'

/**
 * The part with its width and length made those of the box round its outline, going by the one of the two that was
 * decided: a circle is as long as wide, a regular polygon has one proportion, a drawn shape has its own size. Where all
 * edges share one overhang, the largest of the four is taken for each. The same object when it is so already.
 */
export function fittedPart(part: Part, decided: 'width' | 'length'): Part {
  const outline = centredOutline(part.outline)
  const size = fittedSize(part, outline, decided)
  const [core, overhang] = [movesOf(outline, part.core), movesOf(outline, part.overhang)]
  const next = { outline, ...size, core: kept(part.core, core), overhang: kept(part.overhang, overhang) }
  const isSame = (Object.keys(next) as (keyof typeof next)[]).every((key) => next[key] === part[key])
  return isSame ? part : { ...part, ...next }
}

const kept = (before: Part['core'], after: Part['core']): Part['core'] =>
  (['top', 'right', 'bottom', 'left'] as const).every((side) => before[side] === after[side]) ? before : after

function centredOutline(outline: PanelOutline): PanelOutline {
  if (outline.shape !== 'drawn') return outline
  const corners = centredCorners(outline.corners)
  return corners === outline.corners ? outline : { ...outline, corners }
}

function fittedSize({ width, length }: Part, outline: PanelOutline, decided: 'width' | 'length') {
  const given = decided === 'width' ? width : length
  switch (outline.shape) {
    case 'circle':
      return { width: given, length: given }
    case 'polygon': {
      const proportion = regularProportion(outline.sides)
      // as it is, but for what a file rounds
      if (Math.abs(width * proportion - length) < GRID / 10) return { width, length }
      return decided === 'width' ? { width, length: width * proportion } : { width: length / proportion, length }
    }
    case 'drawn': {
      const box = drawnBox(outline.corners)
      return { width: boxWidth(box), length: boxHeight(box) }
    }
    default:
      return { width, length }
  }
}
