import type { Page } from '@playwright/test'

/** What the job's file says now; the autosaved job is what would be saved. */
export const keptJob = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<{
        parts: {
          id: string
          positions?: Record<string, number[]>
          chosen?: Record<string, number>
          asCut?: Record<string, number>
        }[]
      }>((resolve, reject) => {
        const opening = indexedDB.open('leafturn')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const asked = opening.result.transaction('job').objectStore('job').get('current')
          asked.onsuccess = () => {
            opening.result.close()
            resolve(JSON.parse(asked.result.text))
          }
        }
      }),
  )
