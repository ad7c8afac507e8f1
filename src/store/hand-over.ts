/** The page that a file is handed to; tests put their own in place of it. */
type Page = Pick<Window & typeof globalThis, 'document' | 'URL'>

/** Hands a file to the browser as a download. */
export function handOver(content: Blob, name: string, { document, URL }: Page = window): void {
  const address = URL.createObjectURL(content)
  const link = document.createElement('a')
  link.href = address
  link.download = name
  link.click()
  // the browser has taken what it needs once the click has been dealt with
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
