import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import type { Side } from '../geometry/box'
import type { Shop } from '../shop'

/** Strips that would look like slivers, sheet without wood, and overhangs that may leave an edge bare. */
export const checkWidths = (face: LaidFace, shop: Shop): readonly Finding[] => [
  ...bareWidth(face),
  ...slivers(face, shop),
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
