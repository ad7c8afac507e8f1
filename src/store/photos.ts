import type { LocalBase } from './local-base'

/** Keeps a photo and gives its name: the hash of its content, so that the same photo is kept once. */
export async function keepPhoto(
  base: LocalBase,
  bytes: Uint8Array<ArrayBuffer>,
  ending: 'webp' | 'jpg' | 'png',
): Promise<string> {
  const name = await photoName(bytes, ending)
  await base.put('photos', bytes, name)
  return name
}

/** What a picture is called: the hash of its content, and its kind. */
export async function photoName(bytes: Uint8Array<ArrayBuffer>, ending: string): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return `${[...hash.slice(0, 16)].map((byte) => byte.toString(16).padStart(2, '0')).join('')}.${ending}`
}

export const readPhoto = async (base: LocalBase, name: string): Promise<Uint8Array | null> =>
  (await base.get('photos', name)) ?? null

/** Those of some photos that are there. */
export async function readPhotos(base: LocalBase, names: Iterable<string>): Promise<Map<string, Uint8Array>> {
  const photos = new Map<string, Uint8Array>()
  for (const name of names) {
    const bytes = await readPhoto(base, name)
    if (bytes) photos.set(name, bytes)
  }
  return photos
}

/** Keeps the photos that came with a job, all or none. */
export async function keepPhotos(base: LocalBase, photos: ReadonlyMap<string, Uint8Array>): Promise<void> {
  const transaction = base.transaction('photos', 'readwrite')
  await Promise.all([...photos].map(([name, bytes]) => transaction.store.put(bytes, name)))
  await transaction.done
}
