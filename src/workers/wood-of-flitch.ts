import { DEMO_FLITCH, DEMO_LOG } from '../core/figure/demo-flitch'
import type { Flitch } from '../core/leaves/flitch'
import type { PhotoShelf } from '../store/photo-shelf'
import type { LeafPhotograph, WoodSource } from './wood-source'

/** Whether there are pictures of a flitch's leaves: its own photographs, or the demonstration's simulated log. */
export const hasPictures = ({ id, leaves }: Flitch): boolean =>
  id === DEMO_FLITCH || leaves.filter(({ picture }) => picture).length > 1

/** Where the pictures of a flitch come from; photographs are fetched from the shelf. */
export async function woodOfFlitch({ id, leaves }: Flitch, shelf: PhotoShelf): Promise<WoodSource> {
  const pictured = leaves.flatMap(({ number, picture }) => (picture ? [{ number, picture }] : []))
  if (pictured.length === 0 && id === DEMO_FLITCH) return { kind: 'log', options: DEMO_LOG }
  const found = new Map<number, LeafPhotograph>()
  for (const { number, picture } of pictured) {
    const bytes = await shelf.read(picture.hash)
    if (bytes) found.set(number, { picture, bytes: new Uint8Array(bytes) })
  }
  return { kind: 'photographs', leaves: found }
}
