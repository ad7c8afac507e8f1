/** Names that some systems keep for devices, whatever the ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/

/** A file name for each part: plain letters, digits and dashes; repeated names are numbered. */
export function fileNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>()
  return names.map((name) => {
    const plain = plainName(name)
    let unique = plain
    for (let n = 2; taken.has(unique); n++) unique = `${plain}-${n}`
    taken.add(unique)
    return unique
  })
}

/** Plain letters, digits and dashes of a name. */
export function plainName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '')
  return plain === '' ? 'part' : DEVICE.test(plain) ? `part-${plain}` : plain
}
