import type { BoardColours } from '../board-types'
import { drawText, SMALL, textWidth } from './text'

/** A rounded box in px, by its middle. */
export interface Plate {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export function tracePlate(ctx: CanvasRenderingContext2D, { x, y, width, height }: Plate, radius = 5): void {
  ctx.beginPath()
  ctx.roundRect(x - width / 2, y - height / 2, width, height, Math.min(radius, height / 2, width / 2))
}

/** Words on a plate of their own, legible on any wood. */
export function drawPlate(
  ctx: CanvasRenderingContext2D,
  text: string,
  plate: Plate,
  { sheet, line, ink, font }: BoardColours,
  bold = false,
): void {
  tracePlate(ctx, plate, 6)
  ctx.globalAlpha = 0.94
  ctx.fillStyle = sheet
  ctx.fill()
  ctx.globalAlpha = 1
  ctx.lineWidth = 1
  ctx.strokeStyle = line
  ctx.stroke()
  drawText(ctx, text, plate.x, plate.y, { font, colour: ink, size: SMALL, align: 'center', bold })
}

export const plateWidth = (text: string, { font }: BoardColours, bold = false): number =>
  textWidth(text, { font, size: SMALL, bold }) + 14

export interface Tag extends Plate {
  readonly number: number
  readonly turnedOver: boolean
}

/** Room for the turning arrow beside the number. */
const ARROW = 15

export const tagSize = (
  number: number,
  turnedOver: boolean,
  height: number,
  { font }: BoardColours,
): { readonly width: number; readonly height: number } => ({
  width: Math.max(
    height,
    textWidth(String(number), { font, bold: true, size: height * 0.58 }) + 12 + (turnedOver ? ARROW : 0),
  ),
  height,
})

/** The number of a leaf: white with the numbered side up; dark, dashed and with a turning arrow when turned over. */
export function drawTag(ctx: CanvasRenderingContext2D, tag: Tag, colours: BoardColours, selected: boolean): void {
  const { x, y, width, height, number, turnedOver } = tag
  // a soft edge by two plates: blurred shadows cost many times as much
  ctx.fillStyle = 'rgb(0 0 0 / 0.16)'
  for (const more of [3, 1.5]) {
    tracePlate(ctx, { x, y: y + 1, width: width + more, height: height + more }, 6.5)
    ctx.fill()
  }
  tracePlate(ctx, tag)
  ctx.fillStyle = turnedOver ? colours.tagDown : colours.tagUp
  ctx.fill()
  const ink = turnedOver ? colours.onTagDown : colours.onTagUp
  ctx.lineWidth = 1.25
  ctx.strokeStyle = ink
  ctx.setLineDash(turnedOver ? [4, 3] : [])
  tracePlate(ctx, { x, y, width: width - 4, height: height - 4 }, 3.5)
  if (turnedOver) ctx.stroke()
  ctx.setLineDash([])
  if (selected) {
    tracePlate(ctx, { x, y, width: width + 5, height: height + 5 }, 7)
    ctx.lineWidth = 3
    ctx.strokeStyle = colours.act
    ctx.stroke()
  }
  const shift = turnedOver ? -ARROW / 2 : 0
  drawText(ctx, String(number), x + shift, y, {
    font: colours.font,
    colour: ink,
    bold: true,
    size: height * 0.58,
    align: 'center',
  })
  if (turnedOver) drawTurningArrow(ctx, x + width / 2 - ARROW / 2 - 4.5, y, ink)
}

/** An arrow that goes over from one side to the other. */
export function drawTurningArrow(ctx: CanvasRenderingContext2D, x: number, y: number, colour: string): void {
  ctx.strokeStyle = colour
  ctx.fillStyle = colour
  ctx.lineWidth = 1.6
  ctx.beginPath()
  ctx.arc(x, y + 2, 5, Math.PI, 1.93 * Math.PI)
  ctx.stroke()
  ctx.beginPath()
  ctx.moveTo(x + 1.6, y + 0.6)
  ctx.lineTo(x + 8, y + 0.6)
  ctx.lineTo(x + 4.8, y + 5.4)
  ctx.closePath()
  ctx.fill()
}

/** A letter in a circle, standing for a seam; filled where the figure breaks. */
export function drawLetter(
  ctx: CanvasRenderingContext2D,
  at: { readonly x: number; readonly y: number; readonly radius: number },
  letter: string,
  colours: BoardColours,
  state: { readonly selected: boolean; readonly breaks: boolean },
): void {
  ctx.beginPath()
  ctx.arc(at.x, at.y, at.radius, 0, 2 * Math.PI)
  ctx.fillStyle = state.selected ? colours.act : state.breaks ? colours.note : colours.sheet
  ctx.fill()
  ctx.lineWidth = state.selected || state.breaks ? 1.75 : 1.25
  ctx.strokeStyle = state.selected ? colours.act : state.breaks ? colours.note : colours.inkSoft
  ctx.stroke()
  drawText(ctx, letter, at.x, at.y, {
    font: colours.font,
    colour: state.selected ? colours.onAct : state.breaks ? colours.onNote : colours.ink,
    bold: true,
    size: letter.length > 1 ? at.radius : Math.min(14, at.radius * 1.2),
    align: 'center',
  })
}

/** A numbered remark. */
export function drawMarker(
  ctx: CanvasRenderingContext2D,
  at: { readonly x: number; readonly y: number },
  number: number,
  colours: BoardColours,
  selected: boolean,
): void {
  ctx.beginPath()
  ctx.arc(at.x, at.y, MARKER_RADIUS + 2, 0, 2 * Math.PI)
  ctx.fillStyle = selected ? colours.act : colours.sheet
  ctx.fill()
  ctx.beginPath()
  ctx.arc(at.x, at.y, MARKER_RADIUS, 0, 2 * Math.PI)
  ctx.fillStyle = colours.note
  ctx.fill()
  drawText(ctx, String(number), at.x, at.y, {
    font: colours.font,
    colour: colours.onNote,
    bold: true,
    size: 14,
    align: 'center',
  })
}

export const MARKER_RADIUS = 12
