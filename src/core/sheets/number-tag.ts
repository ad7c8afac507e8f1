import { circle, fill, text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { CAP_HEIGHT } from '../drawing/text-width'
import { point, type Point } from '../geometry/point'

/** A number in a ring that stands clear of what it lies on; all in mm on paper. */
export function numberTag(
  at: Point<'sheet'>,
  words: string,
  { radius, size, pen }: { readonly radius: number; readonly size: number; readonly pen: number },
): readonly Item[] {
  const ring = Array.from({ length: 20 }, (_, i) => {
    const angle = (i * Math.PI) / 10
    return point<'sheet'>(at.x + Math.cos(angle) * radius, at.y + Math.sin(angle) * radius)
  })
  return [
    fill('mark', ring, '#ffffff'),
    circle('mark', at, radius, { pen }),
    text(point(at.x, at.y + (size * CAP_HEIGHT) / 2), words, { size, weight: 'bold', anchor: 'middle' }),
  ]
}
