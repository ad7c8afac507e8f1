import type { TilingRefusal } from '../../core/drawing/tiling'
import type { PdfRefusal } from './pdf-document'
import type { TilePaperRefusal } from './tiled-pages'

/** Why sheets can't be printed on a paper, in a sentence that names the limit. */
export function sheetRefusal(refusal: TilePaperRefusal | TilingRefusal | PdfRefusal, paper: string): string {
  switch (refusal.reason) {
    case 'paper too small':
      return `${paper} is too small: ${Math.floor(refusal.window)} mm is left for the drawing, ${refusal.least} mm is the least.`
    case 'page too large':
      return `A page of ${Math.round(refusal.side)} mm is too long: a PDF page is ${refusal.limit} mm at most. Take a paper that is tiled.`
    case 'no pages':
      return 'There is nothing to print.'
    default:
      return `The drawing can’t be tiled on ${paper}: ${refusal.reason}. Take a larger paper.`
  }
}
