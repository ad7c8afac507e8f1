import type { BoardColours } from '../board-types'
import { crisp, strokeLine } from './paths'
import { drawText, SMALL, textWidth } from './text'

/** A dimension line in px: along x (level) or y (upright), at a height, from one end to the other. */
export interface DimensionLine {
  readonly along: 'x' | 'y'
  readonly at: number
  readonly from: number
  readonly to: number
  readonly text: string
  /** On which side of the line the text stands: -1 above or left of it, 1 below or right. */
  readonly side: -1 | 1
  /** Where the thing measured ends, so that a thin line can lead there. */
  readonly leadTo: number
}

/** A dimension as on a shop drawing: line, slashes at its ends, text beside it. */
export function drawDimension(ctx: CanvasRenderingContext2D, line: DimensionLine, colours: BoardColours): void {
  const { along, from, to, side } = line
  const at = crisp(line.at)
  const spot = (along_: number, across: number) => (along === 'x' ? { x: along_, y: across } : { x: across, y: along_ })
  ctx.strokeStyle = colours.inkSoft
  ctx.lineWidth = 1
  strokeLine(ctx, spot(from, at), spot(to, at))
  for (const end of [from, to]) {
    const out = Math.sign(at - line.leadTo) || 1
    strokeLine(ctx, spot(crisp(end), line.leadTo + out * 4), spot(crisp(end), at + out * 5))
    strokeLine(ctx, spot(end - 4, at + 4), spot(end + 4, at - 4))
  }
  const middle = (from + to) / 2
  const text = along === 'x' ? { x: middle, y: at + side * 10 } : { x: at + side * 9, y: middle }
  drawText(ctx, line.text, text.x, text.y, {
    font: colours.font,
    colour: colours.ink,
    size: SMALL,
    align: along === 'x' ? 'center' : side < 0 ? 'right' : 'left',
  })
}

/** One stretch of a chain of dimensions, already on the screen. */
export interface Link {
  readonly from: number
  readonly to: number
  readonly text: string
}

const HEIGHT = 16

/**
 * A chain whose texts do not touch: links of one size that lie side by side are gathered (`6 × 62.5`) where they are
 * too short for their text, and a link that still is too short keeps its ends and loses its text.
 */
export function legibleChain(
  links: readonly Link[],
  along: 'x' | 'y',
  { font }: Pick<BoardColours, 'font'>,
): readonly Link[] {
  const room = (text: string) => (along === 'x' ? textWidth(text, { font, size: SMALL }) + 10 : HEIGHT)
  const tooShort = (link: Link) => Math.abs(link.to - link.from) < room(link.text)
  if (!links.some(tooShort)) return links
  const gathered: { link: Link; count: number }[] = []
  for (const link of links) {
    const last = gathered.at(-1)
    if (last && last.link.text === link.text) {
      gathered[gathered.length - 1] = { link: { ...last.link, to: link.to }, count: last.count + 1 }
    } else gathered.push({ link, count: 1 })
  }
  return gathered.map(({ link, count }) => {
    const named = count > 1 ? { ...link, text: `${count} × ${link.text}` } : link
    return tooShort(named) ? { ...named, text: '' } : named
  })
}
