import type { Box } from '../core/geometry/box'
import type { Room } from '../core/fit/room-to-move'
import type { Point } from '../core/geometry/point'
import type { Edge, Region, Ring } from '../core/geometry/polygon'
import type { Transform } from '../core/geometry/transform'
import type { CellId, DefectId, PartId } from '../core/ids'
import type { Cut, Flitch } from '../core/leaves/flitch'
import type { Defect, DefectKind, DefectShape, LeafState } from '../core/leaves/leaf'
import type { LengthUnit } from '../core/units/unit'

/**
 * What the boards draw (scenes: plain data, made anew at every change, never altered) and what they tell (handlers).
 * Lengths are mm in the space of their type; what belongs to the screen is px.
 */

/** The picture of one side of a leaf, in the leaf's frame. */
export interface SidePicture {
  readonly bitmap: ImageBitmap | HTMLCanvasElement | OffscreenCanvas
  readonly pxPerMm: number
  /** Where the top left corner of the picture lies on the leaf. */
  readonly origin: Point<'leaf'>
}

/** The picture of a leaf: its numbered side. */
export interface LeafPicture extends SidePicture {
  /** The side that shows when the leaf is turned over; if left out, the numbered side is seen through the leaf. */
  readonly other?: SidePicture
}

/** Pictures by leaf number; a leaf that has none is drawn with lines of grain. */
export type LeafPictures = ReadonlyMap<number, LeafPicture>

/** The pictures of a flitch's leaves, null where it has none: a face may be cut from two flitches. */
export type PicturesOf = (flitch: Flitch) => LeafPictures | null

/** Every colour a board uses, as CSS colours; `boardColours(element)` reads them from the theme. */
export interface BoardColours {
  readonly dark: boolean
  readonly ground: string
  readonly sheet: string
  readonly ink: string
  readonly inkSoft: string
  readonly line: string
  readonly act: string
  readonly onAct: string
  readonly note: string
  readonly onNote: string
  readonly good: string
  /** Bare wood and its grain, where there is no picture. */
  readonly wood: string
  readonly woodEdge: string
  readonly grain: string
  /** The tag of a leaf with its numbered side up, and of one turned over. */
  readonly tagUp: string
  readonly onTagUp: string
  readonly tagDown: string
  readonly onTagDown: string
  readonly font: string
}

/** What can be pointed at on a board. */
export type BoardTarget =
  | { readonly kind: 'cell'; readonly cell: CellId }
  | { readonly kind: 'seam'; readonly letter: string }
  | { readonly kind: 'finding'; readonly number: number }
  | { readonly kind: 'leaf'; readonly leaf: number }
  | { readonly kind: 'part'; readonly part: PartId }
  | { readonly kind: 'defect'; readonly defect: DefectId }

/**
 * A drag of the window that a piece shares. `by` is how far the window has come on its leaf since the drag began (not since the last
 * call); at `cancel` it is 0, 0 and everything is to be as before. At most one `move` comes in a frame.
 */
export interface WindowDrag {
  /** The piece that was taken hold of. */
  readonly cell: CellId
  readonly by: Point<'leaf'>
  readonly phase: 'move' | 'end' | 'cancel'
}

/** What every board that shows more than fits can do. */
export interface Board<Scene> {
  /** Shows another scene; the view stays unless the outer size has changed. */
  update(scene: Scene): void
  /** Shows everything, as large as the room allows. */
  fit(): void
  /** Nearer (above 1) or farther, about the middle of the board. */
  zoomBy(factor: number): void
  destroy(): void
}

// ---------------------------------------------------------------------------------------------------- the face

export interface FaceHandlers {
  readonly onWindowDrag?: (drag: WindowDrag) => void
  /** The leaves of two cells are to change places. */
  readonly onSwap?: (one: CellId, other: CellId) => void
  /** null: clicked beside everything. */
  readonly onSelect?: (target: BoardTarget | null) => void
  /** A spot of the face was pointed at; true when that was an answer to a question and picks nothing. */
  readonly onSpot?: (at: Point<'panel'>) => boolean
  /** A part that hangs beside the face was pointed at. */
  readonly onBeside?: (part: PartId) => void
}

export interface FaceScene {
  /** What a screen reader says of the drawing. */
  readonly label: string
  /** Shown with the grain lying, the numbered end to the left. */
  readonly lying: boolean
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly finished: Box<'panel'>
  readonly core: Box<'panel'>
  readonly sheet: Box<'panel'>
  /** What they are cut to, each within its box. */
  readonly outlines: {
    readonly finished: { readonly ring: Ring<'panel'> }
    readonly core: { readonly ring: Ring<'panel'> }
    readonly sheet: { readonly ring: Ring<'panel'> }
  }
  /** Where seams round a centre meet. */
  readonly centre: Point<'panel'>
  readonly cells: readonly FaceCell[]
  readonly seams: readonly FaceSeam[]
  readonly string: FaceString | null
  /** Finished columns from left to right, for the chain of dimensions. */
  readonly columns: readonly { readonly from: number; readonly to: number }[]
  readonly markers: readonly FaceMarker[]
  readonly selected: BoardTarget | null
  /** Whether the outline of the rest of each leaf shows. */
  readonly showLeaves: boolean
  /** A spot that is asked about. */
  readonly spot: FaceSpot | null
  /** Drawn as it will be seen: trimmed, without seams, numbers and sizes. */
  readonly finishedLook: boolean
  /** Other parts that hang beside it, where they hang: one across each gap. */
  readonly beside: readonly FaceBeside[]
}

/** A part across a gap, in the frame of the face that is shown. */
export interface FaceBeside {
  readonly part: PartId
  readonly name: string
  readonly cells: readonly FaceCell[]
  readonly seams: readonly FaceSeam[]
  readonly finished: Ring<'panel'>
  readonly sheet: Ring<'panel'>
}

export interface FaceSpot {
  readonly at: Point<'panel'>
  readonly radius: number
  readonly words: string
}

export interface FaceCell {
  readonly id: CellId
  readonly ring: Ring<'panel'>
  /** null where the run has come to the end of the flitch. */
  readonly leaf: number | null
  readonly turnedOver: boolean
  readonly leafToPanel: Transform<'leaf', 'panel'>
  readonly wood: LeafWood
  /** A made-up leaf: what it is joined from, in place of the wood. */
  readonly made: FaceMade | null
  /** How much lighter (above 0) or darker it shines than it is, from -1 to 1. */
  readonly shine: number
}

/** The parts of a made-up leaf and the joints between them. */
export interface FaceMade {
  /** In the frame of the made-up leaf. */
  readonly outline: Ring<'leaf'>
  readonly parts: readonly {
    readonly region: Region<'leaf'>
    readonly leafToPanel: Transform<'leaf', 'panel'>
    readonly wood: LeafWood
  }[]
  readonly joints: readonly Edge<'panel'>[]
}

/** What is needed to draw the wood of a leaf. */
export interface LeafWood {
  readonly outline: Ring<'leaf'>
  readonly cut: Cut
  /** Place in the sequence, from 0: the drawn grain wanders a little from leaf to leaf. */
  readonly place: number
  readonly defects: readonly Defect[]
  readonly picture: LeafPicture | null
}

export interface FaceSeam {
  readonly letter: string
  readonly edge: Edge<'panel'>
  /** Points along it: its two ends where it is straight. */
  readonly line: readonly Point<'panel'>[]
  readonly round: boolean
  /** Of a border, where no match is asked for. */
  readonly band: 'border' | 'corner' | 'segment' | null
  readonly meets: 'mirrors' | 'repeats' | 'breaks'
  /** mm; 0 for the two faces of one knife cut, null where a leaf is missing. */
  readonly depthOffset: number | null
  readonly jump: number
}

/** The line of other wood between border and field. */
export interface FaceString {
  readonly outside: Ring<'panel'>
  readonly inside: Ring<'panel'>
}

/** A numbered remark at its place. */
export interface FaceMarker {
  readonly number: number
  readonly grade: 'note' | 'wrong' | 'good'
  readonly at: Point<'panel'>
}

// ---------------------------------------------------------------------------------------------------- the leaf

export interface LeafHandlers {
  readonly onWindowDrag?: (drag: WindowDrag) => void
  /** The piece of another part, or a defect. */
  readonly onSelect?: (target: BoardTarget | null) => void
}

/** One leaf, lying with its numbered end to the left. */
export interface LeafScene {
  readonly label: string
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly number: number
  readonly wood: LeafWood
  readonly usable: Region<'leaf'>
  /** null where the part takes no window on this leaf. */
  readonly window: LeafWindow | null
  /** What other pieces take of this leaf. */
  readonly taken: readonly TakenPiece[]
  /** Lines to cut along before the piece is cut, with a strip of loss on both sides. */
  readonly cuts: readonly Edge<'leaf'>[]
  readonly selected: BoardTarget | null
}

export interface LeafWindow {
  readonly cell: CellId
  /** The piece has been cut, and is fixed. */
  readonly cut: boolean
  /** Where it is really cut: of a made-up leaf the parts that are cut from this leaf. */
  readonly rough: Region<'leaf'>
  readonly finished: Region<'leaf'>
  /** Where the window's origin lies. */
  readonly origin: Point<'leaf'>
  /** Everything the window may come to cover within its room; empty where there is none. */
  readonly band: Region<'leaf'>
  readonly room: Room
  /** Whether the window lies where all pieces of the face are in sound wood. */
  readonly inside: boolean
}

export interface TakenPiece {
  readonly part: PartId
  /** Name of the part, and of the cell where one part takes several pieces of the leaf. */
  readonly name: string
  readonly ring: Ring<'leaf'>
  /** It has been cut out already. */
  readonly cut: boolean
}

// ---------------------------------------------------------------------------------------------------- the flitch

export interface FlitchHandlers {
  readonly onSelect?: (target: BoardTarget | null) => void
}

/** Leaves one under another in their sequence, numbered ends to the left. */
export interface FlitchScene {
  readonly label: string
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly leaves: readonly FlitchLeaf[]
  /** Leaves known to be missing, after the leaf of this number. */
  readonly missing: readonly { readonly after: number; readonly count: number }[]
  /** Leaf number. */
  readonly selected: number | null
}

export interface FlitchLeaf {
  readonly number: number
  readonly wood: LeafWood
  readonly state: LeafState
  readonly width: number
  readonly length: number
  readonly note: string
  readonly taken: readonly TakenPiece[]
}

// ---------------------------------------------------------------------------------------------------- the outline

/** How a pointer draws on an outline board. */
export type OutlineTool = 'outline' | 'spot' | 'split' | 'area' | 'select'

export interface OutlineHandlers {
  /** A new outline; `move` while dragging, once `end` (one step of undo), or `cancel`. */
  readonly onOutline?: (change: { readonly ring: Ring<'leaf'>; readonly phase: 'move' | 'end' | 'cancel' }) => void
  /** A new defect has been drawn. */
  readonly onDefectAdd?: (drawn: { readonly kind: DefectKind; readonly shape: DefectShape }) => void
  /** A defect has been moved or reshaped. */
  readonly onDefectChange?: (change: {
    readonly defect: DefectId
    readonly shape: DefectShape
    readonly phase: 'move' | 'end' | 'cancel'
  }) => void
  readonly onDefectRemove?: (defect: DefectId) => void
  readonly onSelect?: (target: BoardTarget | null) => void
  /** Words for a live region: which point has the focus and where it lies. */
  readonly onSay?: (words: string) => void
}

export interface OutlineScene {
  readonly label: string
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly number: number | null
  readonly outline: Ring<'leaf'>
  /** Edges of it that could not be told from the table and have not been moved since: drawn dashed. */
  readonly unsure: readonly Edge<'leaf'>[]
  readonly wood: LeafWood
  readonly tool: OutlineTool
  /** The kind given to a spot or an area that is drawn; a line is a split. */
  readonly drawnKind: DefectKind
  readonly selected: BoardTarget | null
}

// ---------------------------------------------------------------------------------------------------- the parts

export interface PartsHandlers {
  readonly onSelect?: (target: BoardTarget | null) => void
}

/** Parts at one scale, side by side. */
export interface PartsScene {
  readonly label: string
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly parts: readonly PartFace[]
  readonly selected: PartId | null
}

export interface PartFace {
  readonly id: PartId
  readonly name: string
  readonly lying: boolean
  readonly finished: Box<'panel'>
  readonly sheet: Box<'panel'>
  /** The finished panel, within its box. */
  readonly outline: Ring<'panel'>
  readonly cells: readonly FaceCell[]
  readonly seams: readonly FaceSeam[]
  readonly string: FaceString | null
  /** A word under the name, such as `show` or `hidden`. */
  readonly remark: string
}
