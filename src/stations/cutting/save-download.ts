/** Hands bytes to the browser as a download. */
export function saveDownload(bytes: Uint8Array, name: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // the browser has taken what it needs once the click has been dealt with
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
