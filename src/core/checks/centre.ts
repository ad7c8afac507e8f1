import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { centreOfFace } from '../faces/field'
import type { StripRecipe } from '../patterns/recipe'
import type { Centre } from '../seams/centring'
import type { SeamReport } from '../seams/seam-report'
import type { Shop } from '../shop'

/** Whether what the recipe puts on the centre really lies there: a seam, a leaf, or the meeting of the seams. */
export function checkCentre(
  face: LaidFace,
  seams: readonly SeamReport[],
  centre: Centre,
  shop: Shop,
): readonly Finding[] {
  const { recipe } = face.part
  switch (recipe.pattern) {
    case 'radial':
    case 'four-way':
    case 'diamond':
      return crossingCentre(face, centre, shop)
    case 'box':
    case 'planks':
      return []
    case 'herringbone':
      return recipe.columns % 2 === 0 ? seamOnCentre(face, seams, centre, shop) : []
    case 'parquet':
      return recipe.columns % 2 === 0 && recipe.rows % 2 === 0 ? crossingCentre(face, centre, shop) : []
    case 'end match':
      return columnsOf(face) % 2 === 0 ? seamOnCentre(face, seams, centre, shop) : leafOnCentre(face, shop)
    case 'strips':
      return stripsCentre(face, recipe, seams, centre, shop)
  }
}

const columnsOf = ({ plan }: LaidFace): number => plan.columns?.length ?? 0

function stripsCentre(
  face: LaidFace,
  recipe: StripRecipe,
  seams: readonly SeamReport[],
  centre: Centre,
  shop: Shop,
): readonly Finding[] {
  if (recipe.arrangement === 'running') return []
  const wantsSeam = recipe.arrangement === 'centre balance' || recipe.centreOn === 'seam'
  const isOdd = face.count % 2 === 1
  if (wantsSeam && isOdd) return [countFinding(face, 'odd-count')]
  if (!wantsSeam && recipe.centreOn === 'leaf' && !isOdd) return [countFinding(face, 'even-count')]
  return isOdd ? leafOnCentre(face, shop) : seamOnCentre(face, seams, centre, shop)
}

const countFinding = (face: LaidFace, code: 'odd-count' | 'even-count'): Finding => ({
  code,
  grade: 'wrong',
  part: face.part.id,
  place: { on: 'face' },
  measured: face.count,
  limit: null,
  about: { count: face.count },
  remedies: [
    { remedy: 'count', count: face.count + 1 },
    ...(face.count > 2 ? [{ remedy: 'count', count: face.count - 1 } as const] : []),
  ],
})

function seamOnCentre(face: LaidFace, seams: readonly SeamReport[], { x }: Centre, shop: Shop): readonly Finding[] {
  const nearest = seams.find(({ edge }) => x !== null && Math.abs((edge.a.x + edge.b.x) / 2 - x) < 1e-6)
  if (x === null || !nearest) return []
  return [
    offCentre(face, { on: 'seam', letter: nearest.letter }, x, shop, {
      what: 'seam',
      letter: nearest.letter,
      left: face.part.width / 2 + x,
      right: face.part.width / 2 - x,
    }),
  ]
}

function leafOnCentre(face: LaidFace, shop: Shop): readonly Finding[] {
  const column = face.plan.columns?.[(columnsOf(face) - 1) / 2]
  if (!column || columnsOf(face) === 1) return []
  const off = (column.from + column.to) / 2
  return [
    offCentre(face, { on: 'face' }, off, shop, {
      what: 'leaf',
      left: face.part.width / 2 + off,
      right: face.part.width / 2 - off,
    }),
  ]
}

function crossingCentre(face: LaidFace, { x, y }: Centre, shop: Shop): readonly Finding[] {
  if (x === null || y === null) return []
  const wanted = centreOfFace(face.part)
  const isMoved = face.part.recipe.pattern === 'radial' && (wanted.x !== 0 || wanted.y !== 0)
  const off = Math.hypot(x - wanted.x, y - wanted.y)
  return [
    offCentre(face, { on: 'face' }, off, shop, isMoved ? { what: 'moved crossing', ...wanted } : { what: 'crossing' }),
  ]
}

function offCentre(face: LaidFace, place: Finding['place'], off: number, shop: Shop, about: Finding['about']): Finding {
  const isCentred = Math.abs(off) <= shop.offCentre
  return {
    code: isCentred ? 'centred' : 'off-centre',
    grade: isCentred ? 'good' : 'wrong',
    part: face.part.id,
    place,
    measured: off,
    limit: shop.offCentre,
    about,
    remedies: [],
  }
}
