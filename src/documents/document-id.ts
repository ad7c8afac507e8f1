/** Fingerprint of a text as 32 hexadecimal digits (four runs of FNV-1a, 32 bits each): same text, same document. */
export function documentId(text: string): string {
  return [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x85ebca6b].map((seed) => hash(text, seed)).join('')
}

function hash(text: string, seed: number): string {
  let value = seed >>> 0
  for (let i = 0; i < text.length; i++) {
    value ^= text.charCodeAt(i)
    value = Math.imul(value, 0x01000193) >>> 0
  }
  return value.toString(16).padStart(8, '0').toUpperCase()
}
