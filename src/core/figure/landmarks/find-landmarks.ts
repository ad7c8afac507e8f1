import { boxAround, boxGrown, type Box } from '../../geometry/box'
import type { Point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import type { GreyPicture } from '../align/grey'
import { withinOutline } from '../align/within-outline'
import { crownTip } from './crown-tip'
import type { Landmark } from './landmark'
import { stripesOver } from './stripes'

/** What of a leaf is looked at round a window, mm; and as far round it a knot is of use. */
const AROUND = 20
const KNOT_AROUND = 60

/** Nearer to a knot, mm, grain that bends round it is no crown. */
const BENT = 45

const MOST_KNOTS = 2
const MOST_STRIPES = 2

/** What of a leaf is looked at for the landmarks of a window. */
export const landmarkBox = (window: Ring<'leaf'>): Box<'leaf'> => grown(window, AROUND)

/**
 * The landmarks by which a window is found again on its leaf: the crown tip inside it that stands out most, knots inside
 * and near it, and two stripes over each of its ends. `picture` holds `landmarkBox`, with only the leaf's own wood known;
 * `knots` are those marked on the leaf, for the dark end of a crown looks too much like one. Places are in the leaf's frame.
 */
export function findLandmarks(
  picture: GreyPicture,
  window: Ring<'leaf'>,
  knots: readonly Point<'leaf'>[],
): readonly Landmark[] {
  const crown = crownTip(withoutSpots(withinOutline(picture, window), knots, BENT))
  const { min, max } = grown(window, KNOT_AROUND)
  const near = knots.filter(({ x, y }) => x >= min.x && x <= max.x && y >= min.y && y <= max.y)
  const stripes = (['near', 'far'] as const).flatMap((end) =>
    [...stripesOver(picture, window, end, MOST_STRIPES)].sort((p, q) => p.at.x - q.at.x),
  )
  return [
    ...(crown ? [crown] : []),
    ...near.slice(0, MOST_KNOTS).map((at): Landmark => ({ kind: 'knot', at })),
    ...stripes,
  ]
}

const grown = (window: Ring<'leaf'>, by: number): Box<'leaf'> =>
  boxGrown(boxAround(window), { top: by, right: by, bottom: by, left: by })

/** The picture without the wood about some spots. */
function withoutSpots(picture: GreyPicture, spots: readonly Point<'leaf'>[], reach: number): GreyPicture {
  const { width, height, pxPerMm, origin } = picture
  const known = picture.known.slice()
  for (const spot of spots) {
    const [x, y] = [(spot.x - origin.x) * pxPerMm, (spot.y - origin.y) * pxPerMm]
    const far = reach * pxPerMm
    for (let j = Math.max(0, Math.floor(y - far)); j < Math.min(height, y + far); j++)
      for (let i = Math.max(0, Math.floor(x - far)); i < Math.min(width, x + far); i++)
        if (Math.hypot(i + 0.5 - x, j + 0.5 - y) <= far) known[j * width + i] = 0
  }
  return { ...picture, known }
}
