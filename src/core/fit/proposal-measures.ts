import { boxAround, boxCentre, boxHeight, boxRing, regionBox, type Box } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { point, type Point } from '../geometry/point'
import { ringCovers, ringEdges, type Edge, type Region, type Ring } from '../geometry/polygon'
import { distanceBetweenEdges, levelCrossings } from '../geometry/segment'
import { leafOutline } from '../leaves/bundle'
import type { Defect } from '../leaves/leaf'
import { regionEdges, widestGap } from '../scarf/strip'
import type { LaidFace, Piece } from './lay-face'

/**
 * The length of sound wood that all leaves of the face keep in one stretch, beyond the pieces at one end, as wide as
 * the narrowest of them.
 */
export function remainder(face: LaidFace): number | null {
  const pieces = face.pieces.filter(({ leaf }) => leaf !== null)
  if (pieces.length === 0) return null
  const lengths = pieces.map((piece) => Math.max(...endsOf(piece).map((end) => clearLength(piece.usable, end))))
  return Math.min(...lengths)
}

/** The wood beyond a piece at either end of its leaf, as wide as the piece. */
function endsOf({ roughOnLeaf, usable }: Piece): readonly Box<'leaf'>[] {
  if (usable.length === 0) return []
  const piece = boxAround(roughOnLeaf)
  const wood = regionBox(usable)
  const at = (top: number, bottom: number): Box<'leaf'> => ({
    min: point(piece.min.x, top),
    max: point(piece.max.x, bottom),
  })
  return [at(wood.min.y, piece.min.y), at(piece.max.y, wood.max.y)].filter((box) => boxHeight(box) > 1)
}

/** The longest stretch of a box, over its whole width, that is sound. */
function clearLength(usable: Region<'leaf'>, box: Box<'leaf'>): number {
  const turned = ({ x, y }: Point<'leaf'>): Point<'leaf'> => point(y, x)
  const edges = regionEdges(intersect(usable, [[boxRing(box)]])).map(({ a, b }) => ({ a: turned(a), b: turned(b) }))
  const gap = widestGap(edges, box.min.x, box.max.x)
  return gap ? gap.to - gap.from : 0
}

/** How far the nearest split of any leaf stays from the piece on it; null where there are none. */
export function splitDistance({ pieces }: LaidFace): number | null {
  const near = pieces.flatMap((piece) =>
    (piece.leaf?.defects ?? [])
      .filter(({ kind }) => kind === 'split')
      .map((split) => distanceTo(piece.roughOnLeaf, split)),
  )
  return near.length === 0 ? null : Math.min(...near)
}

function distanceTo(ring: Ring<'leaf'>, defect: Defect): number {
  const edges = defectEdges(defect)
  if (edges.some(({ a }) => ringCovers(ring, a))) return 0
  return Math.min(...edges.flatMap((edge) => ringEdges(ring).map((side) => distanceBetweenEdges(edge, side))))
}

function defectEdges(defect: Defect): readonly Edge<'leaf'>[] {
  switch (defect.shape) {
    case 'line':
      return [{ a: defect.from, b: defect.to }]
    case 'area':
      return ringEdges(defect.ring)
    case 'spot': {
      const { centre, radius } = defect
      const around = (angle: number) =>
        point<'leaf'>(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle))
      return ringEdges(Array.from({ length: 12 }, (_, i) => around((i * Math.PI) / 6)))
    }
  }
}

/** How far the middles of the pieces lie from the middles of their leaves, across: there runs the heart of a crown. */
export function offCentre({ pieces }: LaidFace): number {
  const off = pieces.flatMap(({ flitch, leaf, roughOnLeaf }): readonly number[] => {
    if (!leaf) return []
    const row = boxCentre(boxAround(roughOnLeaf))
    return [Math.abs(row.x - middleAt(leafOutline(flitch, leaf), row.y))]
  })
  return Math.max(0, ...off)
}

/** Half-way between the wild edges in a row of the leaf. */
function middleAt(outline: Ring<'leaf'>, y: number): number {
  const crossings = levelCrossings(ringEdges(outline), 'y', y)
  return crossings.length > 1 ? (Math.min(...crossings) + Math.max(...crossings)) / 2 : boxCentre(boxAround(outline)).x
}
