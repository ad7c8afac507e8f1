import type { Flitch } from '../core/leaves/flitch'
import type { StoredPicture } from '../core/leaves/leaf'
import type { PhotoShelf } from '../store/photo-shelf'
import type { SideFigure } from './side-figure'

/** Pixels a millimetre at which the photographs of all leaves are held: a flitch fills a large screen with it. */
const COARSE_SCALE = 0.5

/**
 * The photographs of leaves: of all of them a coarse picture, as fine as they were kept of those that are looked at. A
 * picture of a leaf takes 8 MB as it was kept, and there may be a hundred leaves.
 */
export class PhotoFigures {
  #coarse = $state.raw<ReadonlyMap<string, ImageBitmap>>(new Map())
  #sharp = $state.raw<ReadonlyMap<string, ImageBitmap>>(new Map())
  /** What of the sharp ones is there, or on its way (null): by the names of the pictures. */
  readonly #held = new Map<string, ImageBitmap | null>()
  readonly #asked = new Set<string>()

  constructor(private readonly shelf: PhotoShelf) {}

  /** Fetches coarse pictures of a flitch's leaves, those that are not there yet. */
  async show({ leaves }: Flitch): Promise<void> {
    for (const { picture } of leaves) {
      if (!picture || this.#asked.has(picture.hash)) continue
      this.#asked.add(picture.hash)
      const bitmap = await this.#decoded(picture, Math.min(1, COARSE_SCALE * picture.mmPerPx))
      if (bitmap) this.#coarse = new Map(this.#coarse).set(picture.hash, bitmap)
    }
  }

  /** Fetches these pictures as they were kept, and lets all others go. */
  async sharpen(pictures: readonly StoredPicture[]): Promise<void> {
    const wanted = new Set(pictures.map(({ hash }) => hash))
    for (const hash of this.#held.keys()) if (!wanted.has(hash)) this.#held.delete(hash)
    const missing = pictures.filter(({ hash }) => !this.#held.has(hash))
    for (const { hash } of missing) this.#held.set(hash, null)
    this.#tell()
    for (const picture of missing) {
      // it may have been let go meanwhile
      if (this.#held.get(picture.hash) !== null) continue
      const bitmap = await this.#decoded(picture, 1)
      if (!bitmap || this.#held.get(picture.hash) !== null) continue
      this.#held.set(picture.hash, bitmap)
      this.#tell()
    }
  }

  /** The best that is there of a picture, null for nothing yet. */
  of({ hash, width, mmPerPx, origin }: StoredPicture): SideFigure | null {
    const bitmap = this.#sharp.get(hash) ?? this.#coarse.get(hash)
    return bitmap ? { bitmap, origin, pxPerMm: bitmap.width / (width * mmPerPx) } : null
  }

  #told = ''
  /** Only when something has changed: all boards are drawn anew then. */
  #tell(): void {
    const there = [...this.#held].flatMap(([hash, bitmap]) => (bitmap ? [[hash, bitmap] as const] : []))
    const names = there.map(([hash]) => hash).join(' ')
    if (names === this.#told) return
    this.#told = names
    this.#sharp = new Map(there)
  }

  async #decoded({ hash, width, height }: StoredPicture, share: number): Promise<ImageBitmap | null> {
    const bytes = await this.shelf.read(hash)
    if (!bytes) return null
    const size = {
      resizeWidth: Math.max(1, Math.round(width * share)),
      resizeHeight: Math.max(1, Math.round(height * share)),
    }
    try {
      const blob = new Blob([bytes as Uint8Array<ArrayBuffer>])
      return await createImageBitmap(blob, share < 1 ? { ...size, resizeQuality: 'medium' } : {})
    } catch {
      // a picture that this browser can't show: the leaf is drawn with plain grain
      return null
    }
  }
}
