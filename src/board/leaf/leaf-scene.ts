import type { DerivedPart } from '../../core/derive'
import { flitchesOf, groupOf, otherFlitch, type Piece } from '../../core/fit/lay-face'
import { cutLines } from '../../core/fit/cut-lines'
import { backOnLeaf, pieceParts, placeOnLeaf } from '../../core/fit/piece-parts'
import { originOnLeaf } from '../../core/fit/placement'
import { add } from '../../core/geometry/point'
import { transformRegion, type Region } from '../../core/geometry/polygon'
import { translation } from '../../core/geometry/transform'
import type { CellId, LeafRef } from '../../core/ids'
import { isBorderPiece } from '../../core/faces/window-group'
import { findLeaf, leafOutline } from '../../core/leaves/bundle'
import { ofFlitch } from '../../core/leaves/flitch-words'
import { usableArea } from '../../core/leaves/usable'
import type { Shop } from '../../core/shop'
import { bareLength, showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import type { BoardColours, BoardTarget, LeafScene, LeafWindow, PicturesOf, TakenPiece } from '../board-types'
import type { Room } from '../../core/fit/room-to-move'
import { leafWood } from '../face/face-scene'
import { reach, roomToMove } from '../../core/fit/room-to-move'

export interface LeafSceneOptions {
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly shop: Shop
  /** All parts of the job: what the others take of the leaf is shown. */
  readonly parts: readonly DerivedPart[]
  /** Which of the part's pieces, where it takes several of this leaf; else the first. */
  readonly cell?: CellId | null
  readonly pictures?: PicturesOf
  readonly selected?: BoardTarget | null
}

/** A leaf as it is drawn with a part's window on it; null where no flitch that the part is cut from has such a leaf. */
export function leafScene(part: DerivedPart, ref: LeafRef, options: LeafSceneOptions): LeafScene | null {
  const flitch = flitchesOf(part).find(({ id }) => id === ref.flitch)
  const leaf = flitch && findLeaf(flitch, ref.leaf)
  if (!flitch || !leaf) return null
  const ours = part.pieces.filter((piece) => piece.flitch.id === ref.flitch && piece.leaf?.number === ref.leaf)
  const piece = ours.find(({ cell }) => cell.id === options.cell) ?? ours[0] ?? null
  const window = piece && leafWindow(part, piece)
  return {
    label: leafLabel(part, `${ref.leaf}${ofFlitch(otherFlitch(part, { flitch }))}`, window, options.unit),
    unit: options.unit,
    colours: options.colours,
    number: ref.leaf,
    wood: leafWood(flitch, leaf, options.pictures?.(flitch) ?? null),
    usable: (piece?.made ? null : piece?.usable) ?? usableArea(flitch, leaf, options.shop, part.part.showClass),
    window,
    cuts: piece ? cutLines(piece, leafOutline(flitch, leaf)) : [],
    taken: options.parts.flatMap((other) => takenFrom(other, part, ref, piece)),
    selected: options.selected ?? null,
  }
}

function leafWindow(part: DerivedPart, piece: Piece): LeafWindow {
  const { drift, nudge, farther } = piece.place
  const shift = add(add(drift, nudge), farther)
  const { play, position } = groupOf(part, piece.cell.group)
  const room = roomToMove(play.region, position)
  const inside = Object.values(room).some((way: number) => way > 0)
  const band = transformRegion(translation<'leaf'>(shift.x, shift.y), knownReach(play.region, piece))
  return {
    cell: piece.cell.id,
    cut: piece.cut,
    rough: cutFromLeaf(piece, [[piece.roughOnLeaf]]),
    finished: cutFromLeaf(piece, [[piece.windowOnLeaf]]),
    origin: placeOnLeaf(piece, originOnLeaf(piece.place)),
    band: cutFromLeaf(piece, band),
    room,
    inside,
  }
}

/** What of a region in the frame of the piece is cut from its own leaf, where it lies there. */
const cutFromLeaf = ({ made, leaf }: Piece, region: Region<'leaf'>): Region<'leaf'> =>
  made && region.length > 0
    ? made.parts.filter((part) => part.leaf === leaf?.number).flatMap((part) => backOnLeaf(region, part))
    : region

// the play stays the same object while the window is dragged, and so does the rough piece's shape
const reaches = new WeakMap<Region<'leaf'>, Map<string, Region<'leaf'>>>()

function knownReach(play: Region<'leaf'>, { rough }: Piece): Region<'leaf'> {
  const shape = rough.map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`).join(' ')
  const ofPlay = reaches.get(play) ?? new Map<string, Region<'leaf'>>()
  reaches.set(play, ofPlay)
  const found = ofPlay.get(shape) ?? reach(play, rough)
  ofPlay.set(shape, found)
  return found
}

/** The pieces of this leaf that are not the one in hand. */
export function takenFrom(
  other: DerivedPart,
  part: DerivedPart | null,
  { flitch, leaf: number }: LeafRef,
  inHand: Piece | null,
): readonly TakenPiece[] {
  const taken = other.pieces
    .filter((piece) => piece.flitch.id === flitch)
    .flatMap((piece) =>
      pieceParts(piece)
        .filter(({ leaf }) => leaf === number)
        .map(({ rough }) => ({ piece, rough })),
    )
  const pieces = new Set(taken.map(({ piece }) => piece.cell.id)).size
  const isOwn = other.part.id === part?.part.id
  return taken
    .filter(({ piece }) => !isOwn || piece.cell.id !== inHand?.cell.id)
    .flatMap(({ piece, rough }) =>
      rough.map(([ring]) => ({
        part: other.part.id,
        name: `${other.part.name}${pieces > 1 ? `, ${piece.cell.id}` : ''}${piece.cut ? ' (cut)' : ''}`,
        ring,
        cut: piece.cut,
      })),
    )
}

function leafLabel({ part }: DerivedPart, number: string, window: LeafWindow | null, unit: LengthUnit): string {
  if (!window) return `Leaf ${number}, no piece of ${part.name} lies on it.`
  const place = showLength(window.origin.y, unit, 'place')
  const whose = `${part.name}${isBorderPiece(window.cell) ? ', its border' : ''}`
  return `Leaf ${number} with the window of ${whose}, ${place} from the numbered end.${window.cut ? ' It is cut and fixed.' : ''} ${roomWords(window.room, unit)}`
}

const roomWords = (room: Room, unit: LengthUnit): string => {
  const say = (length: number) => bareLength(length, unit, 'place')
  return `Room to move: ${say(room.toNumberedEnd)} towards the numbered end, ${say(room.toFarEnd)} towards the far end, ${say(room.toLeft)} and ${say(room.toRight)} ${unit} across.`
}
