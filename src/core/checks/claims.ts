import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { patternSizes } from '../faces/face'
import { midSidesAngle } from '../patterns/diamond'
import { isBandJoint } from '../patterns/pattern'
import { diamondMiss } from '../seams/grain-at-seam'
import type { SeamReport } from '../seams/seam-report'
import type { Shop } from '../shop'

/** Claims of patterns that are not about one seam by itself. */
export const checkClaims = (face: LaidFace, seams: readonly SeamReport[], shop: Shop): readonly Finding[] => [
  ...checkDiamond(face, shop),
  ...checkOffsets(face, seams),
  ...checkCount(face),
]

/** More leaves than a herringbone has strips to cut: as many as there are strips are taken. */
function checkCount({ part: { id, recipe }, count }: LaidFace): readonly Finding[] {
  if (recipe.pattern !== 'herringbone' || recipe.count === 'fewest' || recipe.count <= count) return []
  const place = { on: 'face' } as const
  return [
    {
      code: 'count-lowered',
      grade: 'note',
      part: id,
      place,
      measured: count,
      limit: recipe.count,
      about: {},
      remedies: [{ remedy: 'count', count }],
    },
  ]
}

/** A diamond promises that it touches the middles of the sides, a reverse one that grain runs from corner to centre. */
function checkDiamond({ part, flitch }: LaidFace, shop: Shop): readonly Finding[] {
  const { recipe } = part
  const { offCentre } = shop
  if (recipe.pattern !== 'diamond' || recipe.angle === 'mid-sides' || flitch.figure === 'burl') return []
  const size = patternSizes(part, shop)
  const miss = diamondMiss(size, recipe.angle)
  if (miss.by <= offCentre) return []
  return [
    {
      code: 'diamond-off',
      grade: 'note',
      part: part.id,
      place: { on: 'face' },
      measured: miss.by,
      limit: offCentre,
      about: { runs: recipe.runs, on: miss.on, fits: midSidesAngle(size) },
      remedies: [],
    },
  ]
}

/** Offsets in the log that differ by less are alike. */
const ALIKE = 0.01

/**
 * In a four-way face the figure is to look alike on both sides of the centre: that asks for the same offset in the log
 * all along a seam. Where the offsets differ, figure that leans in the log steps.
 */
function checkOffsets({ part }: LaidFace, seams: readonly SeamReport[]): readonly Finding[] {
  if (part.recipe.pattern !== 'four-way') return []
  // a border is laid to frame the figure, not to match it
  const inField = seams.filter(({ kind }) => !isBandJoint(kind))
  const uneven = inField.flatMap((seam) => {
    const offsets = seam.sides.flatMap(({ depthOffset }) => depthOffset ?? [])
    const [least, most] = [Math.min(...offsets), Math.max(...offsets)]
    return most - least > ALIKE ? [{ seam, least, most }] : []
  })
  const worst = uneven.sort((p, q) => q.most - q.least - (p.most - p.least))[0]
  if (!worst) return []
  const { seam, least, most } = worst
  return [
    {
      code: 'offsets-unequal',
      grade: 'note',
      part: part.id,
      place: { on: 'seam', letter: seam.letter },
      measured: most - least,
      limit: ALIKE,
      about: { letter: seam.letter, least, most, more: uneven.length - 1 },
      remedies: [],
    },
  ]
}
