import { getContext, setContext } from 'svelte'
import { invariant } from '../core/invariant'
import type { LocalBase } from './local-base'
import { keepPhoto, keepPhotos, photoName, readPhoto } from './photos'

/**
 * The pictures that leaves have, by the hash of their content: kept in this browser, and held in memory where the
 * browser keeps nothing.
 */
export class PhotoShelf {
  readonly #held = new Map<string, Uint8Array>()

  constructor(private readonly base: () => LocalBase | null) {}

  /** Keeps a picture and gives its name. */
  async keep(bytes: Uint8Array<ArrayBuffer>, ending: 'webp' | 'jpg' | 'png'): Promise<string> {
    const name = await photoName(bytes, ending)
    const base = this.base()
    try {
      if (base) return await keepPhoto(base, bytes, ending)
    } catch {
      // a full browser: the picture lives as long as the page, and goes into the file when the job is saved
    }
    this.#held.set(name, bytes)
    return name
  }

  async read(name: string): Promise<Uint8Array | null> {
    const base = this.base()
    return this.#held.get(name) ?? (base ? await readPhoto(base, name) : null)
  }

  /** Those of some pictures that are there. */
  async readAll(names: Iterable<string>): Promise<ReadonlyMap<string, Uint8Array>> {
    const found = new Map<string, Uint8Array>()
    for (const name of names) {
      const bytes = await this.read(name)
      if (bytes) found.set(name, bytes)
    }
    return found
  }

  /** Keeps the pictures that came with a job. */
  async takeIn(photos: ReadonlyMap<string, Uint8Array>): Promise<void> {
    const base = this.base()
    try {
      if (base) return await keepPhotos(base, photos)
    } catch {
      // as above
    }
    for (const [name, bytes] of photos) this.#held.set(name, bytes)
  }
}

const KEY = Symbol('photo shelf')

export const providePhotoShelf = (shelf: PhotoShelf): void => {
  setContext(KEY, shelf)
}

export function usePhotoShelf(): PhotoShelf {
  const shelf = getContext<PhotoShelf | undefined>(KEY)
  invariant(shelf, 'there is nowhere to keep pictures here')
  return shelf
}
