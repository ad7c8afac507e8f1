import { openDB, type DBSchema, type IDBPDatabase } from 'idb'

/** The job as it was kept by one tab; `turn` counts how often it has been kept. */
export interface KeptJob {
  readonly text: string
  readonly tab: string
  readonly turn: number
}

/** A job that could not be taken up, kept for the person to save elsewhere. */
export interface JobAside {
  readonly text: string
  readonly why: string
}

interface Local extends DBSchema {
  job: { key: 'current'; value: KeptJob }
  aside: { key: number; value: JobAside }
  photos: { key: string; value: Uint8Array }
}

export type LocalBase = IDBPDatabase<Local>

/** What this browser keeps for us: the job, jobs put aside, photos by the hash of their content. */
export const openLocalBase = (name = 'leafturn'): Promise<LocalBase> =>
  openDB<Local>(name, 1, {
    upgrade(base) {
      base.createObjectStore('job')
      base.createObjectStore('aside', { autoIncrement: true })
      base.createObjectStore('photos')
    },
    // a newer version in another tab must not wait for this one
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase | null)?.close(),
  })
