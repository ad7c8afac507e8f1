import { takeFromPhoto, type FromPhoto } from '../../core/commands/photo-commands'
import type { HowTheyLie, MarkRectangle } from '../../core/figure/photo/photo-view'
import { boxAround } from '../../core/geometry/box'
import { point, subtract, type Point } from '../../core/geometry/point'
import { ringEdges, type Edge, type Ring } from '../../core/geometry/polygon'
import type { FlitchId } from '../../core/ids'
import type { Defect } from '../../core/leaves/leaf'
import type { PhotoShelf } from '../../store/photo-shelf'
import type { Workshop } from '../../store/workshop.svelte'
import { createPhotoDoor, type PhotoDoor } from '../../workers/photo-door'
import type { PhotoTrouble, ReadPhoto, Share } from '../../workers/photo-worker'
import { newId } from './new-id'

/** One photograph on its way to a leaf. */
export interface PhotoItem {
  readonly id: number
  readonly file: File
  /** The photograph as it is, to be looked at. */
  readonly url: string
  readonly leaf: number
  readonly corners: readonly Share[] | null
  readonly state: PhotoState
}

export type PhotoState =
  | { readonly is: 'waiting'; readonly share: number }
  | { readonly is: 'read'; readonly photo: ReadPhoto; readonly picture: string; readonly accepted: readonly string[] }
  | { readonly is: 'refused'; readonly trouble: PhotoTrouble }
  | { readonly is: 'failed'; readonly why: string }
  | { readonly is: 'stopped' }
  | { readonly is: 'taken' }

/** Photographs being read, looked at and taken, one a leaf. */
export class PhotoImport {
  items = $state.raw<readonly PhotoItem[]>([])
  rectangle: MarkRectangle = $state.raw({ across: 500, along: 2600, diagonal: null })
  lie: HowTheyLie = $state.raw({ sideUp: 'numbered', dotAt: 'numbered end' })
  #nextId = 1
  readonly #door: PhotoDoor

  constructor(
    private readonly workshop: Workshop,
    private readonly shelf: PhotoShelf,
    private readonly flitch: () => FlitchId,
    door: PhotoDoor = createPhotoDoor(),
  ) {
    this.#door = door
  }

  readonly isBusy = $derived.by(() => this.items.some(({ state }) => state.is === 'waiting'))

  /** Takes photographs in their order, for the leaf given and those after it. */
  add(files: readonly File[], firstLeaf: number): void {
    const added = files.map((file, i): PhotoItem => ({
      id: this.#nextId++,
      file,
      url: URL.createObjectURL(file),
      leaf: firstLeaf + i,
      corners: null,
      state: { is: 'waiting', share: 0 },
    }))
    this.items = [...this.items, ...added]
    for (const item of added) void this.#read(item)
  }

  /** Reads a photograph again, by corners that were tapped, or with other sizes. */
  readAgain(item: PhotoItem, corners: readonly Share[] | null): void {
    if (item.state.is === 'read') URL.revokeObjectURL(item.state.picture)
    const again: PhotoItem = { ...item, corners, state: { is: 'waiting', share: 0 } }
    this.#put(again)
    void this.#read(again)
  }

  setLeaf(item: PhotoItem, leaf: number): void {
    this.#put({ ...item, leaf })
  }

  /** Accepts or dismisses something proposed. */
  setAccepted(item: PhotoItem, defect: string, isAccepted: boolean): void {
    if (item.state.is !== 'read') return
    const others = item.state.accepted.filter((id) => id !== defect)
    this.#put({ ...item, state: { ...item.state, accepted: isAccepted ? [...others, defect] : others } })
  }

  drop(item: PhotoItem): void {
    URL.revokeObjectURL(item.url)
    if (item.state.is === 'read') URL.revokeObjectURL(item.state.picture)
    this.items = this.items.filter(({ id }) => id !== item.id)
  }

  stop(): void {
    this.#door.cancel()
  }

  /** Gives the leaf its picture, its outline and what was accepted: one step. */
  async take(item: PhotoItem): Promise<void> {
    if (item.state.is !== 'read') return
    const { photo, accepted } = item.state
    const hash = await this.shelf.keep(photo.picture, photo.ending)
    const told = toldOf(photo, hash, accepted)
    const next = takeFromPhoto(this.workshop.job, { flitch: this.flitch(), leaf: item.leaf }, told)
    if (!this.workshop.act(`Leaf ${item.leaf}: its photograph`, next)) return
    URL.revokeObjectURL(item.state.picture)
    this.workshop.session.setUnsure({ flitch: this.flitch(), leaf: item.leaf }, unsureEdges(photo, told.outline ?? []))
    this.#put({ ...item, state: { is: 'taken' } })
  }

  async #read(item: PhotoItem): Promise<void> {
    // corners are tapped by their names: those say themselves which is the numbered end
    const lie: HowTheyLie = item.corners ? { ...this.lie, dotAt: 'numbered end' } : this.lie
    const wanted = { file: item.file, rectangle: this.rectangle, lie, corners: item.corners }
    try {
      const result = await this.#door.read(wanted, (share) => this.#update(item.id, { is: 'waiting', share }))
      if (result.outcome === 'cancelled') this.#update(item.id, { is: 'stopped' })
      else if (result.outcome === 'refused') this.#update(item.id, { is: 'refused', trouble: result.trouble })
      else this.#update(item.id, this.#shown(result.photo))
    } catch (error) {
      this.#update(item.id, { is: 'failed', why: error instanceof Error ? error.message : String(error) })
    }
  }

  #shown(photo: ReadPhoto): PhotoState {
    return { is: 'read', photo, picture: URL.createObjectURL(photo.preview), accepted: [] }
  }

  #update(id: number, state: PhotoState): void {
    this.items = this.items.map((item) => (item.id === id ? { ...item, state } : item))
  }

  #put(changed: PhotoItem): void {
    this.items = this.items.map((item) => (item.id === changed.id ? changed : item))
  }
}

const works = new WeakMap<Workshop, Map<FlitchId, PhotoImport>>()

/**
 * The photographs of a flitch on their way, one set as long as the page lives: what has been read, and how the marks lay,
 * is still there when a leaf or another station has been looked at.
 */
export function photoImportOf(workshop: Workshop, shelf: PhotoShelf, flitch: FlitchId): PhotoImport {
  const ofFlitches = works.get(workshop) ?? new Map<FlitchId, PhotoImport>()
  works.set(workshop, ofFlitches)
  const work = ofFlitches.get(flitch) ?? new PhotoImport(workshop, shelf, () => flitch)
  ofFlitches.set(flitch, work)
  return work
}

/** What a leaf gets: everything moved so that its outline begins at 0 both ways. */
function toldOf(photo: ReadPhoto, hash: string, accepted: readonly string[]): FromPhoto {
  const { frame, outline: found, proposed } = photo
  const outline = found.ok ? found.value.outline : null
  const start = outline ? boxAround(outline).min : frame.origin
  const moved = (p: Point<'leaf'>) => rounded(subtract(p, start))
  const defects = proposed.filter(({ id }) => accepted.includes(id)).map((defect) => movedDefect(defect, moved))
  return {
    picture: {
      hash,
      width: frame.width,
      height: frame.height,
      mmPerPx: frame.mmPerPx,
      origin: moved(frame.origin),
    },
    outline: outline ? outline.map(moved) : null,
    defects,
  }
}

function unsureEdges({ outline: found }: ReadPhoto, taken: Ring<'leaf'>): readonly Edge<'leaf'>[] {
  return found.ok ? ringEdges(taken).filter((_, i) => found.value.unsure[i]) : []
}

const rounded = ({ x, y }: Point<'leaf'>): Point<'leaf'> => point(Math.round(x * 100) / 100, Math.round(y * 100) / 100)

function movedDefect(defect: Defect, moved: (p: Point<'leaf'>) => Point<'leaf'>): Defect {
  const id = newId('defect')
  if (defect.shape === 'spot') return { ...defect, id, centre: moved(defect.centre) }
  if (defect.shape === 'line') return { ...defect, id, from: moved(defect.from), to: moved(defect.to) }
  return { ...defect, id, ring: defect.ring.map(moved) }
}
