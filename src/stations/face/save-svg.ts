import { handOver } from '../../store/hand-over'

/** Hands a drawing of the page to the browser as a file of its own, black on white. */
export function saveSvg(drawing: SVGSVGElement, name: string): void {
  const copy = drawing.cloneNode(true) as SVGSVGElement
  copy.removeAttribute('class')
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('color', 'black')
  const text = new XMLSerializer().serializeToString(copy)
  handOver(new Blob([text], { type: 'image/svg+xml' }), name)
}
