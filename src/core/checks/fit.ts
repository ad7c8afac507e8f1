import type { Finding, Remedy } from '../finding'
import { placeOnLeaf, pieceParts, type PiecePart } from '../fit/piece-parts'
import { lacksOf, type Lack, type LeafSide } from '../fit/lack'
import { groupsOf, type LaidFace, type LaidGroup, type Piece } from '../fit/lay-face'
import { ofOther } from './of-other'
import { BORDER } from '../faces/window-group'
import type { Side } from '../geometry/box'
import { boxAround, boxesOverlap, regionBox } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { overlapArea } from '../geometry/overlap'
import { nearestInside } from '../geometry/pole'
import { distance, point, subtract } from '../geometry/point'
import { regionArea, transformRegion, type Region } from '../geometry/polygon'
import { transformVector } from '../geometry/transform'
import type { Defect } from '../leaves/leaf'
import { findLeaf } from '../leaves/bundle'
import { defectArea, defectsToAvoid } from '../leaves/usable'
import type { Shop } from '../shop'

/** Whether the pieces lie in sound wood where the window is, and whether they could anywhere. */
export const checkFit = (face: LaidFace, shop: Shop): readonly Finding[] =>
  groupsOf(face).flatMap((group) => checkGroup(face, group, shop))

function checkGroup(face: LaidFace, group: LaidGroup, shop: Shop): readonly Finding[] {
  if (group.play.region.length === 0) return emptyPlay(face, group, shop)
  const inside = nearestInside(group.play.region, group.position)
  if (!inside || distance(inside, group.position) < 0.02) return []
  const remedy: Remedy = { remedy: 'move window', by: subtract(inside, group.position), group: group.group }
  const found = group.pieces.flatMap((piece) => pieceFindings(face, piece, shop, [remedy]))
  const outside: Finding = {
    code: 'outside-play',
    grade: 'wrong',
    part: face.part.id,
    place: { on: 'face' },
    measured: distance(inside, group.position),
    limit: 0,
    about: {
      x: inside.x - group.position.x,
      y: inside.y - group.position.y,
      ...ofBorder(group),
    },
    remedies: [remedy, { remedy: 'first position', group: group.group }],
  }
  return [outside, ...found]
}

/** Nothing fits: where least is missing, the leaves and edges that lack most. */
function emptyPlay(face: LaidFace, group: LaidGroup, shop: Shop): readonly Finding[] {
  const { shortfall } = group
  const empty: Finding = {
    code: 'play-empty',
    grade: 'wrong',
    part: face.part.id,
    place: { on: 'face' },
    measured: shortfall?.by ?? null,
    limit: 0,
    about: ofBorder(group),
    remedies:
      shortfall && distance(shortfall.at, group.position) > 0.02
        ? [{ remedy: 'first position', group: group.group }]
        : [],
  }
  const lacking = group.pieces.flatMap((piece) => pieceFindings(face, piece, shop, []))
  const worst = Math.max(0, ...lacking.map(({ measured }) => measured ?? 0))
  const governing = lacking.filter(({ measured }) => (measured ?? 0) > worst - 0.2)
  return [empty, ...(governing.length ? governing : lacking)]
}

const ofBorder = ({ group }: LaidGroup): Finding['about'] => (group === BORDER ? { border: 1 } : {})

function pieceFindings(face: LaidFace, piece: Piece, shop: Shop, remedies: readonly Remedy[]): readonly Finding[] {
  if (!piece.leaf) return []
  const hit = pieceParts(piece).flatMap((part) => {
    const leaf = findLeaf(piece.flitch, part.leaf)
    const avoided = leaf ? defectsToAvoid(leaf, shop, face.part.showClass) : []
    return avoided
      .filter((defect) => isHit(piece, part, defect, shop))
      .map((defect) => ({ defect, part, area: transformRegion(part.toMade, defectArea(defect, shop)) }))
  })
  const lacks = lacksOf(piece.roughOnLeaf, piece.usable)
  const fromDefects = hit.map(({ defect, part }) => defectFinding(face, piece, part, defect, shop, remedies))
  const clear = lacks.filter((lack) => !hit.some(({ area }) => nearDefect(lack, area)))
  return [...fromDefects, ...clear.map((lack) => lackFinding(face, piece, lack, remedies))]
}

function isHit(piece: Piece, part: PiecePart, defect: Defect, shop: Shop): boolean {
  const area = defectArea(defect, shop)
  if (piece.made) return regionArea(intersect(area, part.rough)) > 0.5
  return area.some(
    ([ring]) =>
      boxesOverlap(boxAround(piece.roughOnLeaf), boxAround(ring)) && overlapArea(ring, piece.roughOnLeaf) > 0.5,
  )
}

function nearDefect({ at }: Lack, area: Region<'leaf'>): boolean {
  if (area.length === 0) return false
  const { min, max } = regionBox(area)
  return at.x >= min.x - 1 && at.x <= max.x + 1 && at.y >= min.y - 1 && at.y <= max.y + 1
}

function defectFinding(
  face: LaidFace,
  piece: Piece,
  part: PiecePart,
  defect: Defect,
  shop: Shop,
  remedies: readonly Remedy[],
): Finding {
  const box = regionBox(defectArea(defect, shop))
  return {
    code: 'defect-in-face',
    grade: 'wrong',
    part: face.part.id,
    place: {
      on: 'leaf',
      leaf: { flitch: piece.flitch.id, leaf: part.leaf },
      at: point((box.min.x + box.max.x) / 2, (box.min.y + box.max.y) / 2),
    },
    measured: shop.clearance[defect.kind],
    limit: shop.clearance[defect.kind],
    about: {
      leaf: part.leaf,
      ...ofOther(face, piece),
      kind: defect.kind,
      cell: piece.cell.id,
      showClass: face.part.showClass,
    },
    remedies,
  }
}

function lackFinding(face: LaidFace, piece: Piece, lack: Lack, remedies: readonly Remedy[]): Finding {
  const atEnd = lack.side === 'numbered end' || lack.side === 'far end'
  return {
    code: atEnd ? 'short' : 'narrow',
    grade: 'wrong',
    part: face.part.id,
    place: { on: 'leaf', leaf: { flitch: piece.flitch.id, leaf: piece.leaf!.number }, at: placeOnLeaf(piece, lack.at) },
    measured: lack.by,
    limit: 0,
    about: { leaf: piece.leaf!.number, ...ofOther(face, piece), side: lack.side, cell: piece.cell.id },
    remedies: [...overhangRemedy(face, piece, lack), ...remedies],
  }
}

/** Less overhang at the edge of the panel that lies where the leaf gives out, if there is as much of it. */
function overhangRemedy(face: LaidFace, piece: Piece, { side, by }: Lack): readonly Remedy[] {
  const edge = panelSide(piece, side)
  const outer = piece.cell.face.tags.some((tag) => tag.kind === 'outer' && tag.side === edge)
  const give = Math.ceil(by * 2) / 2
  return edge && outer && face.part.overhang[edge] >= give ? [{ remedy: 'less overhang', side: edge, by: give }] : []
}

const OUTWARD: Readonly<Record<LeafSide, readonly [number, number]>> = {
  'numbered end': [0, -1],
  'far end': [0, 1],
  'left edge': [-1, 0],
  'right edge': [1, 0],
}

function panelSide(piece: Piece, side: LeafSide): Side | null {
  const [x, y] = OUTWARD[side]
  const outward = transformVector(piece.leafToPanel, point<'leaf'>(x, y))
  if (Math.abs(outward.y) > 0.99) return outward.y < 0 ? 'top' : 'bottom'
  if (Math.abs(outward.x) > 0.99) return outward.x < 0 ? 'left' : 'right'
  return null
}
