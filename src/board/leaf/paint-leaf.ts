import { boxAround, regionBox, type Box } from '../../core/geometry/box'
import { transformPoint } from '../../core/geometry/transform'
import { bareLength } from '../../core/units/show-length'
import type { BoardColours, LeafScene, LeafWindow, LeafWood, TakenPiece } from '../board-types'
import { drawDefect } from '../paint/defects'
import { drawPlate, plateWidth, type Plate } from '../paint/marks'
import { hatch, strokeLine, traceRegion, traceRing } from '../paint/paths'
import { drawText, textWidth } from '../paint/text'
import { drawWood } from '../paint/wood'
import { boxOnScreen, viewTransform, type View } from '../view'

/** A whole leaf: its wood within its wild edges, and its defects. */
export function paintWholeLeaf(
  ctx: CanvasRenderingContext2D,
  wood: LeafWood,
  view: View,
  colours: BoardColours,
  selectedDefect: string | null = null,
): void {
  const toScreen = viewTransform<'leaf'>(view)
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, wood.outline)
  ctx.clip()
  drawWood(ctx, { wood, turnedOver: false, toScreen, seen: boxAround(wood.outline), colours })
  for (const defect of wood.defects) drawDefect(ctx, toScreen, defect, colours, defect.id === selectedDefect)
  ctx.restore()
  ctx.beginPath()
  traceRing(ctx, toScreen, wood.outline)
  ctx.lineWidth = 1
  ctx.lineJoin = 'round'
  ctx.strokeStyle = colours.woodEdge
  ctx.stroke()
}

/** The leaf, the border of what is usable, and what other pieces take. */
export function paintLeaf(ctx: CanvasRenderingContext2D, scene: LeafScene, view: View): void {
  const { selected, colours } = scene
  paintWholeLeaf(ctx, scene.wood, view, colours, selected?.kind === 'defect' ? selected.defect : null)
  ctx.beginPath()
  traceRegion(ctx, viewTransform<'leaf'>(view), scene.usable)
  ctx.lineWidth = 1
  ctx.setLineDash([2, 3])
  ctx.strokeStyle = 'rgb(255 250 240 / 0.55)'
  ctx.stroke()
  ctx.setLineDash([])
  for (const piece of scene.taken) paintTaken(ctx, piece, view, colours)
  paintCuts(ctx, scene, view)
}

/** Lines to cut along before the pieces are cut. */
function paintCuts(ctx: CanvasRenderingContext2D, { cuts }: LeafScene, view: View): void {
  const toScreen = viewTransform<'leaf'>(view)
  for (const [width, colour, dash] of CUT_STROKES) {
    ctx.lineWidth = width
    ctx.strokeStyle = colour
    ctx.setLineDash(dash)
    for (const { a, b } of cuts) strokeLine(ctx, transformPoint(toScreen, a), transformPoint(toScreen, b))
  }
  ctx.setLineDash([])
}

const CUT_STROKES: readonly (readonly [number, string, number[]])[] = [
  [4, 'rgb(20 12 4 / 0.55)', []],
  [1.75, '#ffd98a', [10, 4, 2, 4]],
]

/** A piece that another part takes: hatched; one that has been cut out: paler, and hatched both ways. */
export function paintTaken(
  ctx: CanvasRenderingContext2D,
  { ring, cut }: TakenPiece,
  view: View,
  colours: BoardColours,
): void {
  const toScreen = viewTransform<'leaf'>(view)
  const box = boxOnScreen(view, boxAround(ring))
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, ring)
  ctx.globalAlpha = cut ? 0.72 : 0.34
  ctx.fillStyle = colours.sheet
  ctx.fill()
  ctx.globalAlpha = 0.85
  ctx.lineWidth = 1.25
  ctx.strokeStyle = colours.ink
  ctx.stroke()
  ctx.clip()
  ctx.globalAlpha = 0.4
  ctx.lineWidth = 1
  hatch(ctx, box, 10)
  if (cut) hatch(ctx, box, 10, -1)
  ctx.restore()
}

/** The names of the pieces that others take, beside the window and what else is written. */
function paintTakenNames(ctx: CanvasRenderingContext2D, scene: LeafScene, view: View, plates: readonly Plate[]): void {
  const window = scene.window && scene.window.rough.length > 0 && boxOnScreen(view, regionBox(scene.window.rough))
  const written: Plate[] = [...plates]
  for (const { ring, name } of scene.taken) {
    const box = boxOnScreen(view, boxAround(ring))
    const words = fitted(name, box.max.x - box.min.x - 8, scene.colours)
    if (words === '' || box.max.y - box.min.y < 14) continue
    const width = plateWidth(words, scene.colours)
    const place = [0.5, 0.2, 0.8, 0, 1]
      .map((share) => ({
        x: box.min.x + width / 2 + 4 + (box.max.x - box.min.x - width - 8) * share,
        y: (box.min.y + box.max.y) / 2,
        width,
        height: 20,
      }))
      .find((plate) => !(window && covers(window, plate)) && !written.some((other) => touch(plate, other)))
    if (!place) continue
    written.push(place)
    drawPlate(ctx, words, place, scene.colours)
  }
}

const covers = ({ min, max }: Box<'screen'>, { x, y, width, height }: Plate): boolean =>
  x + width / 2 > min.x && x - width / 2 < max.x && y + height / 2 > min.y && y - height / 2 < max.y

const touch = (p: Plate, q: Plate): boolean =>
  Math.abs(p.x - q.x) < (p.width + q.width) / 2 + 2 && Math.abs(p.y - q.y) < (p.height + q.height) / 2 + 2

/** As much of a name as has room, ended by an ellipsis; '' where not even a little has. */
export function fitted(name: string, width: number, colours: BoardColours): string {
  if (plateWidth(name, colours) <= width) return name
  for (let length = name.length - 1; length >= 4; length--) {
    const words = `${name.slice(0, length).trimEnd()}…`
    if (plateWidth(words, colours) <= width) return words
  }
  return ''
}

/** Number and grain: the leaf's number at its numbered end, and an arrow along the grain to the far end. */
export function paintNumber(
  ctx: CanvasRenderingContext2D,
  number: number,
  right: number,
  y: number,
  colours: BoardColours,
  size = 26,
): void {
  const style = { font: colours.font, colour: colours.ink, bold: true, size, align: 'right' } as const
  drawText(ctx, String(number), right, y - 7, style)
  const from = right - Math.max(22, textWidth(String(number), style))
  ctx.strokeStyle = colours.ink
  ctx.fillStyle = colours.ink
  ctx.lineWidth = 1.75
  strokeLine(ctx, { x: from, y: y + 14 }, { x: right - 5, y: y + 14 })
  ctx.beginPath()
  ctx.moveTo(right, y + 14)
  ctx.lineTo(right - 7, y + 9.5)
  ctx.lineTo(right - 7, y + 18.5)
  ctx.closePath()
  ctx.fill()
}

const CUT = 'cut, fixed'

/** The band the window may reach, the window in it, and the room in four numbers. */
export function paintWindow(
  ctx: CanvasRenderingContext2D,
  scene: LeafScene,
  view: View,
  size: { width: number },
): void {
  const { window, colours } = scene
  const room = window?.inside ? roomPlates(scene, window, view, size) : []
  paintTakenNames(
    ctx,
    scene,
    view,
    room.map(({ plate }) => plate),
  )
  if (!window || window.rough.length === 0) return
  const toScreen = viewTransform<'leaf'>(view)
  paintBand(ctx, window, view)
  ctx.lineJoin = 'miter'
  ctx.beginPath()
  traceRegion(ctx, toScreen, window.rough)
  ctx.lineWidth = 3
  ctx.strokeStyle = 'rgb(20 12 4 / 0.45)'
  ctx.stroke()
  ctx.lineWidth = 1.25
  ctx.setLineDash([5, 3])
  ctx.strokeStyle = '#fff8ea'
  ctx.stroke()
  ctx.setLineDash([])
  ctx.beginPath()
  traceRegion(ctx, toScreen, window.finished)
  ctx.lineWidth = 4.5
  ctx.strokeStyle = 'rgb(20 12 4 / 0.55)'
  ctx.stroke()
  ctx.lineWidth = 2.25
  ctx.strokeStyle = '#ffffff'
  ctx.stroke()
  if (!window.inside) paintOutside(ctx, window, view, colours)
  const origin = transformPoint(toScreen, window.origin)
  if (window.cut) {
    const plate = { ...origin, width: plateWidth(CUT, colours, true), height: 21 }
    drawPlate(ctx, CUT, plate, colours, true)
  } else paintHandle(ctx, origin, colours)
  for (const { text, plate } of room) drawPlate(ctx, text, plate, colours, true)
}

function paintBand(ctx: CanvasRenderingContext2D, { band }: LeafWindow, view: View): void {
  if (band.length === 0) return
  ctx.beginPath()
  traceRegion(ctx, viewTransform<'leaf'>(view), band)
  ctx.fillStyle = 'rgb(255 255 255 / 0.2)'
  ctx.fill('evenodd')
  ctx.lineWidth = 2.5
  ctx.strokeStyle = 'rgb(20 12 4 / 0.25)'
  ctx.stroke()
  ctx.lineWidth = 1
  ctx.strokeStyle = 'rgb(255 255 255 / 0.75)'
  ctx.stroke()
}

/** A window outside its room: hatched in the colour of remarks. */
function paintOutside(ctx: CanvasRenderingContext2D, { rough }: LeafWindow, view: View, colours: BoardColours): void {
  ctx.save()
  ctx.beginPath()
  traceRegion(ctx, viewTransform<'leaf'>(view), rough)
  ctx.lineWidth = 3
  ctx.strokeStyle = colours.note
  ctx.stroke()
  ctx.clip()
  ctx.globalAlpha = 0.55
  ctx.lineWidth = 1.25
  hatch(ctx, boxOnScreen(view, regionBox(rough)), 14, -1)
  ctx.restore()
}

function paintHandle(ctx: CanvasRenderingContext2D, { x, y }: { x: number; y: number }, colours: BoardColours): void {
  ctx.beginPath()
  ctx.arc(x, y, 9, 0, 2 * Math.PI)
  ctx.fillStyle = '#ffffff'
  ctx.fill()
  ctx.strokeStyle = colours.dark ? '#0a6a72' : colours.act
  ctx.lineWidth = 1.75
  strokeLine(ctx, { x: x - 5, y }, { x: x + 5, y })
  strokeLine(ctx, { x, y: y - 5 }, { x, y: y + 5 })
}

/** The room in four numbers, each on the side where it is. */
function roomPlates(
  { unit, colours, wood }: LeafScene,
  { band, room, rough }: LeafWindow,
  view: View,
  { width }: { width: number },
): readonly { readonly text: string; readonly plate: Plate }[] {
  if (band.length === 0) return []
  const around = boxOnScreen(view, regionBox(band))
  const window = boxOnScreen(view, regionBox(rough))
  const leaf = boxOnScreen(view, boxAround(wood.outline))
  const say = (length: number) => bareLength(length, unit, 'place')
  const middle = { x: (window.min.x + window.max.x) / 2, y: (window.min.y + window.max.y) / 2 }
  const sized = (text: string, x: number, y: number) => ({
    text,
    plate: { x, y, width: plateWidth(text, colours, true), height: 21 },
  })
  const up = sized(`↑ ${say(room.toRight)}`, middle.x, leaf.min.y - 14)
  const down = sized(`↓ ${say(room.toLeft)}`, middle.x, leaf.max.y + 14)
  const ends = [
    { text: `← ${say(room.toNumberedEnd)}`, window: window.min.x, end: around.min.x, way: -1 },
    { text: `${say(room.toFarEnd)} →`, window: window.max.x, end: around.max.x, way: 1 },
  ].map(({ text, window: edge, end, way }) => {
    const wide = plateWidth(text, colours, true)
    const x = besideWindow(wide, edge, end)
    // off the leaf, or too small a leaf for words upon it: below, beside the other number
    if (x - wide / 2 > leaf.min.x && x + wide / 2 < Math.min(leaf.max.x, width) && leaf.max.y - leaf.min.y > 60)
      return sized(text, x, middle.y)
    return sized(text, middle.x + way * (down.plate.width / 2 + wide / 2 + 6), down.plate.y)
  })
  return [up, down, ...ends]
}

/** In the middle of the gap between the window and the end of the band where there is room for a plate, else beyond the band. */
function besideWindow(wide: number, window: number, end: number): number {
  const way = Math.sign(end - window) || (end < window ? -1 : 1)
  return Math.abs(end - window) >= wide + 8 ? (window + end) / 2 : end + way * (wide / 2 + 6)
}
