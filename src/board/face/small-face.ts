import type { DerivedPart } from '../../core/derive'
import { boxRing } from '../../core/geometry/box'
import { pixelRatio } from '../board-stage'
import type { BoardColours, PicturesOf } from '../board-types'
import { traceRing } from '../paint/paths'
import { fitView, viewTransform } from '../view'
import { faceCells, faceSeams } from './face-scene'
import { paintCell, paintSeamLines } from './paint-cells'

const EDGE = 2

/** Paints the finished panel of a face as large as a canvas is on the page, without letters and sizes. */
export function drawSmallFace(
  canvas: HTMLCanvasElement,
  face: DerivedPart,
  colours: BoardColours,
  pictures?: PicturesOf,
): void {
  const { width, height } = canvas.getBoundingClientRect()
  const ratio = pixelRatio()
  canvas.width = Math.max(1, Math.round(width * ratio))
  canvas.height = Math.max(1, Math.round(height * ratio))
  const ctx = canvas.getContext('2d')
  if (!ctx) return
  ctx.scale(ratio, ratio)
  const { finished } = face.sizes
  const margins = { top: EDGE, right: EDGE, bottom: EDGE, left: EDGE }
  const toScreen = viewTransform<'panel'>(fitView(finished, { width, height }, margins, face.part.lying))
  ctx.save()
  ctx.beginPath()
  traceRing(ctx, toScreen, boxRing(finished))
  ctx.clip()
  for (const cell of faceCells(face, pictures)) paintCell(ctx, cell, toScreen, colours)
  paintSeamLines(ctx, faceSeams(face), toScreen, true)
  ctx.restore()
  ctx.beginPath()
  traceRing(ctx, toScreen, boxRing(finished))
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.inkSoft
  ctx.stroke()
}
