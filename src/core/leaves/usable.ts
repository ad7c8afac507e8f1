import { regionLessOnGrid } from '../geometry/clip'
import { erodedByBox } from '../geometry/inner-fit'
import { grown } from '../geometry/offset'
import type { Polygon, Region } from '../geometry/polygon'
import type { Shop, ShowClass } from '../shop'
import { leafOutline } from './bundle'
import { cutForOthers, isCutFor, type PieceRef } from './done-cuts'
import type { Flitch } from './flitch'
import type { Defect, Leaf } from './leaf'

/** What must be kept clear round a defect. */
export const defectArea = (defect: Defect, shop: Shop): Region<'leaf'> =>
  grown(defect, Math.max(shop.clearance[defect.kind], defect.shape === 'line' ? 0.5 : 0))

/** The defects of a leaf that a face of this class does not tolerate. */
export const defectsToAvoid = (leaf: Leaf, shop: Shop, showClass: ShowClass): readonly Defect[] =>
  leaf.defects.filter((defect) => !shop.tolerates[showClass].includes(defect.kind))

/**
 * Where a rough piece may lie on a leaf, in the leaf's frame: the outline drawn in by the side margin across and the
 * end margin along, less the defects that the show class does not tolerate, grown by their clearance.
 */
export function usableArea(flitch: Flitch, leaf: Leaf, shop: Shop, showClass: ShowClass): Region<'leaf'> {
  const sound = erodedByBox<'leaf'>([[leafOutline(flitch, leaf)]], flitch.sideMargin, flitch.endMargin)
  return regionLessOnGrid(sound, ...defectsToAvoid(leaf, shop, showClass).map((defect) => defectArea(defect, shop)))
}

/**
 * What is left of a usable area for one piece: the piece itself where it has been cut, else all that was not cut for
 * others, and what knife or saw takes round it.
 */
export function woodFor(usable: Region<'leaf'>, leaf: Leaf, piece: PieceRef, shop: Shop): Region<'leaf'> {
  const own = leaf.cuts.filter((cut) => isCutFor(cut, piece)).map(({ outline }): Polygon<'leaf'> => [outline])
  return own.length > 0 ? own : rawWoodFor(usable, leaf, piece, shop)
}

/** As `woodFor`, whether the piece has been cut or not. */
export function rawWoodFor(
  usable: Region<'leaf'>,
  leaf: Leaf,
  piece: PieceRef,
  { betweenPieces }: Shop,
): Region<'leaf'> {
  // less by a hair than is kept between pieces, so that one that keeps just that lies clear
  const kerf = Math.max(0, betweenPieces - 0.05)
  return regionLessOnGrid(
    usable,
    ...cutForOthers(leaf, piece).map((ring) => grown<'leaf'>({ shape: 'area', ring }, kerf)),
  )
}
