import { shopTrouble } from '../job/check-part'
import { textTrouble } from '../job/check-text'
import type { Job } from '../job/job'
import { LONGEST_NAME } from '../job/limits'
import { ok, refused } from '../result'
import type { Shop } from '../shop'
import { patched, type Next } from './change-within'

export function renameJob(job: Job, name: string): Next {
  const wrong = textTrouble(name, LONGEST_NAME, 'the job: name')
  return wrong ? refused(wrong) : ok(patched(job, { name }))
}

/** Lengths keep their size; only how they are typed and shown changes. */
export const setUnit = (job: Job, unit: Job['unit']): Next => ok(patched(job, { unit }))

/** What the shop is changed by: clearances and tolerances one kind and one class at a time. */
export type ShopPatch = Partial<Omit<Shop, 'clearance' | 'tolerates'>> & {
  readonly clearance?: Partial<Shop['clearance']>
  readonly tolerates?: Partial<Shop['tolerates']>
}

export function changeShop(job: Job, { clearance = {}, tolerates = {}, ...patch }: ShopPatch): Next {
  const shop = patched(job.shop, {
    ...patch,
    clearance: patched(job.shop.clearance, clearance),
    tolerates: patched(job.shop.tolerates, tolerates),
  })
  const wrong = shopTrouble(shop)
  return wrong ? refused(wrong) : ok(patched(job, { shop }))
}
