/** The part of `navigator.locks` that is needed; not there in old browsers and on pages without https. */
export type Locks = Pick<LockManager, 'request'>

export interface TabLock {
  /** Whether this tab has the job: true where the browser can't tell. */
  readonly isMine: boolean
  /** Takes the job from the tab that has it. */
  readonly take: () => void
}

const NAME = 'leafturn job'

/**
 * Asks for the job, so that a second tab is known at once and not only when both have changed something. `onLost` is
 * called when another tab takes it. The lock is held until the page goes.
 */
export async function lockTab(locks: Locks | undefined, onLost: () => void): Promise<TabLock> {
  if (!locks) return { isMine: true, take: () => undefined }
  const hold = (options: LockOptions, onAnswer: (isMine: boolean) => void) => {
    const held = locks.request(NAME, options, (lock) => {
      onAnswer(lock !== null)
      return lock === null ? undefined : new Promise<never>(() => undefined)
    })
    // a lock that is stolen ends in an error: that is how its holder hears of it
    held.catch(onLost)
  }
  const isMine = await new Promise<boolean>((answer) => hold({ ifAvailable: true }, answer))
  return { isMine, take: () => hold({ steal: true }, () => undefined) }
}
