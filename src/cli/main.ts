import fs from 'node:fs'
import path from 'node:path'
import type { Job } from '../core/job/job'
import { ok, refused, type Result } from '../core/result'
import { jobFileSentence, unpackJob } from '../store/job-file'
import { readArguments, type Wanted } from './arguments'
import { CREATED, makeFiles, readFonts } from './make-files'
import { makeRingMarks, RING_MARKS } from './make-ring-marks'
import { writeFiles, type MadeFile } from './write-files'

/** What the command answers to the shell. */
const WRITTEN = 0
const REFUSED = 2

/** Writes the sheets of a job without a browser. 0 when all was written, 2 with a sentence on stderr when nothing was. */
export async function main(given: readonly string[]): Promise<number> {
  const wanted = readArguments(given)
  if (!wanted.ok) return stopped(wanted.reason)
  const { folder } = wanted.value
  const made = await filesFor(wanted.value)
  if (!made.ok) return stopped(made.reason)
  const written = writeFiles(path.resolve(folder), made.value)
  if (!written.ok) return stopped(written.reason)
  console.log(`${made.value.length} ${made.value.length === 1 ? 'file' : 'files'} written to ${folder}`)
  return WRITTEN
}

async function filesFor(wanted: Wanted): Promise<Result<readonly MadeFile[], string>> {
  if (wanted.jobFile === RING_MARKS) return makeRingMarks(wanted.printing, CREATED, readFonts())
  const job = readJobFile(wanted.jobFile)
  return job.ok ? makeFiles(job.value, wanted) : job
}

function readJobFile(name: string): Result<Job, string> {
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(fs.readFileSync(name))
  } catch (error) {
    return refused(`The job file “${name}” can’t be read: ${whyNot(error)}.`)
  }
  const unpacked = unpackJob(bytes)
  if (!unpacked.ok) return refused(`“${name}” was not opened. ${jobFileSentence(unpacked.reason)}`)
  for (const sentence of unpacked.value.mended ?? []) console.error(sentence)
  return ok(unpacked.value.job)
}

function whyNot(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException
  if (code === 'ENOENT') return 'there is no such file'
  if (code === 'EISDIR') return 'it is a folder'
  return code === 'EACCES' ? 'it may not be opened' : String(code ?? error)
}

function stopped(sentence: string): number {
  console.error(sentence)
  return REFUSED
}
