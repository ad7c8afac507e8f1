import type { Box } from '../core/geometry/box'
import { DEMO_FLITCH } from '../core/figure/demo-flitch'
import type { Flitch } from '../core/leaves/flitch'
import type { PhotoShelf } from '../store/photo-shelf'
import { createFigureDoor, FIRST_SCALE, THUMBNAIL_SCALE, type FigureDoor } from '../workers/figure-door'
import { PhotoFigures } from './photo-figures.svelte'
import type { SideFigure } from './side-figure'

/** The picture of a leaf's numbered side, and that of its other side where there is one. */
export interface LeafFigure extends SideFigure {
  readonly other?: SideFigure
}

/** A side of a leaf that a face shows. */
export interface ShownSide {
  readonly leaf: number
  readonly turnedOver: boolean
}

/** Pixels a millimetre of a sharp picture: a door fills a large screen with it. */
const SHARP_SCALE = 1.25

/**
 * Pictures of the leaves of the demonstration flitch: coarse ones of all, sharp ones of those that a face shows. Painted
 * beside the page; what is not there yet is drawn as plain grain.
 */
export class Figures {
  readonly photos: PhotoFigures

  constructor(shelf: PhotoShelf) {
    this.photos = new PhotoFigures(shelf)
  }

  /** What is known of the figure of a flitch's leaves, by leaf: photographs, else what is painted; null for none. */
  of(flitch: Flitch): ReadonlyMap<number, LeafFigure> | null {
    const found = new Map<number, LeafFigure>(flitch.id === DEMO_FLITCH ? this.#painted : [])
    for (const { number, picture } of flitch.leaves) {
      const photo = picture ? this.photos.of(picture) : null
      if (photo) found.set(number, photo)
    }
    return found.size > 0 ? found : null
  }

  /**
   * By the cut of the knife that laid it bare: cut n is the numbered side of leaf n and the other side of leaf n − 1, in one
   * frame. So two faces of one cut are one picture, and meet at their seam.
   */
  #cuts = $state.raw<ReadonlyMap<number, SideFigure>>(new Map())
  readonly #painted = $derived.by(() => {
    const leaves = [...this.#cuts].filter(([cut]) => cut <= this.#last)
    return leaves.map(([leaf, figure]): [number, LeafFigure] => {
      const other = this.#cuts.get(leaf + 1)
      return [leaf, other ? { ...figure, other } : figure]
    })
  })
  #last = 0
  #door: FigureDoor | null = null
  #frame: Box<'leaf'> | null = null
  readonly #sharp = new Set<number>()

  /** Starts painting coarse pictures of these leaves, once, quickly and then better; those that are shown first of all. */
  async begin(leaves: readonly number[], shown: readonly ShownSide[]): Promise<void> {
    if (this.#door) return
    const door = createFigureDoor()
    this.#door = door
    this.#last = Math.max(...leaves)
    try {
      const frame = await door.frame
      this.#frame = frame
      const wanted = new Set(cutsOf(shown))
      const [first, others] = [leaves.filter((leaf) => wanted.has(leaf)), leaves.filter((leaf) => !wanted.has(leaf))]
      for (const scale of [FIRST_SCALE, THUMBNAIL_SCALE]) {
        const paint = (leaf: number) => door.thumbnail(leaf, scale)
        const shownFirst = first.map(async (leaf) => this.#show([[leaf, await paint(leaf)]], scale, frame))
        // each time that pictures come all boards are drawn anew: those that no face shows come together
        const rest = Promise.all(others.map(async (leaf) => [leaf, await paint(leaf)] as const))
        await Promise.all([...shownFirst, rest.then((painted) => this.#show(painted, scale, frame))])
      }
    } catch {
      // without a worker the wood stays plain grain, and is not tried again: nothing else depends on it
    }
  }

  /** Paints these sides sharp, those that are not yet; then the numbered sides of their leaves, which are cut from. */
  async sharpen(sides: readonly ShownSide[]): Promise<void> {
    const door = this.#door
    const frame = this.#frame
    if (!door || !frame) return
    for (const cut of cutsOf(sides)) {
      if (this.#sharp.has(cut)) continue
      this.#sharp.add(cut)
      const picture = { pxPerMm: SHARP_SCALE, box: null }
      const bitmap = await (cut > this.#last
        ? door.sharp(cut - 1, { ...picture, face: 'other' })
        : door.sharp(cut, picture))
      if (bitmap) this.#show([[cut, bitmap]], SHARP_SCALE, frame)
      else this.#sharp.delete(cut)
    }
  }

  #show(
    painted: readonly (readonly [cut: number, bitmap: ImageBitmap])[],
    pxPerMm: number,
    { min }: Box<'leaf'>,
  ): void {
    const finer = ([cut]: readonly [number, ImageBitmap]) => (this.#cuts.get(cut)?.pxPerMm ?? 0) < pxPerMm
    const cuts = new Map(this.#cuts)
    for (const [cut, bitmap] of painted.filter(finer)) cuts.set(cut, { bitmap, pxPerMm, origin: min })
    this.#cuts = cuts
  }
}

/** The cuts that these sides show, then those of the numbered sides, which are cut from. */
const cutsOf = (sides: readonly ShownSide[]): readonly number[] => [
  ...sides.map(({ leaf, turnedOver }) => leaf + (turnedOver ? 1 : 0)),
  ...sides.map(({ leaf }) => leaf),
]

/** The pictures of a flitch's leaves, as an option of a scene; none for leaves that have none. */
export function picturesFor(
  figures: Figures,
  flitch: Flitch | null,
): { readonly pictures?: ReadonlyMap<number, LeafFigure> } {
  const pictures = flitch && figures.of(flitch)
  return pictures ? { pictures } : {}
}
