import { boxAround, boxGrown, type Box } from '../../geometry/box'
import { add, distance, point, scale, subtract, type Point } from '../../geometry/point'
import type { Edge } from '../../geometry/polygon'
import { invert, transformPoint, type Transform } from '../../geometry/transform'
import type { GreyPicture } from './grey'
import { STRIP } from './seam-slide'

/** On which side of a seam, seen along it from a to b: the panel's y points down, so `clockwise` is right of a line that runs up. */
export type SeamSide = 'clockwise' | 'anticlockwise'

/** A step along the seam and one away from it, each a millimetre long. */
function stepsOf({ a, b }: Edge<'panel'>, side: SeamSide): { along: Point<'panel'>; away: Point<'panel'> } {
  const along = scale(subtract(b, a), 1 / distance(a, b))
  const away = side === 'clockwise' ? point<'panel'>(-along.y, along.x) : point<'panel'>(along.y, -along.x)
  return { along, away }
}

/** What of a leaf lies beside a seam: the box of the strip in the leaf's frame, a little larger. */
export function stripBox(seam: Edge<'panel'>, side: SeamSide, leafToPanel: Transform<'leaf', 'panel'>): Box<'leaf'> {
  const { away } = stepsOf(seam, side)
  const corners = [seam.a, seam.b].flatMap((end) => [end, add(end, scale(away, STRIP))])
  const panelToLeaf = invert(leafToPanel)
  return boxGrown(boxAround(corners.map((p) => transformPoint(panelToLeaf, p))), {
    top: 2,
    right: 2,
    bottom: 2,
    left: 2,
  })
}

/**
 * The strip of a leaf beside a seam as it lies: rows along the seam from a to b, columns away from it. `picture` is the
 * leaf's, in its frame, and holds `stripBox` at least; what it does not hold is not known.
 */
export function seamStrip(
  picture: GreyPicture,
  seam: Edge<'panel'>,
  side: SeamSide,
  leafToPanel: Transform<'leaf', 'panel'>,
): GreyPicture {
  const { pxPerMm, origin } = picture
  const { along, away } = stepsOf(seam, side)
  const width = Math.round(STRIP * pxPerMm)
  const height = Math.round(distance(seam.a, seam.b) * pxPerMm)
  const values = new Float32Array(width * height)
  const known = new Uint8Array(width * height)
  const panelToLeaf = invert(leafToPanel)
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const onPanel = add(seam.a, add(scale(along, (j + 0.5) / pxPerMm), scale(away, (i + 0.5) / pxPerMm)))
      const p = transformPoint(panelToLeaf, onPanel)
      const value = valueAt(picture, (p.x - origin.x) * pxPerMm - 0.5, (p.y - origin.y) * pxPerMm - 0.5)
      if (value === null) continue
      values[j * width + i] = value
      known[j * width + i] = 1
    }
  return { width, height, pxPerMm, origin: point(0, 0), values, known }
}

/** Between four pixels; null where one of them is not known. */
function valueAt({ width, height, values, known }: GreyPicture, x: number, y: number): number | null {
  const [i, j] = [Math.floor(x), Math.floor(y)]
  if (i < 0 || j < 0 || i + 1 >= width || j + 1 >= height) return null
  const at = j * width + i
  if (!known[at] || !known[at + 1] || !known[at + width] || !known[at + width + 1]) return null
  const [u, v] = [x - i, y - j]
  const above = values[at]! + (values[at + 1]! - values[at]!) * u
  const below = values[at + width]! + (values[at + width + 1]! - values[at + width]!) * u
  return above + (below - above) * v
}
