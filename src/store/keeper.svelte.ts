import { Autosave, type Keeping, type Restored } from './autosave'
import type { JobStore } from './job-store.svelte'
import { openLocalBase, type LocalBase } from './local-base'
import { lockTab, type Locks, type TabLock } from './tab-lock'

/** What of the browser the keeper works with; tests put their own in place of it. */
export interface KeeperSurroundings {
  readonly openBase: () => Promise<LocalBase>
  readonly locks: Locks | undefined
  /** Where `pagehide` is heard. */
  readonly page: Pick<EventTarget, 'addEventListener'>
  readonly tab: string
}

const browserSurroundings = (): KeeperSurroundings => ({
  openBase: () => openLocalBase(),
  locks: navigator.locks as LockManager | undefined,
  page: window,
  // a page without https has no randomUUID
  tab: `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`,
})

/** Keeps the job of a store in this browser, from start to end of the page, and says how that goes. */
export class Keeper {
  keeping: Keeping = $state.raw({ keeping: 'kept' })
  /** null until started, and where the browser keeps nothing for us. */
  base: LocalBase | null = null
  #autosave: Autosave | null = null
  #lock: TabLock | null = null

  constructor(
    private readonly jobs: JobStore,
    private readonly surroundings: KeeperSurroundings = browserSurroundings(),
  ) {}

  /** Opens in the store what was kept last, and from then on keeps every change. Never throws. */
  async start(): Promise<Restored> {
    try {
      return await this.#started()
    } catch (error) {
      this.keeping = { keeping: 'failed', why: error instanceof Error ? error.message : String(error) }
      return { found: 'nothing' }
    }
  }

  /** Makes this the tab that keeps. With `mine`, its job is kept and the other tab's put aside; else that one is opened. */
  async takeOver(which: 'mine' | 'theirs'): Promise<void> {
    this.#lock?.take()
    const restored = await this.#autosave?.takeOver(which === 'mine' ? this.jobs.decided : null)
    if (restored?.found === 'job') this.jobs.open(restored.job)
  }

  async #started(): Promise<Restored> {
    const { openBase, locks, page, tab } = this.surroundings
    const base = await openBase()
    const autosave = new Autosave(base, { tab, onKeeping: (keeping) => (this.keeping = keeping) })
    this.base = base
    this.#autosave = autosave
    const restored = await autosave.restore()
    if (restored.found === 'job') this.jobs.open(restored.job)
    this.jobs.onDecided((job) => autosave.keep(job))
    page.addEventListener('pagehide', () => void autosave.flush())
    this.#lock = await lockTab(locks, () => autosave.standBack())
    if (!this.#lock.isMine) autosave.standBack()
    return restored
  }
}
