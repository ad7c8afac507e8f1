import { strToU8, unzipSync, zipSync, type Zippable } from 'fflate'
import { invariant } from '../core/invariant'
import type { Job } from '../core/job/job'
import { readMendedJob } from '../core/job/read-job'
import type { JobTrouble } from '../core/job/trouble'
import { jobSentence } from '../core/job/trouble-wording'
import { writeJob } from '../core/job/write-job'
import { ok, refused, type Result } from '../core/result'
import { crc32, zipDirectory, type ZipEntry } from './zip-directory'

/** A job in one file: a zip of job.json and of its photos, by name, in photos/. */
export interface JobFile {
  readonly job: Job
  readonly photos: ReadonlyMap<string, Uint8Array>
  /** What an older file held that had to be mended, in sentences. */
  readonly mended?: readonly string[]
}

export type JobFileTrouble =
  | { readonly trouble: 'too large'; readonly bytes: number }
  | { readonly trouble: 'neither zip nor job' }
  | { readonly trouble: 'damaged'; readonly what: string }
  | { readonly trouble: 'no job inside' }
  | { readonly trouble: 'unreadable'; readonly reason: JobTrouble }

/** Of the file, and of all that is unpacked from it. */
export const LARGEST_FILE = 500_000_000
const LARGEST_JOB = 50_000_000

const PHOTO = /^photos\/([A-Za-z0-9][A-Za-z0-9_-]*\.[a-z0-9]+)$/

/** The same job and photos give the same bytes. Photos are compressed already and are only stored. */
export function packJob(job: Job, photos: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const files: Zippable = { 'job.json': strToU8(writeJob(job)) }
  for (const name of [...photos.keys()].sort()) {
    invariant(PHOTO.test(`photos/${name}`), `a photo is called ${name}`)
    files[`photos/${name}`] = [photos.get(name)!, { level: 0 }]
  }
  return zipSync(files, { mtime: new Date(2000, 0, 1) })
}

/** Takes a packed job, or a bare job.json. Files of other names in the zip are left alone. */
export function unpackJob(bytes: Uint8Array): Result<JobFile, JobFileTrouble> {
  if (bytes.length > LARGEST_FILE) return refused({ trouble: 'too large', bytes: bytes.length })
  if (!isZip(bytes)) return unpackText(bytes)
  const directory = zipDirectory(bytes)
  if (!directory) return refused({ trouble: 'damaged', what: 'the list of what it holds' })
  const wanted = directory.filter(({ name }) => name === 'job.json' || PHOTO.test(name))
  const job = wanted.find(({ name }) => name === 'job.json')
  if (!job) return refused({ trouble: 'no job inside' })
  // judged by what the zip says of itself: the library never unpacks more than that
  const size = wanted.reduce((sum, entry) => sum + entry.size, 0)
  if (size > LARGEST_FILE) return refused({ trouble: 'too large', bytes: size })
  if (job.size > LARGEST_JOB) return refused({ trouble: 'too large', bytes: job.size })
  return unpackEntries(bytes, wanted)
}

/** Why a file could not be opened, in a sentence or two. */
export function jobFileSentence(trouble: JobFileTrouble): string {
  switch (trouble.trouble) {
    case 'too large':
      return `The file holds ${megabytes(trouble.bytes)}; ${megabytes(LARGEST_FILE)} is the most, ${megabytes(LARGEST_JOB)} of it for the job without photos.`
    case 'neither zip nor job':
      return 'This is neither a packed job nor a job.json.'
    case 'damaged':
      return `The file is damaged: ${trouble.what} can't be read.`
    case 'no job inside':
      return 'There is no job.json inside this zip (it must lie at its top, not in a folder).'
    case 'unreadable':
      return jobSentence(trouble.reason)
  }
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b

function unpackText(bytes: Uint8Array): Result<JobFile, JobFileTrouble> {
  const text = decoded(bytes)
  // what does not begin like JSON is another kind of file, and its first faulty line would mislead
  if (text === null || !/^\uFEFF?\s*(\{|$)/.test(text)) return refused({ trouble: 'neither zip nor job' })
  return readText(text, new Map())
}

function unpackEntries(bytes: Uint8Array, wanted: readonly ZipEntry[]): Result<JobFile, JobFileTrouble> {
  const entries = new Map(wanted.map((entry) => [entry.name, entry]))
  let files: Readonly<Record<string, Uint8Array>>
  try {
    files = unzipSync(bytes, { filter: ({ name }) => entries.has(name) })
  } catch {
    return refused({ trouble: 'damaged', what: 'what it holds' })
  }
  const photos = new Map<string, Uint8Array>()
  for (const { name, size, crc } of entries.values()) {
    const file = files[name]
    if (file?.length !== size || crc32(file) !== crc) return refused({ trouble: 'damaged', what: name })
    const photo = PHOTO.exec(name)?.[1]
    if (photo) photos.set(photo, file)
  }
  const text = decoded(files['job.json']!)
  return text === null ? refused({ trouble: 'damaged', what: 'job.json' }) : readText(text, photos)
}

function readText(text: string, photos: JobFile['photos']): Result<JobFile, JobFileTrouble> {
  const read = readMendedJob(text)
  if (!read.ok) return refused({ trouble: 'unreadable', reason: read.reason })
  const { job, mended } = read.value
  return ok({ job, photos, ...(mended.length > 0 && { mended }) })
}

function decoded(bytes: Uint8Array): string | null {
  if (bytes.length > LARGEST_JOB) return null
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1e6)} MB`
