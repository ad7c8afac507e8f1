/**
 * What is cut from jointed sheets, once their strips are joined.
 *
 * Input: a laid face. Output: a template for each shape of piece, in the orientation of the sheet as it is made, before
 * it is turned with its piece: the rough piece with what its own seams take, the joints of the sheet in it. Pieces from
 * one leaf have none. Failure: none.
 */
import { roughWindow, type Cell, type EdgeTag } from '../faces/cells'
import type { LaidFace, Piece } from '../fit/lay-face'
import { shapeOf } from '../fit/play'
import { distance, type Point } from '../geometry/point'
import { ringEdges, type Edge, type Ring } from '../geometry/polygon'
import { invert, transformPoint } from '../geometry/transform'

/** A jointed sheet: the piece that is cut from it, and its strips from left to right as it is made. */
export interface JointedSheet {
  readonly cell: Cell
  readonly strips: readonly Piece[]
}

export interface SheetTemplate {
  /** `S1`, `S2` … within the part. */
  readonly name: string
  /** What is cut of the sheet, with the allowances of the piece's own seams. */
  readonly rough: Ring<'window'>
  readonly window: Ring<'window'>
  readonly tags: readonly EdgeTag<'window'>[]
  readonly joints: readonly Edge<'window'>[]
  readonly sheets: readonly JointedSheet[]
  readonly straight: boolean
}

/** The jointed sheets of a face, in the order of its pieces. */
export function jointedSheets({ pieces }: LaidFace): readonly JointedSheet[] {
  const byName = new Map<string, { cell: Cell; strips: Piece[] }>()
  for (const piece of pieces) {
    const { sheet } = piece.cell
    if (!sheet) continue
    const known = byName.get(sheet.id)
    if (known) known.strips.push(piece)
    else byName.set(sheet.id, { cell: sheet, strips: [piece] })
  }
  return [...byName.values()]
}

/** The templates of the pieces that are cut from sheets, those for most sheets first. */
export function sheetTemplates(face: LaidFace): readonly SheetTemplate[] {
  const { allowance, laterAllowance } = face.part
  const byShape = new Map<string, { rough: Ring<'window'>; sheets: JointedSheet[] }>()
  for (const sheet of jointedSheets(face)) {
    const rough = roughWindow(sheet.cell.toCut, { first: allowance, later: laterAllowance })
    const shape = `${shapeOf(rough)} / ${shapeOf(sheet.cell.toCut.ring)}`
    const known = byShape.get(shape)
    if (known) known.sheets.push(sheet)
    else byShape.set(shape, { rough, sheets: [sheet] })
  }
  return [...byShape.values()]
    .sort((p, q) => q.sheets.length - p.sheets.length)
    .map(({ rough, sheets }, i) => {
      const [first] = sheets as [JointedSheet, ...JointedSheet[]]
      const { ring: window, tags } = first.cell.toCut
      return { name: `S${i + 1}`, rough, window, tags, joints: jointsIn(first), sheets, straight: false }
    })
}

/** The joints within a sheet, each once, in its own orientation. */
function jointsIn({ cell, strips }: JointedSheet): readonly Edge<'window'>[] {
  const toSheet = invert(cell.lay)
  const found: Edge<'window'>[] = []
  for (const { cell: strip } of strips)
    ringEdges(strip.face.ring).forEach(({ a, b }, i) => {
      const tag = strip.face.tags[i]!
      if (tag.kind !== 'seam' || tag.joint !== 'sheet') return
      const edge = { a: transformPoint(toSheet, a), b: transformPoint(toSheet, b) }
      if (!found.some((other) => isSameLine(edge, other))) found.push(edge)
    })
  return found
}

const isSameLine = (p: Edge<'window'>, q: Edge<'window'>): boolean => isNear(p.a, q.b) && isNear(p.b, q.a)

const isNear = (p: Point<'window'>, q: Point<'window'>): boolean => distance(p, q) < 0.01
