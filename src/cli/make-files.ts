import fs from 'node:fs'
import { createRequire } from 'node:module'
import { derive, type DerivedPart } from '../core/derive'
import type { SheetSet } from '../core/drawing/sheet-set'
import { hasPlace } from '../core/fit/fits'
import { waysToFit, type FitAdvice } from '../core/fit/ways-to-fit'
import type { Job } from '../core/job/job'
import { ok, refused, type Result } from '../core/result'
import { asCutSheets } from '../core/sheets/draw-as-cut'
import { drawFace } from '../core/sheets/draw-face'
import { drawCuttingFile, nothingToCut } from '../core/sheets/draw-cutting-file'
import { jobRests } from '../core/ledger/offcuts'
import { stockOf } from '../core/ledger/stock'
import { pressSheets } from '../core/sheets/draw-press-sheet'
import { partSheets, type MoreSheets } from '../core/sheets/part-sheets'
import { ON_THE_LINE } from '../core/templates/cutting-tool'
import { writeDxf } from '../documents/dxf/write-dxf'
import type { PdfFonts } from '../documents/pdf/pdf-document'
import { partDocument } from '../store/job-documents'
import { sheetPages, type SheetPages } from '../documents/pdf/sheet-document'
import { sheetRefusal } from '../documents/pdf/sheet-refusal'
import { writePdf } from '../documents/pdf/write-pdf'
import { writeSvg } from '../documents/svg/write-svg'
import { rememberingAnswers } from '../store/memory'
import type { Wanted } from './arguments'
import { fileNames } from './file-names'
import { summariseLedger } from './summary-ledger'
import { summarisePressing } from './summary-pressing'
import { summarisePart } from './summary'
import { wantedSheets, type WantedSheets } from './wanted-sheets'
import { viewfinderSights, wantsViewfinders } from './viewfinder-sights'
import type { MadeFile } from './write-files'

/** A file of its own day would differ from one day to the next. */
export const CREATED = new Date(Date.UTC(2000, 0, 1))

/**
 * All files of a job that are asked for: for each part the PDF of its sheets, a picture of its face and its templates as
 * SVG and DXF, and one summary that says which file holds what. A sentence where something can't be made.
 */
export async function makeFiles(job: Job, wanted: Wanted): Promise<Result<readonly MadeFile[], string>> {
  const fonts = readFonts()
  const answers = rememberingAnswers()
  const faces = derive(job, answers).parts
  const names = fileNames(faces.map(({ part }) => part.name))
  const sets = faces.map((face, i) => {
    const rests = jobRests(faces, job.shop, answers, face)
    const sights = wantsViewfinders(wanted.only, names[i]!, names) ? viewfinderSights(face) : null
    return sheetsOf(face, job, { rests, sights })
  })
  const titles = sets.flatMap(({ sheets }) => sheets.map(({ title }) => title))
  const only = wantedSheets(wanted.only, names, titles)
  if (!only.ok) return only
  const files: MadeFile[] = []
  const parts: unknown[] = []
  for (const [i, face] of faces.entries()) {
    if (!only.value.part(names[i]!)) continue
    const made = await partFiles({ job, faces, face, set: sets[i]!, name: names[i]!, wanted, only: only.value, fonts })
    if (!made.ok) return made
    files.push(...made.value.files)
    parts.push(made.value.summary)
  }
  const ledger = summariseLedger(faces, jobRests(faces, job.shop, answers), job.unit)
  const summary = { unit: 'mm', parts, ...ledger, pressing: summarisePressing(faces, job.pressRoom) }
  return ok([...files, { name: 'summary.json', content: `${JSON.stringify(summary, null, 1)}\n` }])
}

/** What is printed for a part, to the saw, to the bench and to the press. */
function sheetsOf(face: DerivedPart, { unit, pressRoom, shop }: Job, more: MoreSheets): SheetSet {
  const cut = partSheets(face, unit, more)
  const isMeasured = Object.keys(face.part.asCut).length > 0
  const laid = isMeasured ? asCutSheets(face, shop, unit).sheets : []
  return { ...cut, sheets: [...cut.sheets, ...laid, ...pressSheets(face, pressRoom, unit).sheets] }
}

/** What is needed for the files of one part. */
interface PartTask {
  readonly job: Job
  /** Of all parts. */
  readonly faces: readonly DerivedPart[]
  readonly face: DerivedPart
  readonly set: SheetSet
  readonly name: string
  readonly wanted: Wanted
  readonly only: WantedSheets
  readonly fonts: PdfFonts
}

async function partFiles(task: PartTask) {
  const { face, job, wanted } = task
  const pdf = await partPdf(task)
  if (!pdf.ok) return pdf
  const cut = cuttingFiles(task)
  if (!cut.ok) return cut
  const picture = task.only.file('picture')
    ? [{ name: `${task.name}.svg`, content: writeSvg(drawFace(face, job.unit)) }]
    : []
  const printed = pdf.value
  const files: MadeFile[] = [...(printed ? [printed.file] : []), ...picture, ...cut.value]
  const templates = {
    file: printed?.file.name ?? null,
    picture: picture[0]?.name ?? null,
    paper: wanted.printing.paper.id,
    pages: printed?.pages ?? 0,
    correction: wanted.printing.correction,
  }
  const held = files.map(({ name }) => ({ file: name, holds: name === templates.file ? printed!.holds : [] }))
  return ok({ files, summary: summarisePart(face, job.unit, templates, held, adviceFor(task)) })
}

/** What would make a face fit, with strips from what the others leave; null for one that does. */
function adviceFor({ face, faces, job: { shop } }: PartTask): FitAdvice | null {
  if (hasPlace(face)) return null
  const { part, flitch, border } = face
  const flitches = { field: flitch, border: border?.flitch ?? flitch }
  const answers = rememberingAnswers()
  const others = faces.filter((other) => other !== face)
  return waysToFit(part, flitches, shop, answers, stockOf(others, flitch, shop, answers))
}

/** The PDF of the sheets that are wanted; null when none is. */
async function partPdf({ job, face, set, name, wanted: { printing }, only, fonts }: PartTask) {
  const chosen = only.sheets(set)
  if (!chosen) return ok(null)
  const why = (reason: Parameters<typeof sheetRefusal>[0]) =>
    refused(`${face.part.name}: ${sheetRefusal(reason, printing.paper.name)}`)
  const laidOut = sheetPages(chosen, printing)
  if (!laidOut.ok) return why(laidOut.reason)
  const { pages, sheets } = laidOut.value
  const pdf = await writePdf(partDocument(job, face.part, name, pages, printing, CREATED), fonts)
  if (!pdf.ok) return why(pdf.reason)
  return ok({
    file: { name: `${name}.pdf`, content: pdf.value },
    pages: pages.length,
    holds: pagesHeld(sheets),
  })
}

function pagesHeld(sheets: SheetPages['sheets']) {
  let before = 0
  return sheets.map(({ sheet, pages }) => {
    const from = before + 1
    before += pages.length
    return { sheet: sheet.title, from, to: before }
  })
}

/** The templates for a machine, as SVG and DXF. */
function cuttingFiles({ face, name, wanted: { kerf }, only }: PartTask): Result<readonly MadeFile[], string> {
  const kinds = (['svg', 'dxf'] as const).filter((kind) => only.file(kind))
  if (kinds.length === 0) return ok([])
  const drawing = drawCuttingFile(face, kerf > 0 ? { kind: 'beam', width: kerf, keeps: 'piece' } : ON_THE_LINE)
  if (!drawing.ok) return refused(nothingToCut(face, drawing.reason))
  const write = { svg: writeSvg, dxf: writeDxf }
  return ok(kinds.map((kind) => ({ name: `${name}-templates.${kind}`, content: write[kind](drawing.value) })))
}

/** The typeface out of its package: the bundle holds code only. */
export function readFonts(): PdfFonts {
  const { resolve } = createRequire(import.meta.url)
  const read = (style: string) =>
    new Uint8Array(fs.readFileSync(resolve(`@expo-google-fonts/source-sans-3/${style}.ttf`)))
  return { regular: read('400Regular/SourceSans3_400Regular'), bold: read('700Bold/SourceSans3_700Bold') }
}
