import { DEMO_FLITCH } from '../../core/figure/demo-flitch'
import type { LaidFace } from '../../core/fit/lay-face'
import { landmarkLooks, type LandmarkLook, type Sights } from '../../core/templates/viewfinder'
import type { PhotoShelf } from '../../store/photo-shelf'
import { landmarksAside } from '../../workers/landmark-door'
import type { TaskAside } from '../../workers/one-task'
import { woodOfFlitch } from '../../workers/wood-of-flitch'

/** The landmarks of a face's windows, looked for beside the page when its viewfinders are to be printed. */
export class ViewfinderWork {
  /** 0 to 1 while pictures are being looked at, else null. */
  share = $state.raw<number | null>(null)
  #found = $state.raw<{ readonly of: string; readonly sights: Sights } | null>(null)
  #seeking: string | null = null
  #task: TaskAside<Sights> | null = null

  constructor(private readonly shelf: PhotoShelf) {}

  /** What was found for a face as it lies now; null while that is not known. */
  sightsOf(face: LaidFace): Sights | null {
    return this.#found?.of === nameOf(face) ? this.#found.sights : null
  }

  /** Looks at the windows of a face, once as they lie; what was being looked at before is given up. */
  async seek(face: LaidFace): Promise<void> {
    const of = nameOf(face)
    if (this.#found?.of === of || this.#seeking === of) return
    this.stop()
    this.#seeking = of
    try {
      const sights = await this.#sights(face, landmarkLooks(face), () => this.#seeking === of)
      if (sights && this.#seeking === of) this.#found = { of, sights }
    } finally {
      if (this.#seeking === of) this.#ended()
    }
  }

  stop(): void {
    this.#task?.stop()
    this.#ended()
  }

  async #sights(face: LaidFace, looks: readonly LandmarkLook[], isWanted: () => boolean): Promise<Sights | null> {
    if (looks.length === 0 || !hasAnyPicture(face)) return new Map()
    this.share = 0
    const source = await woodOfFlitch(face.flitch, this.shelf)
    if (!isWanted()) return null
    this.#task = landmarksAside(source, looks, (done) => (this.share = done))
    return this.#task.done
  }

  #ended(): void {
    this.#seeking = null
    this.#task = null
    this.share = null
  }
}

export const hasAnyPicture = ({ flitch: { id, leaves } }: LaidFace): boolean =>
  id === DEMO_FLITCH || leaves.some(({ picture }) => picture !== null)

/** The same as long as the same windows lie at the same places of the same pictures. */
function nameOf(face: LaidFace): string {
  const windows = landmarkLooks(face).map(({ cell, leaf, window, knots }) => [cell, leaf, window, knots])
  const pictures = face.flitch.leaves.map(({ number, picture }) => [number, picture])
  return JSON.stringify([face.flitch.id, windows, pictures])
}
