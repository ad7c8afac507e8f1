import { handOver } from './hand-over'
import { LARGEST_FILE } from './job-file'

/** A file that may be written again without asking for a name; null where the browser only downloads. */
export type FileHandle = FileSystemFileHandle | null

export interface OpenedFile {
  readonly name: string
  readonly bytes: Uint8Array
  readonly handle: FileHandle
}

/** `too large`: it has not been read. `gone away`: the person closed the dialog. */
export type Opening =
  | { readonly outcome: 'opened'; readonly file: OpenedFile }
  | { readonly outcome: 'gone away' }
  | { readonly outcome: 'too large'; readonly bytes: number }

export type Saving =
  { readonly outcome: 'saved'; readonly name: string; readonly handle: FileHandle } | { readonly outcome: 'gone away' }

/** The two dialogs that some browsers have. */
interface Pickers {
  showOpenFilePicker?: (options: object) => Promise<FileSystemFileHandle[]>
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>
}

type Page = Pickers & Pick<Window & typeof globalThis, 'document' | 'URL'>

const JOB_TYPES = [
  { description: 'Leafturn job', accept: { 'application/zip': ['.leafturn', '.zip'], 'application/json': ['.json'] } },
]
/** Those who pick must also see jobs that were saved as plain zips. */
const ACCEPTED = '.leafturn,.zip,.json'

/** Asks for a job's file. Other errors than going away (a disk that can't be read) are thrown. */
export async function openFile(page: Page = window): Promise<Opening> {
  if (!page.showOpenFilePicker) return openByUpload(page)
  try {
    const [handle] = await page.showOpenFilePicker({ types: JOB_TYPES, multiple: false })
    return handle ? await readFile(await handle.getFile(), handle) : { outcome: 'gone away' }
  } catch (error) {
    return goneAway(error)
  }
}

/**
 * Writes a job's file: over `handle` if there is one, else where the person says, else as a download. Other errors than
 * going away are thrown; the file on the disk is then as it was.
 */
export async function saveFile(
  bytes: Uint8Array,
  name: string,
  handle: FileHandle,
  page: Page = window,
): Promise<Saving> {
  if (!handle && !page.showSaveFilePicker) return download(bytes, name, page)
  try {
    const target = handle ?? (await page.showSaveFilePicker!({ types: JOB_TYPES, suggestedName: name }))
    const stream = await target.createWritable()
    await stream.write(bytes as Uint8Array<ArrayBuffer>)
    await stream.close()
    return { outcome: 'saved', name: target.name, handle: target }
  } catch (error) {
    return goneAway(error)
  }
}

/** A file name for a job of that name, which may hold anything. */
export function fileNameFor(jobName: string): string {
  const plain = jobName.replace(/[\\/:*?"<>|\p{Cc}\s]+/gu, ' ').slice(0, 80)
  return `${plain.replace(/^[. ]+|[. ]+$/g, '') || 'job'}.leafturn`
}

function openByUpload({ document }: Page): Promise<Opening> {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = ACCEPTED
  return new Promise((resolve, reject) => {
    input.addEventListener('cancel', () => resolve({ outcome: 'gone away' }))
    input.addEventListener('change', () => {
      const file = input.files?.[0]
      if (file) readFile(file, null).then(resolve, reject)
      else resolve({ outcome: 'gone away' })
    })
    input.click()
  })
}

async function readFile(file: File, handle: FileHandle): Promise<Opening> {
  if (file.size > LARGEST_FILE) return { outcome: 'too large', bytes: file.size }
  return { outcome: 'opened', file: { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()), handle } }
}

function download(bytes: Uint8Array, name: string, page: Page): Saving {
  handOver(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/zip' }), name, page)
  return { outcome: 'saved', name, handle: null }
}

function goneAway(error: unknown): { readonly outcome: 'gone away' } {
  if (error instanceof DOMException && error.name === 'AbortError') return { outcome: 'gone away' }
  throw error
}
