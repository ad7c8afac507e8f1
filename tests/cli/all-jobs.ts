import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { derive, type DerivedPart } from '../../src/core/derive'
import { withoutMemory } from '../../src/core/fit/answers'
import type { Job } from '../../src/core/job/job'
import { unpackJob } from '../../src/store/job-file'

const folder = new URL('../fixtures/jobs/', import.meta.url)

/** The names of the jobs that the sheets are tried on, each after its case. */
export const JOB_NAMES: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''))
  .sort()

export const jobFileOf = (name: string): string => fileURLToPath(new URL(`${name}.json`, folder))

export function jobOf(name: string): Job {
  const unpacked = unpackJob(new Uint8Array(readFileSync(jobFileOf(name))))
  if (!unpacked.ok) throw new Error(`${name}: ${unpacked.reason.trouble}`)
  return unpacked.value.job
}

export const facesOf = (job: Job): readonly DerivedPart[] => derive(job, withoutMemory).parts
