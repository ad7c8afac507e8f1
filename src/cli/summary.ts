import { findingSentence, remedyLabel } from '../core/checks/wording'
import type { DerivedPart } from '../core/derive'
import { carried, type Cell, type TaggedRing } from '../core/faces/cells'
import type { Piece } from '../core/fit/lay-face'
import type { FitAdvice } from '../core/fit/ways-to-fit'
import { beyondAtGap } from '../core/fit/pair-edges'
import { backOnLeaf, pieceParts } from '../core/fit/piece-parts'
import type { Edges } from '../core/geometry/box'
import type { Point, Space } from '../core/geometry/point'
import { regionArea, type Region, type Ring } from '../core/geometry/polygon'
import { edgeLength } from '../core/geometry/segment'
import type { Transform } from '../core/geometry/transform'
import { leafOutline } from '../core/leaves/bundle'
import { mendingWords, repairHead } from '../core/repairs/repair-wording'
import type { Repair, Spared } from '../core/repairs/repairs'
import { leavesEach } from '../core/patterns/jointed-sheet'
import type { PairReport } from '../core/seams/pair-report'
import type { SeamReport } from '../core/seams/seam-report'
import { stringLength } from '../core/sheets/border-sentence'
import { jointLength } from '../core/sheets/make-up-words'
import { sheetTemplates } from '../core/templates/sheet-template'
import type { LengthUnit } from '../core/units/unit'

/** What was written for a part; null for what was not asked for. */
export interface WrittenTemplates {
  readonly file: string | null
  readonly picture: string | null
  readonly paper: string
  readonly pages: number
  /** What the printer lacks, as 100 / measured. */
  readonly correction: { readonly across: number; readonly along: number }
}

/** A file and what it holds; pages are counted from 1. */
export interface WrittenFile {
  readonly file: string
  readonly holds: readonly { readonly sheet: string; readonly from: number; readonly to: number }[]
}

/** Everything about a part as plain numbers: mm, degrees, rings as [[x, y], …]. `advice` where it does not fit. */
export function summarisePart(
  face: DerivedPart,
  unit: LengthUnit,
  templates: WrittenTemplates,
  files: readonly WrittenFile[],
  advice: FitAdvice | null,
) {
  const { part, play } = face
  const { recipe } = part
  return {
    name: part.name,
    panelFinished: part.finished,
    match: recipe.pattern === 'strips' ? recipe.match : recipe.pattern,
    arrangement: recipe.pattern === 'strips' ? recipe.arrangement : null,
    ...(recipe.pattern === 'radial' ? { radialMatch: recipe.match } : {}),
    leafCount: face.count * leavesEach(recipe),
    firstLeaf: recipe.firstLeaf,
    panel: { width: part.width, length: part.length },
    outline: {
      shape: part.outline.shape,
      finished: pairs(face.sizes.outlines.finished.ring),
      core: pairs(face.sizes.outlines.core.ring),
      sheet: pairs(face.sizes.outlines.sheet.ring),
    },
    overhang: edges(part.overhang),
    core: edges(part.core),
    cells: face.pieces.map(cellOf),
    rough: face.pieces.map(({ cell, flitch, leaf, roughOnLeaf }) => ({
      cell: cell.id,
      flitch: flitch.id,
      leaf: leaf?.number ?? null,
      polygon: pairs(roughOnLeaf),
    })),
    ...sheetsOf(face),
    leaves: leavesOf(face),
    seams: face.seams.map(seamOf),
    madeUp: face.pieces.flatMap(madeUpOf),
    seamWork: seamWork(face),
    centre: face.centre,
    finished: { widths: face.plan.columns?.map(({ from, to }) => to - from) ?? null },
    border: borderOf(face),
    pairs: face.pairs.map(pairOf),
    play: {
      empty: play.region.length === 0,
      exact: play.exact,
      area: regionArea(play.region),
      polygons: rings(play.region),
    },
    waysToFit: advice && adviceOf(advice, unit),
    findings: face.findings.map((finding) => ({
      code: finding.code,
      grade: finding.grade,
      measured: finding.measured,
      limit: finding.limit,
      sentence: findingSentence(finding, unit),
    })),
    repairs: face.repairs.repairs.map((repair) => repairOf(repair, unit)),
    repairsSpared: face.repairs.spared.map(sparedOf),
    templates,
    files,
  }
}

/** What would make a face fit that does not, the cheapest in wood first; which leaves govern it. */
const adviceOf = ({ governing, ways, scarf }: FitAdvice, unit: LengthUnit) => ({
  governing,
  ways: ways.map((way) => ({ ...way, sentence: remedyLabel(way, unit) })),
  scarf,
})

/** The border as decided and as laid; null without one. */
const borderOf = ({ part, border }: DerivedPart) =>
  part.border &&
  border && {
    ...part.border,
    flitch: border.flitch.id,
    leaves: border.leaves,
    stringLength: stringLength(border),
    position: pair(border.position),
    play: { empty: border.play.region.length === 0, polygons: rings(border.play.region) },
    stringBetween: border.string && {
      outside: pairs(border.string.outside.ring),
      inside: pairs(border.string.inside.ring),
    },
  }

/** A pair as this part sees it: with which other, which of its edges meets, what the figure does there and what is lost. */
const pairOf = ({ pair, is, other, side, void: why, meeting }: PairReport) => ({
  with: other.id,
  name: other.name,
  is,
  meet: pair.meet,
  edge: side,
  gap: pair.gap,
  pressed: pair.pressed,
  overhangAtGap: beyondAtGap(pair),
  holds: why === null,
  why,
  meets: meeting?.meets ?? null,
  jump: meeting?.jump ?? null,
  depthOffset: meeting?.depthOffset ?? null,
  lost: meeting?.lost ?? null,
})

const repairOf = (repair: Repair, unit: LengthUnit) => ({
  flitch: repair.flitch,
  leaf: repair.leaf,
  cell: repair.cell,
  defect: repair.defect.id,
  kind: repair.defect.kind,
  at: repair.spot && pair(repair.spot.at),
  ...repair.mending,
  sentence: `${repairHead(repair, unit)}. ${mendingWords(repair.mending, unit)}`,
})

const sparedOf = ({ flitch, leaf, defect }: Spared) => ({ flitch, leaf, defect: defect.id, kind: defect.kind })

const edges = ({ top, right, bottom, left }: Edges) => [top, right, bottom, left]

const pairs = <S extends Space>(ring: Ring<S>) => ring.map(({ x, y }) => [x, y])

const rings = <S extends Space>(region: Region<S>) => region.map((polygon) => polygon.map(pairs))

const pair = <S extends Space>({ x, y }: Point<S>) => [x, y]

const numbers = <F extends Space, S extends Space>({ a, b, c, d, e, f }: Transform<F, S>) => [a, b, c, d, e, f]

const cellOf = ({ cell, flitch, leaf, leafToPanel, place }: Piece) => ({
  id: cell.id,
  flitch: flitch.id,
  leaf: leaf?.number ?? null,
  turnedOver: cell.turn.turnedOver,
  spun: cell.turn.spun,
  polygon: pairs(cell.face.ring),
  edges: edgeRuns(cell.face),
  ...(cell.toCut === cell.window ? {} : { cutTo: cutToOf(cell) }),
  placement: numbers(leafToPanel),
  window: {
    group: cell.group,
    position: pair(place.position),
    nudge: pair(place.nudge),
    drift: pair(place.drift),
    ...(place.farther.x !== 0 || place.farther.y !== 0 ? { farther: pair(place.farther) } : {}),
  },
})

/** What a piece is cut to where that is more than its place, laid in the face as the place is. */
function cutToOf({ toCut, lay }: Cell) {
  const laid = carried(lay, toCut)
  return { polygon: pairs(laid.ring), edges: edgeRuns(laid) }
}

/** Which strips are joined into a sheet, and what is then cut from it; nothing where every piece is from one leaf. */
function sheetsOf(face: DerivedPart) {
  const templates = sheetTemplates(face)
  const sheets = templates.flatMap(({ name, rough, window, joints, sheets }) =>
    sheets.map(({ cell, strips }) => ({
      cell: cell.id,
      strips: strips.map((strip) => strip.cell.id),
      leaves: strips.map(({ leaf }) => leaf?.number ?? null),
      turnedOver: cell.turn.turnedOver,
      template: name,
      // as the sheet lies when it is made: sheet mm to panel mm
      lay: numbers(cell.lay),
      window: pairs(window),
      rough: pairs(rough),
      joints: joints.map(({ a, b }) => [pair(a), pair(b)]),
    })),
  )
  return sheets.length > 0 ? { sheets } : {}
}

/** How a piece's leaf is made up; nothing for a leaf as it is. */
const madeUpOf = (piece: Piece) =>
  piece.made
    ? [
        {
          cell: piece.cell.id,
          leaf: piece.leaf?.number ?? null,
          how: piece.made.makeUp.how,
          cut: piece.made.makeUp.cut && { ...piece.made.makeUp.cut, through: pair(piece.made.makeUp.cut.through) },
          outline: pairs(piece.made.outline[0]),
          usable: rings(piece.usable),
          parts: pieceParts(piece).map(({ leaf, rough, toMade, leafToPanel }) => ({
            leaf,
            polygons: rings(rough),
            toMade: numbers(toMade),
            placement: numbers(leafToPanel),
          })),
          joints: piece.made.seams.map(({ edge, kind, step }) => ({
            kind,
            step,
            from: pair(edge.a),
            to: pair(edge.b),
            length: edgeLength(edge),
          })),
        },
      ]
    : []

/** What is glued and taped: the seams over the whole taped sheet, and the joints of made-up leaves over all their length. */
function seamWork({ seams, pieces }: DerivedPart) {
  const seamLength = seams.reduce((sum, { length }) => sum + length, 0)
  const joints = pieces.reduce((sum, piece) => sum + jointLength(piece), 0)
  return { seams: seamLength, joints, glued: seamLength + joints, taped: seamLength + joints }
}

/** What the edges of a ring are, those that go on alike taken together: from point `from` of the polygon on. */
function edgeRuns<S extends Space>({ tags }: TaggedRing<S>) {
  const told = tags.map((tag) => ({
    kind: tag.kind,
    ...(tag.kind === 'seam' ? { joint: tag.joint } : { side: tag.side, source: tag.source, jointed: tag.jointed }),
    curve:
      tag.curve?.shape === 'arc'
        ? { centre: pair(tag.curve.centre), radius: tag.curve.radius }
        : (tag.curve?.shape ?? null),
  }))
  return told.flatMap((edge, from) => {
    const before = told[from - 1]
    return from > 0 && JSON.stringify(before) === JSON.stringify(edge) ? [] : [{ from, ...edge }]
  })
}

/** Each leaf once, however many pieces are taken from it. */
function leavesOf({ pieces }: DerivedPart) {
  const used = new Map(pieces.flatMap((piece) => (piece.leaf ? [[piece.leaf, piece]] : [])))
  return [...used].map(([leaf, { flitch, usable, made }]) => ({
    flitch: flitch.id,
    leaf: leaf.number,
    outline: pairs(leafOutline(flitch, leaf)),
    // of a made-up leaf what its parts are cut from, where it lies before they are moved
    usable: rings(
      made
        ? made.parts.filter((part) => part.leaf === leaf.number).flatMap((part) => backOnLeaf(usable, part))
        : usable,
    ),
  }))
}

const seamOf = ({ letter, kind, edge, line, length, finishedLength, meets, depthOffset, jump, sides }: SeamReport) => ({
  letter,
  kind,
  from: pair(edge.a),
  to: pair(edge.b),
  length,
  ...(line.length > 2 ? { line: pairs(line) } : {}),
  finishedLength,
  meets,
  depthOffset,
  jump,
  stretches: sides.map((side) => ({
    from: pair(side.edge.a),
    to: pair(side.edge.b),
    left: side.left,
    right: side.right,
    meets: side.meets,
    depthOffset: side.depthOffset,
  })),
})
