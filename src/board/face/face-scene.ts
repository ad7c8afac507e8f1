import type { DerivedPart } from '../../core/derive'
import type { Finding } from '../../core/finding'
import { flitchesOf, otherFlitch, type Piece } from '../../core/fit/lay-face'
import { pieceParts } from '../../core/fit/piece-parts'
import { boxAround, boxCentre, type Box } from '../../core/geometry/box'
import { between, point, type Point } from '../../core/geometry/point'
import { ringCovers } from '../../core/geometry/polygon'
import { transformPoint } from '../../core/geometry/transform'
import { centreOfFace } from '../../core/faces/field'
import { isBandJoint } from '../../core/patterns/pattern'
import { findLeaf, leafOutline, placeInSequence } from '../../core/leaves/bundle'
import type { Flitch } from '../../core/leaves/flitch'
import { ofFlitch } from '../../core/leaves/flitch-words'
import type { Leaf } from '../../core/leaves/leaf'
import type { PairReport } from '../../core/seams/pair-report'
import { whereTheOther } from '../../core/sheets/pair-words'
import { showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import type {
  BoardColours,
  BoardTarget,
  FaceCell,
  FaceMade,
  FaceMarker,
  FaceScene,
  FaceSpot,
  LeafPictures,
  LeafWood,
  PicturesOf,
} from '../board-types'
import type { FinishedLook } from '../../store/session.svelte'
import { faceBeside } from './face-beside'
import { shineOf } from './shine'

export interface FaceSceneOptions {
  readonly unit: LengthUnit
  readonly colours: BoardColours
  /** As the part says, unless told otherwise. */
  readonly lying?: boolean
  readonly selected?: BoardTarget | null
  readonly pictures?: PicturesOf
  readonly showLeaves?: boolean
  /** The numbers by which findings are listed; those without one are not marked. */
  readonly numbers?: ReadonlyMap<Finding, number>
  readonly spot?: FaceSpot | null
  /** As it will be seen when it is finished, in this light. */
  readonly finished?: FinishedLook | null
  /** The faces that its pairs may speak of. */
  readonly faces?: readonly DerivedPart[]
}

/** A face as it is drawn, from what follows from the decisions about its part. */
export function faceScene(part: DerivedPart, options: FaceSceneOptions): FaceScene {
  const { unit, colours, lying = part.part.lying, selected = null, showLeaves = false, finished = null } = options
  const drawnCells = (one: DerivedPart) => {
    const cells = faceCells(one, options.pictures)
    return finished
      ? cells.map((cell, i) => ({ ...cell, shine: shineIn(cell, one.pieces[i]!, finished, lying) }))
      : cells
  }
  return {
    label: faceLabel(part, unit),
    lying,
    unit,
    colours,
    ...part.sizes,
    centre: centreOfFace(part.part),
    cells: drawnCells(part),
    seams: faceSeams(part),
    string: faceString(part),
    columns: part.plan.columns ?? [],
    markers: faceMarkers(part, options.numbers ?? new Map()),
    selected,
    showLeaves,
    spot: options.spot ?? null,
    finishedLook: finished !== null,
    beside: faceBeside(part, options.faces ?? [], finished !== null, (other) => ({
      cells: drawnCells(other),
      seams: faceSeams(other),
    })),
  }
}

/** One for each piece, in the order of the pieces. */
export function faceCells(part: DerivedPart, pictures: PicturesOf = () => null): readonly FaceCell[] {
  const known = new Map(flitchesOf(part).map((flitch) => [flitch.id, pictures(flitch)]))
  return part.pieces.map((piece) => {
    const own = known.get(piece.flitch.id) ?? null
    return {
      id: piece.cell.id,
      ring: piece.cell.face.ring,
      leaf: piece.leaf?.number ?? null,
      turnedOver: piece.cell.turn.turnedOver,
      leafToPanel: piece.leafToPanel,
      wood: pieceWood(piece, own),
      made: faceMade(piece, own),
      shine: 0,
    }
  })
}

const shineIn = (cell: FaceCell, { flitch }: Piece, look: FinishedLook, lying: boolean): number =>
  look.shine * shineOf(cell, flitch, look.lightFrom, lying)

function faceMade(piece: Piece, pictures: LeafPictures | null): FaceMade | null {
  const { made, flitch, leafToPanel } = piece
  if (!made) return null
  const onPanel = (p: Point<'leaf'>) => transformPoint(leafToPanel, p)
  return {
    outline: made.outline[0],
    parts: pieceParts(piece).flatMap((part) => {
      const leaf = findLeaf(flitch, part.leaf)
      if (!leaf || !part.wood) return []
      return [{ region: part.wood, leafToPanel: part.leafToPanel, wood: leafWood(flitch, leaf, pictures) }]
    }),
    joints: made.seams.map(({ edge }) => ({ a: onPanel(edge.a), b: onPanel(edge.b) })),
  }
}

export const faceSeams = (part: DerivedPart): FaceScene['seams'] =>
  part.seams.map(({ letter, edge, line, kind, round, meets, depthOffset, jump }) => ({
    letter,
    edge,
    line,
    band: isBandJoint(kind) ? kind : null,
    round,
    meets,
    depthOffset,
    jump,
  }))

export const faceString = ({ border }: DerivedPart): FaceScene['string'] =>
  border?.string ? { outside: border.string.outside.ring, inside: border.string.inside.ring } : null

function pieceWood({ flitch, leaf }: Piece, pictures: LeafPictures | null): LeafWood {
  if (leaf) return leafWood(flitch, leaf, pictures)
  return { outline: [], cut: flitch.cut, place: 0, defects: [], picture: null }
}

export const leafWood = (flitch: Flitch, leaf: Leaf, pictures: LeafPictures | null): LeafWood => ({
  outline: leafOutline(flitch, leaf),
  cut: flitch.cut,
  place: placeInSequence(flitch, leaf.number),
  defects: leaf.defects,
  picture: pictures?.get(leaf.number) ?? null,
})

function faceLabel(face: DerivedPart, unit: LengthUnit): string {
  const { part, pieces, seams, pairs } = face
  const leaves = pieces.map((piece) =>
    piece.leaf
      ? `${piece.leaf.number}${ofFlitch(otherFlitch(face, piece))}${piece.cell.turn.turnedOver ? ' turned over' : ''}`
      : 'no leaf',
  )
  const size = `${showLength(part.width, unit, 'whole')} by ${showLength(part.length, unit, 'whole')}`
  return `Face of ${part.name}, ${size}, ${seams.length} ${seams.length === 1 ? 'seam' : 'seams'}. Leaves: ${leaves.join(', ')}.${pairs.map((report) => besideLabel(report, part, unit)).join('')}`
}

const besideLabel = (report: PairReport, part: DerivedPart['part'], unit: LengthUnit): string =>
  report.void
    ? ''
    : ` ${report.other.name} hangs ${whereTheOther(report, part)}, across a gap of ${showLength(report.pair.gap, unit, 'seam')}.`

function faceMarkers(part: DerivedPart, numbers: ReadonlyMap<Finding, number>): readonly FaceMarker[] {
  return part.findings.flatMap((finding) => {
    const number = numbers.get(finding)
    const at = number === undefined ? null : findingPlace(part, finding)
    return number === undefined || !at ? [] : [{ number, grade: finding.grade, at }]
  })
}

/** Where on the panel a finding is to be seen; the whole face has the corner for it, a leaf not in the face none. */
export function findingPlace({ sizes, pieces, seams }: DerivedPart, { place }: Finding): Point<'panel'> | null {
  if (place.on === 'face') return point(sizes.finished.max.x, sizes.finished.min.y)
  if (place.on === 'edge') return edgeMiddle(sizes.finished, place.side)
  if (place.on === 'seam') {
    const seam = seams.find(({ letter }) => letter === place.letter)
    return seam ? between(seam.edge.a, seam.edge.b, 0.5) : null
  }
  if (place.on === 'cell') {
    const piece = pieces.find(({ cell }) => cell.id === place.cell)
    return piece ? boxCentre(boxAround(piece.cell.face.ring)) : null
  }
  const { leaf, at } = place
  const laid = pieces.filter((piece) => piece.flitch.id === leaf.flitch && piece.leaf?.number === leaf.leaf)
  if (!at) return laid[0] ? boxCentre(boxAround(laid[0].cell.face.ring)) : null
  const spots = laid.map((piece) => ({ piece, spot: transformPoint(piece.leafToPanel, at) }))
  const seen = spots.find(({ piece, spot }) => ringCovers(piece.cell.face.ring, spot)) ?? spots[0]
  return seen ? held(seen.spot, sizes.sheet) : null
}

function edgeMiddle(finished: Box<'panel'>, side: 'top' | 'right' | 'bottom' | 'left'): Point<'panel'> {
  const { x, y } = boxCentre(finished)
  if (side === 'top') return point(x, finished.min.y)
  if (side === 'bottom') return point(x, finished.max.y)
  return point(side === 'left' ? finished.min.x : finished.max.x, y)
}

/** A spot outside the sheet is shown at its border. */
const held = ({ x, y }: Point<'panel'>, { min, max }: Box<'panel'>): Point<'panel'> =>
  point(Math.min(max.x, Math.max(min.x, x)), Math.min(max.y, Math.max(min.y, y)))
