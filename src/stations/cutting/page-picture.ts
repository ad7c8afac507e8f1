import { clippedItems } from '../../core/drawing/clip-items'
import type { Drawing } from '../../core/drawing/drawing'
import { point } from '../../core/geometry/point'
import type { PdfPage } from '../../documents/pdf/pdf-document'
import { writeSvg } from '../../documents/svg/write-svg'

/** A page as it will come out of the printer, as the text of an SVG. */
export function pagePicture(page: PdfPage): string {
  const drawing: Drawing = {
    title: page.label,
    extent: { min: point(0, 0), max: point(page.width, page.height) },
    items: [...(page.inWindow ? clippedItems(page.inWindow.items, page.inWindow.window) : []), ...page.items],
  }
  return pictureInPage(drawing)
}

/** A drawing as an SVG among others in one document: no prolog, and no name twice. */
export const pictureInPage = (drawing: Drawing): string =>
  writeSvg(drawing)
    .replace(/^<\?xml[^>]*>\s*/, '')
    .replace(/<g id="\w+"/g, '<g')
