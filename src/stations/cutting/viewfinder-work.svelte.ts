import { DEMO_FLITCH } from '../../core/figure/demo-flitch'
import { flitchesOf, type LaidFace } from '../../core/fit/lay-face'
import type { CellId } from '../../core/ids'
import type { Flitch } from '../../core/leaves/flitch'
import { landmarkLooks, type LandmarkLook, type Sight, type Sights } from '../../core/templates/viewfinder'
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
    const sights = new Map<CellId, Sight>()
    // field and border may be cut from a flitch each
    for (const flitch of flitchesOf(face).filter(isPictured)) {
      const own = looks.filter((look) => look.flitch === flitch.id)
      const source = await woodOfFlitch(flitch, this.shelf)
      if (!isWanted()) return null
      this.#task = landmarksAside(
        source,
        own,
        (done) => (this.share = (sights.size + done * own.length) / looks.length),
      )
      const found = await this.#task.done
      if (!found) return null
      for (const [cell, sight] of found) sights.set(cell, sight)
    }
    return sights
  }

  #ended(): void {
    this.#seeking = null
    this.#task = null
    this.share = null
  }
}

const isPictured = ({ id, leaves }: Flitch): boolean =>
  id === DEMO_FLITCH || leaves.some(({ picture }) => picture !== null)

export const hasAnyPicture = (face: LaidFace): boolean => flitchesOf(face).some(isPictured)

/** The same as long as the same windows lie at the same places of the same pictures. */
function nameOf(face: LaidFace): string {
  const windows = landmarkLooks(face).map(({ cell, flitch, leaf, window, knots }) => [
    cell,
    flitch,
    leaf,
    window,
    knots,
  ])
  const pictures = flitchesOf(face).map(({ id, leaves }) => [
    id,
    leaves.map(({ number, picture }) => [number, picture]),
  ])
  return JSON.stringify([windows, pictures])
}
