import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { present } from '../../src/core/invariant'

/** Greys from 0 (black) to 255, row by row. */
export interface Image {
  readonly width: number
  readonly pixels: Uint8Array
}

/** The first page of a PDF as poppler renders it. */
export function rendered(pdf: Uint8Array, dpi: number): Image {
  const file = Buffer.from(pdftoppm(pdf, ['-gray', '-r', String(dpi)], 'pgm'))
  // P5, width, height, 255, one white space, then the pixels
  const head = present(/^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 64).toString('latin1')), 'no PGM file')
  return { width: Number(head[1]), pixels: new Uint8Array(file.subarray(head[0].length)) }
}

/** The first page as a JPEG file. */
export const renderedJpeg = (pdf: Uint8Array, dpi: number): Uint8Array =>
  pdftoppm(pdf, ['-jpeg', '-r', String(dpi)], 'jpg')

function pdftoppm(pdf: Uint8Array, options: readonly string[], ending: string): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'page-'))
  try {
    writeFileSync(join(folder, 'page.pdf'), pdf)
    execFileSync('pdftoppm', [...options, '-singlefile', join(folder, 'page.pdf'), join(folder, 'page')])
    return new Uint8Array(readFileSync(join(folder, `page.${ending}`)))
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** From the middle of the first dark spot to that of the last along a line of pixels, by the weight of their greys. */
export function extentOfDark(
  { width, pixels }: Image,
  at: (i: number) => readonly [number, number],
  count: number,
): number {
  const dark = Array.from({ length: count }, (_, i) => {
    const [x, y] = at(i)
    return 255 - pixels[y * width + x]!
  })
  const runs: { middle: number }[] = []
  for (let i = 0; i < count; i++) {
    if (dark[i]! < 40) continue
    let [weight, moment] = [0, 0]
    for (; i < count && dark[i]! >= 10; i++) {
      weight += dark[i]!
      moment += dark[i]! * i
    }
    runs.push({ middle: moment / weight })
  }
  return runs.at(-1)!.middle - runs[0]!.middle
}
