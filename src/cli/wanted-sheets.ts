import type { SheetSet } from '../core/drawing/sheet-set'
import { ok, refused, type Result } from '../core/result'
import { plainName } from './file-names'

/** Kinds of file beside the PDF that can be asked for by name. */
export const FILE_KINDS = ['picture', 'svg', 'dxf'] as const
export type FileKind = (typeof FILE_KINDS)[number]

/** What of a job is to be written. */
export interface WantedSheets {
  readonly part: (name: string) => boolean
  /** The sheets of a set that are wanted; null for none. */
  readonly sheets: (set: SheetSet) => SheetSet | null
  readonly file: (kind: FileKind) => boolean
}

/**
 * What `--only` asks for: each word names a part, a sheet (or all whose names begin so, in the plural too), or a kind of
 * file. Without words, everything. A sentence for a word that names nothing.
 */
export function wantedSheets(
  words: readonly string[],
  partNames: readonly string[],
  sheetTitles: readonly string[],
): Result<WantedSheets, string> {
  const parts = new Set<string>()
  const sheets = new Set<string>()
  const kinds = new Set<string>()
  for (const word of words) {
    const name = plainName(word)
    const titles = sheetTitles.map(plainName).filter((title) => begins(title, name))
    if (partNames.includes(name)) parts.add(name)
    else if ((FILE_KINDS as readonly string[]).includes(name)) kinds.add(name)
    else if (titles.length > 0) for (const title of titles) sheets.add(title)
    else return refused(`--only: nothing is called “${word}”. There is ${listed(partNames, sheetTitles)}.`)
  }
  const isAll = sheets.size + kinds.size === 0
  return ok({
    part: (name) => parts.size === 0 || parts.has(name),
    file: (kind) => isAll || kinds.has(kind),
    sheets: (set) => {
      const wanted = isAll ? set.sheets : set.sheets.filter(({ title }) => sheets.has(plainName(title)))
      return wanted.length > 0 ? { ...set, sheets: wanted } : null
    },
  })
}

/** `templates` names `template-1`. */
const begins = (title: string, name: string): boolean =>
  [name, name.replace(/s$/, '')].some((start) => title === start || title.startsWith(`${start}-`))

const listed = (parts: readonly string[], titles: readonly string[]): string =>
  [...new Set([...parts, ...titles.map(plainName), ...FILE_KINDS])].join(', ')
