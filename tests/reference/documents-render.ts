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
