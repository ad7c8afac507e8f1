import { checkOutline, type OutlineTrouble } from '../geometry/outline-check'
import { flattened } from '../geometry/panel-outline'
import type { Part } from './job'
import { numberTrouble, pointTrouble } from './check-number'
import { LIMITS, MOST_POINTS } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

/** What about the outline of a panel can't be so, or null. */
export function outlineTrouble({ outline, width, length }: Part, owner: string): MeaningTrouble | null {
  const place = (field: string) => inPlace([owner], ['outline', field])
  switch (outline.shape) {
    case 'rectangle':
    case 'circle':
    case 'ellipse':
      return null
    case 'polygon':
      return numberTrouble(outline.sides, LIMITS.sides, place('sides'))
    case 'arch top': {
      // an arc that rises by more than half the width would stand out beyond the sides
      const most = Math.min(width / 2, length)
      return numberTrouble(outline.rise, { ...LIMITS.rise, most }, place('rise'))
    }
    case 'drawn':
      return drawnTrouble(outline.corners, owner)
  }
}

type Corners = Extract<Part['outline'], { shape: 'drawn' }>['corners']

function drawnTrouble(corners: Corners, owner: string): MeaningTrouble | null {
  const place = inPlace([owner], ['outline'])
  for (const [i, { at, bulge }] of corners.entries()) {
    const corner = `corner ${i + 1}`
    const wrong =
      pointTrouble(at, [owner], ['outline', corner]) ??
      numberTrouble(bulge, LIMITS.bulge, inPlace([owner], ['outline', corner, 'bulge']))
    if (wrong) return wrong
  }
  const { ring, edges } = flattened(corners)
  if (ring.length > MOST_POINTS)
    return { trouble: 'too many', place, value: ring.length, things: 'points along its curves', limit: MOST_POINTS }
  const checked = checkOutline(ring)
  if (checked.ok) return null
  // told by the corners that were given, not by the points along the arcs
  const [first, second] = checked.reason.edges
  const sourceOf = (edge: number) => edges[edge]?.source ?? edge
  const fault: OutlineTrouble<'panel'> = { ...checked.reason, edges: [sourceOf(first), sourceOf(second)] }
  return { trouble: 'bad panel outline', place, fault }
}
