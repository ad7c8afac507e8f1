import fs from 'node:fs'
import path from 'node:path'
import { ok, refused, type Result } from '../core/result'

export interface MadeFile {
  readonly name: string
  readonly content: Uint8Array | string
}

/** The files are first written under names of this ending, so that a full disk leaves no half of them behind. */
const UNFINISHED = '.unfinished'

/** Writes all files into a folder, which is made if there is none; or none of them, and a sentence. */
export function writeFiles(folder: string, files: readonly MadeFile[]): Result<null, string> {
  const places = files.map(({ name }) => path.join(folder, name))
  const trouble = (error: unknown) => refused(`The folder “${folder}” can’t be written: ${whyNot(error)}.`)
  try {
    fs.mkdirSync(folder, { recursive: true })
  } catch (error) {
    return trouble(error)
  }
  const blocked = places.find(isFolder)
  if (blocked) return refused(`“${blocked}” is a folder, and a file is to be written there.`)
  try {
    files.forEach(({ content }, i) => fs.writeFileSync(places[i]! + UNFINISHED, content))
    for (const place of places) fs.renameSync(place + UNFINISHED, place)
    return ok(null)
  } catch (error) {
    for (const place of places) fs.rmSync(place + UNFINISHED, { force: true })
    return trouble(error)
  }
}

const isFolder = (place: string): boolean => fs.statSync(place, { throwIfNoEntry: false })?.isDirectory() ?? false

function whyNot(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException
  if (code === 'EEXIST' || code === 'ENOTDIR') return 'there is a file of that name'
  if (code === 'ENOSPC') return 'the disk is full'
  return code === 'EACCES' || code === 'EROFS' ? 'it may not be written to' : String(code ?? error)
}
