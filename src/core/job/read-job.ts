import { ok, refused, type Result } from '../result'
import { checkJob } from './check-job'
import { fillJob } from './fill-job'
import type { Job } from './job'
import { readShape } from './job-shape'
import { mendCounts, type MendedJob } from './mend-counts'
import { migrate, NEWEST_VERSION } from './migrations'
import type { FormTrouble, JobTrouble } from './trouble'

/**
 * The job that a job.json stands for: parsed, brought to the newest version, its form and its meaning checked.
 * Only the first trouble is given.
 */
export function readJob(text: string): Result<Job, JobTrouble> {
  const read = readMendedJob(text)
  return read.ok ? ok(read.value.job) : read
}

/** As `readJob`, with what an older file held that had to be mended. */
export function readMendedJob(text: string): Result<MendedJob, JobTrouble> {
  const json = parsed(text)
  if (!json.ok) return json
  const versioned = ofThisVersion(json.value)
  if (!versioned.ok) return versioned
  const shape = readShape(versioned.value)
  if (!shape.ok) return shape
  const job = fillJob(shape.value)
  if (!job.ok) return job
  const { job: laid, mended } = mendCounts(job.value)
  const checked = checkJob(laid)
  return checked.ok ? ok({ job: checked.value, mended }) : checked
}

function parsed(text: string): Result<unknown, FormTrouble> {
  const bare = text.replace(/^\uFEFF/, '')
  if (bare.trim() === '') return refused({ trouble: 'empty' })
  try {
    return ok(JSON.parse(bare))
  } catch (error) {
    return refused({ trouble: 'not json', ...lineAndColumn(bare, error instanceof Error ? error.message : '') })
  }
}

/** Engines say where they stopped in words of their own: as line and column, as a position, or not at all. */
function lineAndColumn(text: string, message: string): { line: number | null; column: number | null } {
  const told = /line (\d+),? column (\d+)/.exec(message)
  if (told) return { line: Number(told[1]), column: Number(told[2]) }
  const position = /position (\d+)/.exec(message)
  if (position) {
    const before = text.slice(0, Number(position[1])).split('\n')
    return { line: before.length, column: before.at(-1)!.length + 1 }
  }
  if (!/end of (JSON|data)|end of file/i.test(message)) return { line: null, column: null }
  return { line: text.split('\n').length, column: null }
}

function ofThisVersion(json: unknown): Result<unknown, FormTrouble> {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return refused({ trouble: 'not a job', format: null })
  }
  const file = json as Readonly<Record<string, unknown>>
  const { format, version } = file
  if (format !== 'leafturn job')
    return refused({ trouble: 'not a job', format: typeof format === 'string' ? format : null })
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refused({ trouble: 'no version', found: version === undefined ? 'nothing' : JSON.stringify(version) })
  }
  if (version > NEWEST_VERSION) return refused({ trouble: 'newer version', version, newest: NEWEST_VERSION })
  return ok(migrate(file, version))
}
