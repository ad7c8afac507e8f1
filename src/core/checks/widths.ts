import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import type { Cell } from '../faces/cells'
import { boxWidth, regionBox, type Side } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { transformRegion, type Region } from '../geometry/polygon'
import { GRID } from '../geometry/tolerance'
import { invert } from '../geometry/transform'
import type { Shop } from '../shop'

/** Strips that would look like slivers, sheet without wood, and overhangs that may leave an edge bare. */
export const checkWidths = (face: LaidFace, shop: Shop): readonly Finding[] => [
  ...bareWidth(face),
  ...slivers(face, shop),
  ...stripSlivers(face, shop),
  ...smallOverhangs(face, shop),
]

const bareWidth = (face: LaidFace): readonly Finding[] =>
  face.bare > 0.01
    ? [
        {
          code: 'bare-width',
          grade: 'wrong',
          part: face.part.id,
          place: { on: 'face' },
          measured: face.bare,
          limit: 0,
          about: { count: face.count },
          remedies: [],
        },
      ]
    : []

function slivers(face: LaidFace, shop: Shop): readonly Finding[] {
  const columns = face.plan.columns ?? []
  return columns.flatMap(({ from, to }, i) => {
    const width = to - from
    if (width >= shop.sliver) return []
    const piece = face.pieces.find(({ cell }) => cell.id === face.plan.cells[i]!.id)
    return [
      {
        code: 'sliver' as const,
        grade: 'wrong' as const,
        part: face.part.id,
        place: { on: 'cell' as const, cell: face.plan.cells[i]!.id },
        measured: width,
        limit: shop.sliver,
        about: { leaf: piece?.leaf?.number ?? 0, count: face.count },
        remedies: [],
      },
    ]
  })
}

/**
 * Strips of slipped sheets of which too little shows: the joints lie alike in all sheets, so on a panel that is not
 * square the outer strips of the smaller pieces are narrower. The narrowest is told, the others are counted.
 */
function stripSlivers(face: LaidFace, { sliver }: Shop): readonly Finding[] {
  const { id, recipe } = face.part
  if (recipe.pattern !== 'diamond' && recipe.pattern !== 'box') return []
  const finished: Region<'panel'> = [[face.sizes.outlines.finished.ring]]
  const narrow = face.pieces
    .filter(({ cell }) => cell.sheet !== null)
    .map(({ cell, leaf }) => ({ cell, leaf, width: widthShown(cell, finished) }))
    .filter(({ width }) => width < sliver - GRID)
    .sort((p, q) => p.width - q.width)
  const [least] = narrow
  if (!least) return []
  return [
    {
      code: 'sliver',
      grade: 'note',
      part: id,
      place: { on: 'cell', cell: least.cell.id },
      measured: least.width,
      limit: sliver,
      about: { leaf: least.leaf?.number ?? 0, cell: least.cell.id, sheetOf: recipe.sheetOf, more: narrow.length - 1 },
      remedies: [],
    },
  ]
}

/** How wide a piece is across its grain where it shows; 0 where it lies wholly in the overhang. */
function widthShown({ face, lay }: Cell, finished: Region<'panel'>): number {
  const shown = intersect<'panel'>([[face.ring]], finished)
  return shown.length > 0 ? boxWidth(regionBox(transformRegion(invert(lay), shown))) : 0
}

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

function smallOverhangs(face: LaidFace, shop: Shop): readonly Finding[] {
  const small = SIDES.filter((side) => face.part.overhang[side] < shop.leastOverhang)
  if (small.length === 0) return []
  const least = small.reduce((best, side) => (face.part.overhang[side] < face.part.overhang[best] ? side : best))
  return [
    {
      code: 'overhang-small',
      grade: 'note',
      part: face.part.id,
      place: { on: 'edge', side: least },
      measured: face.part.overhang[least],
      limit: shop.leastOverhang,
      about: { sides: small.join(', ') },
      remedies: small.map((side) => ({ remedy: 'overhang', side, to: shop.leastOverhang }) as const),
    },
  ]
}
