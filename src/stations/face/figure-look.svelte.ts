import type { FoundShift } from '../../core/figure/align/find-shift'
import type { Flitch } from '../../core/leaves/flitch'
import type { PhotoShelf } from '../../store/photo-shelf'
import { alignAside, type Aligning } from '../../workers/align-door'
import type { AlignTask } from '../../workers/align-worker'
import { woodOfFlitch } from '../../workers/wood-of-flitch'
import type { WoodSource } from '../../workers/wood-source'

/** The pictures of a flitch looked at beside the page: how far that has come, and the way to give it up. */
export class FigureLook {
  /** 0 to 1 while the pictures are being looked at, else null. */
  share = $state.raw<number | null>(null)
  #aligning: Aligning | null = null

  constructor(private readonly shelf: PhotoShelf) {}

  stop = (): void => this.#aligning?.stop()

  /** One answer for each look of the task; null when it was given up. Throws where the pictures can't be read. */
  async lookAt(
    flitch: Flitch,
    taskFor: (source: WoodSource) => AlignTask,
  ): Promise<readonly (FoundShift | null)[] | null> {
    this.share = 0
    try {
      const source = await woodOfFlitch(flitch, this.shelf)
      const task = $state.snapshot(taskFor(source)) as AlignTask
      this.#aligning = alignAside(source, task, (done) => (this.share = done))
      return await this.#aligning.done
    } finally {
      this.share = null
      this.#aligning = null
    }
  }
}
