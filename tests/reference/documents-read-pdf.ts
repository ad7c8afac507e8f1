import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { point, type Point } from '../../src/core/geometry/point'

/** A page as an independent reader sees it, brought to mm and y down. */
export interface ReadPage {
  readonly label: string | null
  readonly width: number
  readonly height: number
  readonly strokes: readonly ReadPath[]
  readonly fills: readonly ReadPath[]
  readonly texts: readonly {
    readonly text: string
    readonly at: Point<'sheet'>
    readonly angle: number
    readonly mirrored: boolean
  }[]
}

export interface ReadPath {
  readonly points: readonly Point<'sheet'>[]
  readonly closed: boolean
  readonly curved: boolean
}

const MM = 25.4 / 72

/** Reads every page with pdf.js: paths from the operator list, texts from the text content. */
export async function readPdf(bytes: Uint8Array) {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise
  const labels = await pdf.getPageLabels()
  const pages: ReadPage[] = []
  for (let i = 1; i <= pdf.numPages; i++) pages.push(await readPage(pdf, i, labels?.[i - 1] ?? null))
  const read = {
    pages,
    preferences: await pdf.getViewerPreferences(),
    outline: ((await pdf.getOutline()) ?? []).map(({ title }) => title),
    title: ((await pdf.getMetadata()).info as { Title?: string }).Title,
  }
  await pdf.destroy()
  return read
}

type Pdf = Awaited<ReturnType<typeof getDocument>['promise']>

async function readPage(pdf: Pdf, number: number, label: string | null): Promise<ReadPage> {
  const page = await pdf.getPage(number)
  const [, , widthPt, heightPt] = page.view as [number, number, number, number]
  const toSheet = (x: number, y: number) => point<'sheet'>(x * MM, (heightPt - y) * MM)
  const list = await page.getOperatorList()
  const strokes: ReadPath[] = []
  const fills: ReadPath[] = []
  list.fnArray.forEach((fn, i) => {
    if (fn !== OPS.constructPath) return
    const [paint, [data]] = list.argsArray[i] as [number, [Float32Array | null]]
    const path = data && readPath(data, toSheet)
    if (path && (paint === OPS.stroke || paint === OPS.closeStroke))
      strokes.push({ ...path, closed: path.closed || paint === OPS.closeStroke })
    if (path && paint === OPS.fill) fills.push(path)
  })
  const content = await page.getTextContent()
  const texts = content.items.flatMap((item) => {
    if (!('str' in item) || item.str.trim() === '') return []
    const [a, b, c, d, e, f] = item.transform as [number, number, number, number, number, number]
    return [{ text: item.str, at: toSheet(e, f), angle: Math.atan2(-b, a), mirrored: a * d - b * c < 0 }]
  })
  return { label, width: widthPt * MM, height: heightPt * MM, strokes, fills, texts }
}

/** pdf.js packs a path: 0 moves, 1 draws a line, 2 a curve of two control points and an end, 4 closes. Curves come as points on them. */
function readPath(data: Float32Array, toSheet: (x: number, y: number) => Point<'sheet'>): ReadPath {
  const points: Point<'sheet'>[] = []
  let [closed, curved] = [false, false]
  let [lastX, lastY] = [0, 0]
  for (let i = 0; i < data.length;) {
    const command = data[i++]!
    if (command === 4) closed = true
    else {
      if (command === 2) {
        curved = true
        const [ax, ay, bx, by, x, y] = data.slice(i, i + 6) as unknown as Six
        for (const t of [0.25, 0.5, 0.75])
          points.push(toSheet(onCubic(lastX, ax, bx, x, t), onCubic(lastY, ay, by, y, t)))
        i += 4
      }
      ;[lastX, lastY] = [data[i]!, data[i + 1]!]
      points.push(toSheet(lastX, lastY))
      i += 2
    }
  }
  return { points, closed, curved }
}

type Six = readonly [number, number, number, number, number, number]

const onCubic = (p: number, a: number, b: number, q: number, t: number): number =>
  (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * a + 3 * (1 - t) * t ** 2 * b + t ** 3 * q
