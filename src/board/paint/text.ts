/** Text on a board: sizes in px whatever the zoom, fractions of an inch set as fractions. */
export interface TextStyle {
  readonly font: string
  readonly colour: string
  readonly size?: number
  readonly bold?: boolean
  readonly align?: 'left' | 'center' | 'right'
  /** A soft edge in this colour, for text that stands on wood. */
  readonly halo?: string
}

export const SMALL = 13
export const NORMAL = 14

const FRACTION = /(\d+)\/(\d+)/
const RAISED = 0.66

interface Run {
  readonly text: string
  readonly size: number
  readonly rise: number
}

/** The text in runs of one size each: `17 3/8` has its 3 raised and its 8 small. */
function runsOf(text: string, size: number): readonly Run[] {
  const match = FRACTION.exec(text)
  if (!match) return text === '' ? [] : [{ text, size, rise: 0 }]
  const before = text.slice(0, match.index).replace(/(\d) $/, '$1\u2009')
  const small = size * RAISED
  return [
    ...(before === '' ? [] : [{ text: before, size, rise: 0 }]),
    { text: match[1]!, size: small, rise: size * 0.3 },
    { text: '\u2044', size, rise: 0 },
    { text: match[2]!, size: small, rise: 0 },
    ...runsOf(text.slice(match.index + match[0].length), size),
  ]
}

const fontOf = (size: number, { bold, font }: Pick<TextStyle, 'bold' | 'font'>): string =>
  `${bold ? 600 : 400} ${size}px ${font}`

let measuring: CanvasRenderingContext2D | null = null
const widths = new Map<string, number>()

/** Called when another face has come, so that nothing is set by the measure of the old one. */
export const forgetWidths = (): void => widths.clear()

/** Width in px. */
export function textWidth(text: string, style: Pick<TextStyle, 'bold' | 'font' | 'size'>): number {
  const key = `${style.size ?? NORMAL} ${style.bold ? 'bold' : ''} ${style.font} ${text}`
  const known = widths.get(key)
  if (known !== undefined) return known
  const width = runsOf(text, style.size ?? NORMAL).reduce((sum, run) => sum + runWidth(run, style), 0)
  if (widths.size > 4000) widths.clear()
  widths.set(key, width)
  return width
}

/** A figure of Source Sans 3 is about half as wide as the type is high: where there is no page to measure on. */
const FIGURE_WIDTH = 0.5

function runWidth(run: Run, style: Pick<TextStyle, 'bold' | 'font'>): number {
  if (typeof document === 'undefined') return run.text.length * run.size * FIGURE_WIDTH
  measuring ??= document.createElement('canvas').getContext('2d')
  if (!measuring) return run.text.length * run.size * FIGURE_WIDTH
  measuring.font = fontOf(run.size, style)
  return measuring.measureText(run.text).width
}

/** Draws a line of text whose middle height is `y`. */
export function drawText(ctx: CanvasRenderingContext2D, text: string, x: number, y: number, style: TextStyle): void {
  const size = style.size ?? NORMAL
  const width = textWidth(text, style)
  let at = style.align === 'center' ? x - width / 2 : style.align === 'right' ? x - width : x
  const base = y + size * 0.34
  ctx.textAlign = 'left'
  ctx.textBaseline = 'alphabetic'
  for (const run of runsOf(text, size)) {
    ctx.font = fontOf(run.size, style)
    if (style.halo) {
      ctx.strokeStyle = style.halo
      ctx.lineWidth = 3
      ctx.lineJoin = 'round'
      ctx.strokeText(run.text, at, base - run.rise)
    }
    ctx.fillStyle = style.colour
    ctx.fillText(run.text, at, base - run.rise)
    at += runWidth(run, style)
  }
}
