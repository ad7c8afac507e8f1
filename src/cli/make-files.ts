import fs from 'node:fs'
import { createRequire } from 'node:module'
import { derive, type DerivedPart } from '../core/derive'
import type { Job } from '../core/job/job'
import { writeJob } from '../core/job/write-job'
import { ok, refused, type Result } from '../core/result'
import { drawFace } from '../core/sheets/draw-face'
import { partSheets } from '../core/sheets/part-sheets'
import { documentId } from '../documents/document-id'
import type { Paper } from '../documents/paper'
import type { PdfFonts } from '../documents/pdf/pdf-document'
import { sheetPages } from '../documents/pdf/sheet-document'
import { sheetRefusal } from '../documents/pdf/sheet-refusal'
import { writePdf } from '../documents/pdf/write-pdf'
import { writeSvg } from '../documents/svg/write-svg'
import { rememberingAnswers } from '../store/memory'
import { fileNames } from './file-names'
import { summarisePart } from './summary'
import type { MadeFile } from './write-files'

/** A file of its own day would differ from one day to the next. */
const CREATED = new Date(Date.UTC(2000, 0, 1))

/**
 * All files of a job: for each part the PDF of its templates and a picture of its face, and one summary. A sentence
 * where something can't be printed.
 */
export async function makeFiles(job: Job, paper: Paper): Promise<Result<readonly MadeFile[], string>> {
  const fonts = readFonts()
  const files: MadeFile[] = []
  const parts: unknown[] = []
  const faces = derive(job, rememberingAnswers()).parts
  const names = fileNames(faces.map(({ part }) => part.name))
  for (const [i, face] of faces.entries()) {
    const made = await partFiles(job, face, names[i]!, paper, fonts)
    if (!made.ok) return made
    files.push(...made.value.files)
    parts.push(made.value.summary)
  }
  return ok([...files, { name: 'summary.json', content: `${JSON.stringify({ unit: 'mm', parts }, null, 1)}\n` }])
}

async function partFiles(job: Job, face: DerivedPart, name: string, paper: Paper, fonts: PdfFonts) {
  const set = partSheets(face, job.unit)
  const laidOut = sheetPages(set, paper)
  if (!laidOut.ok) return refused(`${face.part.name}: ${sheetRefusal(laidOut.reason, paper.name)}`)
  const { pages } = laidOut.value
  const id = documentId(`${name} ${paper.id} ${writeJob(job)}`)
  const pdf = await writePdf(
    { title: [job.name, face.part.name].filter(Boolean).join(': '), pages, created: CREATED, id },
    fonts,
  )
  if (!pdf.ok) return refused(`${face.part.name}: ${sheetRefusal(pdf.reason, paper.name)}`)
  const [file, picture] = [`${name}.pdf`, `${name}.svg`]
  return ok({
    files: [
      { name: file, content: pdf.value },
      { name: picture, content: writeSvg(drawFace(face, job.unit)) },
    ] satisfies MadeFile[],
    summary: summarisePart(face, job.unit, { file, picture, paper: paper.id, pages: pages.length }),
  })
}

/** The typeface out of its package: the bundle holds code only. */
function readFonts(): PdfFonts {
  const { resolve } = createRequire(import.meta.url)
  const read = (style: string) =>
    new Uint8Array(fs.readFileSync(resolve(`@expo-google-fonts/source-sans-3/${style}.ttf`)))
  return { regular: read('400Regular/SourceSans3_400Regular'), bold: read('700Bold/SourceSans3_700Bold') }
}
