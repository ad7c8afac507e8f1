import regularUrl from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url'
import boldUrl from '@expo-google-fonts/source-sans-3/700Bold/SourceSans3_700Bold.ttf?url'
import type { DerivedPart } from '../../core/derive'
import type { Job } from '../../core/job/job'
import { ok, refused, type Result } from '../../core/result'
import { partSheets, SHEET_GROUPS, type MoreSheets, type SheetGroup } from '../../core/sheets/part-sheets'
import type { PdfFonts, PdfPage } from '../../documents/pdf/pdf-document'
import type { Printing } from '../../documents/pdf/printing'
import { sheetPages } from '../../documents/pdf/sheet-document'
import { sheetRefusal } from '../../documents/pdf/sheet-refusal'

/** The pages of one sheet. */
export interface PrintedSheet {
  readonly title: string
  readonly pages: readonly PdfPage[]
}

/** What one takes to one place. */
export interface PageGroup {
  readonly name: string
  readonly use: string
  readonly sheets: readonly PrintedSheet[]
}

export interface PartPages {
  /** As they are printed, one behind the other. */
  readonly all: readonly PdfPage[]
  readonly groups: readonly PageGroup[]
}

const GROUP_WORDS: Readonly<Record<SheetGroup, Omit<PageGroup, 'sheets'>>> = {
  shop: { name: 'For the shop', use: 'The whole part at a glance, and the order of work.' },
  leaves: {
    name: 'To the leaves',
    use: 'Card frames by which each window is found again on wood without a straight edge, and its landmarks.',
  },
  saw: {
    name: 'To the saw',
    use: 'Cards to fold and tick, places on the leaves, story strips and full-scale templates.',
  },
  bench: { name: 'To the bench', use: 'What is mended, jointed, taped and glued, in this order.' },
}

/** The pages of a part's sheets as they are printed, by where they are taken, or why there are none. */
export function pagesOf(
  face: DerivedPart,
  job: Job,
  printing: Printing,
  more: MoreSheets = {},
): Result<PartPages, string> {
  const laidOut = sheetPages(partSheets(face, job.unit, more), printing)
  if (!laidOut.ok) return refused(sheetRefusal(laidOut.reason, printing.paper.name))
  const { pages, sheets } = laidOut.value
  const groups = SHEET_GROUPS.map((name) => ({
    ...GROUP_WORDS[name],
    sheets: sheets
      .filter(({ sheet }) => sheet.group === name)
      .map(({ sheet, pages: own }) => ({ title: sheet.title, pages: own })),
  }))
  return ok({ all: pages, groups: groups.filter(({ sheets }) => sheets.length > 0) })
}

let loaded: Promise<PdfFonts> | null = null

/** The typeface, fetched from the app's own files when first needed. */
export function fonts(): Promise<PdfFonts> {
  loaded ??= Promise.all([regularUrl, boldUrl].map(load)).then(([regular, bold]) => ({
    regular: regular!,
    bold: bold!,
  }))
  // a failed load is tried again the next time
  loaded.catch(() => (loaded = null))
  return loaded
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`the typeface could not be read (${response.status})`)
  return new Uint8Array(await response.arrayBuffer())
}
