/** One filled line of a pasted table; `line` counts from 1 as the person sees it. */
export interface TableLine {
  readonly line: number
  /** Trimmed; the quotes that a spreadsheet puts round a cell are taken off. */
  readonly cells: readonly string[]
}

/** Separators in order of trust: a comma may be part of a number, a tab never is. */
const SEPARATORS = ['\t', ';', ','] as const

/**
 * The filled lines of pasted text, cut into cells at tabs, semicolons or commas, whichever its first filled line
 * shows. A cell that begins with a double quote runs to the closing one and may hold separators, line ends and
 * doubled quotes. Lines without any text are left out but counted.
 */
export function tableLines(text: string): TableLine[] {
  const clean = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n')
  const firstLine = clean.split('\n').find((line) => line.trim() !== '') ?? ''
  const separator = SEPARATORS.find((sign) => firstLine.includes(sign)) ?? '\t'
  const lines: TableLine[] = []
  let at = 0
  let line = 1
  while (at < clean.length) {
    const startedOn = line
    const cells: string[] = []
    let ended = false
    while (!ended) {
      const cell = cellAt(clean, at, separator)
      cells.push(cell.text.trim())
      line += clean.slice(at, cell.end).split('\n').length - 1
      ended = clean[cell.end] !== separator
      at = cell.end + 1
    }
    line += 1
    if (cells.some((cell) => cell !== '')) lines.push({ line: startedOn, cells })
  }
  return lines
}

/** The cell that begins at `start`; `end` is the separator, the line end or the end of the text behind it. */
function cellAt(text: string, start: number, separator: string): { text: string; end: number } {
  const quotedCell = / *"((?:[^"]|"")*)" */y
  quotedCell.lastIndex = start
  const found = quotedCell.exec(text)
  const behind = found === null ? '' : text[quotedCell.lastIndex]
  if (found?.[1] !== undefined && (behind === undefined || behind === separator || behind === '\n'))
    return { text: found[1].replace(/""/g, '"'), end: quotedCell.lastIndex }
  let end = start
  while (end < text.length && text[end] !== separator && text[end] !== '\n') end += 1
  return { text: text.slice(start, end), end }
}
