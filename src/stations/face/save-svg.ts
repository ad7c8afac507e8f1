/** Hands a drawing of the page to the browser as a file of its own, black on white. */
export function saveSvg(drawing: SVGSVGElement, name: string): void {
  const copy = drawing.cloneNode(true) as SVGSVGElement
  copy.removeAttribute('class')
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('color', 'black')
  const text = new XMLSerializer().serializeToString(copy)
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // the browser has taken what it needs once the click has been dealt with
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
