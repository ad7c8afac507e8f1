/**
 * Rules.
 * J27 A saved file is written where it was opened from; where the browser can't do that it is downloaded.
 * J28 To close a dialog is no error and changes nothing.
 */
import { describe, expect, it, vi } from 'vitest'
import { fileNameFor, openFile, saveFile } from './file-door'

type Page = NonNullable<Parameters<typeof openFile>[0]>
const away = () => Promise.reject(new DOMException('closed', 'AbortError'))
const bytes = Uint8Array.of(1, 2, 3)

/** A file on a disk, as the browser hands it out. */
function diskFile(name: string, content = bytes) {
  const written: Uint8Array[] = []
  const stream = { write: (b: Uint8Array) => void written.push(b), close: () => Promise.resolve() }
  const handle = {
    name,
    getFile: () => Promise.resolve(new File([content], name)),
    createWritable: () => Promise.resolve(stream),
  }
  return { handle: handle as unknown as FileSystemFileHandle, written }
}
const pageWith = (parts: object) => parts as unknown as Page

/** A page that has only the old ways: an input to upload by, a link to download by. */
function oldPage(picked: File | null) {
  const element = Object.assign(new EventTarget(), {
    files: picked ? [picked] : [],
    href: '',
    download: '',
    click(this: EventTarget) {
      this.dispatchEvent(new Event(picked ? 'change' : 'cancel'))
    },
  })
  const blobs: Blob[] = []
  const URL = { createObjectURL: (blob: Blob) => `blob:${blobs.push(blob)}`, revokeObjectURL: () => undefined }
  return { page: pageWith({ document: { createElement: () => element }, URL }), element, blobs }
}

describe('opening', () => {
  it('gives the bytes and the way back to the file', async () => {
    const { handle } = diskFile('door.leafturn')
    const opened = await openFile(pageWith({ showOpenFilePicker: () => Promise.resolve([handle]) }))
    expect(opened).toEqual({ outcome: 'opened', file: { name: 'door.leafturn', bytes, handle } })
  })

  it('works by upload where there is no picker', async () => {
    const opened = await openFile(oldPage(new File([bytes], 'job.json')).page)
    expect(opened).toEqual({ outcome: 'opened', file: { name: 'job.json', bytes, handle: null } })
  })

  it('[J28] may be called off', async () => {
    expect(await openFile(pageWith({ showOpenFilePicker: away }))).toEqual({ outcome: 'gone away' })
    expect(await openFile(oldPage(null).page)).toEqual({ outcome: 'gone away' })
  })

  it('does not read what is too large', async () => {
    const huge = { name: 'film.zip', size: 600e6, arrayBuffer: () => Promise.reject(new Error('was read')) }
    const handle = { getFile: () => Promise.resolve(huge) }
    const opened = await openFile(pageWith({ showOpenFilePicker: () => Promise.resolve([handle]) }))
    expect(opened).toEqual({ outcome: 'too large', bytes: 600e6 })
  })

  it('lets other errors through', async () => {
    const broken = () => Promise.reject(new Error('The disk has gone.'))
    await expect(openFile(pageWith({ showOpenFilePicker: broken }))).rejects.toThrow('The disk has gone.')
  })
})

describe('saving', () => {
  it('[J27] writes over the file it came from without asking', async () => {
    const { handle, written } = diskFile('door.leafturn')
    const picker = vi.fn()
    const saved = await saveFile(bytes, 'other.leafturn', handle, pageWith({ showSaveFilePicker: picker }))
    expect(saved).toEqual({ outcome: 'saved', name: 'door.leafturn', handle })
    expect(written).toEqual([bytes])
    expect(picker).not.toHaveBeenCalled()
  })

  it('[J27] asks for a place the first time', async () => {
    const { handle, written } = diskFile('chosen.leafturn')
    const picker = vi.fn(() => Promise.resolve(handle))
    const saved = await saveFile(bytes, 'door.leafturn', null, pageWith({ showSaveFilePicker: picker }))
    expect(saved).toEqual({ outcome: 'saved', name: 'chosen.leafturn', handle })
    expect(picker).toHaveBeenCalledWith(expect.objectContaining({ suggestedName: 'door.leafturn' }))
    expect(written).toEqual([bytes])
  })

  it('[J27] downloads where there is no picker', async () => {
    vi.useFakeTimers()
    const { page, element, blobs } = oldPage(null)
    const saved = await saveFile(bytes, 'door.leafturn', null, page)
    vi.useRealTimers()
    expect(saved).toEqual({ outcome: 'saved', name: 'door.leafturn', handle: null })
    expect(element).toMatchObject({ href: 'blob:1', download: 'door.leafturn' })
    expect(new Uint8Array(await blobs[0]!.arrayBuffer())).toEqual(bytes)
  })

  it('[J28] may be called off', async () => {
    expect(await saveFile(bytes, 'a', null, pageWith({ showSaveFilePicker: away }))).toEqual({ outcome: 'gone away' })
  })
})

describe('a file name', () => {
  it.each([
    ['Music-room sideboard', 'Music-room sideboard.leafturn'],
    ['Door 1/2: "left"?', 'Door 1 2 left.leafturn'],
    ['  ', 'job.leafturn'],
    ['../..', 'job.leafturn'],
    ['x'.repeat(200), `${'x'.repeat(80)}.leafturn`],
  ])('for %j', (job, name) => expect(fileNameFor(job)).toBe(name))
})
