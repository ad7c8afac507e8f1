import { DEMO_LOG, DEMO_FLITCH } from '../core/figure/demo-flitch'
import type { Flitch } from '../core/leaves/flitch'
import { openLocalBase } from '../store/local-base'
import { readPhoto } from '../store/photos'
import type { LeafPhotograph, WoodSource } from './wood-source'

/** Whether there are pictures of a flitch's leaves: its own photographs, or the demonstration's simulated log. */
export const hasPictures = ({ id, leaves }: Flitch): boolean =>
  id === DEMO_FLITCH || leaves.filter(({ picture }) => picture).length > 1

/** Where the pictures of a flitch come from; photographs are fetched from what this browser keeps. */
export async function woodOfFlitch({ id, leaves }: Flitch): Promise<WoodSource> {
  const pictured = leaves.flatMap(({ number, picture }) => (picture ? [{ number, picture }] : []))
  if (pictured.length === 0 && id === DEMO_FLITCH) return { kind: 'log', options: DEMO_LOG }
  const base = await openLocalBase()
  try {
    const found = new Map<number, LeafPhotograph>()
    for (const { number, picture } of pictured) {
      const bytes = await readPhoto(base, picture.hash)
      if (bytes) found.set(number, { picture, bytes: new Uint8Array(bytes) })
    }
    return { kind: 'photographs', leaves: found }
  } finally {
    base.close()
  }
}
