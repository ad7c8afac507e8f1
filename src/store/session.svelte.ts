import type { Point } from '../core/geometry/point'
import type { Edge } from '../core/geometry/polygon'
import type { CellId, DefectId, FlitchId, LeafRef, PartId } from '../core/ids'

export type Station = 'flitch' | 'parts' | 'face' | 'cutting' | 'press'

/** What has been picked on a drawing. */
export type Selected =
  | { readonly on: 'cell'; readonly cell: CellId }
  | { readonly on: 'seam'; readonly letter: string }
  | { readonly on: 'leaf'; readonly leaf: LeafRef }
  | { readonly on: 'defect'; readonly leaf: LeafRef; readonly defect: DefectId }

/** How a board is looked at: what lies in its middle, and screen pixels for a mm. */
export interface BoardView {
  readonly centre: Point<'panel'>
  readonly scale: number
}

/** How a finished face is looked at. */
export interface FinishedLook {
  /** How much leaves that lie the other side up shine unlike the others: 0 none, 1 as much as it can be. */
  readonly shine: number
  readonly lightFrom: LightFrom
}

/** On the drawing, whichever way the face lies. */
export type LightFrom = 'top' | 'right' | 'bottom' | 'left'

/** Where the person is and what is picked: never saved, never undone. */
export class Session {
  #station: Station = $state('face')
  #part: PartId | null = $state(null)
  #flitch: FlitchId | null = $state(null)

  /** Belongs to the part and the station: going elsewhere lets it go. */
  selected: Selected | null = $state.raw(null)

  /** null: the whole face fills the board. */
  view: BoardView | null = $state.raw(null)

  /** Whether pointing at a face asks where the wood of the spot came from. */
  asksForPatch: boolean = $state(false)
  /** The spot asked about; belongs to the part. */
  patchAt: Point<'panel'> | null = $state.raw(null)
  patchWidth: number = $state(20)

  /** null: with seams, numbers and sizes, as it is worked on. */
  finishedLook: FinishedLook | null = $state.raw(null)

  #unsure: ReadonlyMap<string, readonly Edge<'leaf'>[]> = $state.raw(new Map())

  /** Keeps which edges of a leaf's outline could not be told from the table when its photograph was taken. */
  setUnsure({ flitch, leaf }: LeafRef, edges: readonly Edge<'leaf'>[]): void {
    this.#unsure = new Map(this.#unsure).set(`${flitch} ${leaf}`, edges)
  }
  /** As they were then: the outline may have been changed since. */
  unsureOf({ flitch, leaf }: LeafRef): readonly Edge<'leaf'>[] {
    return this.#unsure.get(`${flitch} ${leaf}`) ?? []
  }

  get station(): Station {
    return this.#station
  }
  set station(station: Station) {
    if (station !== this.#station) this.selected = null
    this.#station = station
  }

  /** The part worked on; it may have gone from the job since. */
  get part(): PartId | null {
    return this.#part
  }
  set part(part: PartId | null) {
    if (part === this.#part) return
    this.selected = null
    this.view = null
    this.patchAt = null
    this.#part = part
  }

  /** The flitch looked at; null for that of the part. */
  get flitch(): FlitchId | null {
    return this.#flitch
  }
  set flitch(flitch: FlitchId | null) {
    if (flitch !== this.#flitch) this.selected = null
    this.#flitch = flitch
  }
}
