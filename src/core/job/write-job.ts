import type { Box, Edges } from '../geometry/box'
import type { PanelOutline } from '../geometry/panel-outline'
import type { Point, Space } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import type { Flitch } from '../leaves/flitch'
import type { Defect, DoneCut, Leaf, StoredPicture } from '../leaves/leaf'
import type { Border } from '../patterns/border'
import type { Recipe } from '../patterns/recipe'
import type { DataSheet, DataSheets, Pressing, PressRoom } from '../press/pressing'
import type { Shop } from '../shop'
import { MEASURED_AT, type Job, type Part } from './job'
import { layoutJson, type Json } from './layout-json'
import type { MakeUp, SlantedCut } from './make-up'
import { NEWEST_VERSION } from './migrations'
import { rectangle } from './usual'

/**
 * The job as the text of a job.json: lengths in mm, angles in degrees, points as [x, y]. Everything that has a
 * usual value is written all the same, so that a file keeps its meaning if the usual changes; only what is empty
 * is left out.
 */
export const writeJob = (job: Job): string =>
  layoutJson({
    format: 'leafturn job',
    version: NEWEST_VERSION,
    name: job.name,
    unit: job.unit,
    shop: plainShop(job.shop),
    pressRoom: plainPressRoom(job.pressRoom),
    flitches: job.flitches.map(plainFlitch),
    parts: job.parts.map(plainPart),
    pairs: unlessEmpty(job.pairs.map((pair) => ({ ...pair }))),
  })

const plainShop = ({ clearance, tolerates, ...shop }: Shop): Json => ({
  clearance: { ...clearance },
  tolerates: { ...tolerates },
  splitTape: shop.splitTape,
  sliver: shop.sliver,
  leastOverhang: shop.leastOverhang,
  offCentre: shop.offCentre,
  longestSeam: shop.longestSeam,
  betweenPieces: shop.betweenPieces,
})

function plainFlitch({ outline, leaves, missing, ...flitch }: Flitch): Json {
  const size = sizeOf(outline)
  return {
    ...flitch,
    ...(size ? { size } : { outline: plainRing(outline) }),
    leaves: leaves.every(({ number }, i) => number === i + 1) ? leaves.length : leaves.map(({ number }) => number),
    differing: unlessEmpty(leaves.map(plainLeaf).filter((leaf) => Object.keys(leaf).length > 1)),
    missing: unlessEmpty(missing.map(({ after, count }) => ({ after, count }))),
  }
}

/** Only what sets the leaf apart from one of which nothing but the number is known. */
function plainLeaf({ number, outline, defects, state, drift, note, picture, cuts }: Leaf): {
  readonly [key: string]: Json
} {
  return {
    number,
    ...(state !== 'in use' && { state }),
    ...((drift.x !== 0 || drift.y !== 0) && { drift: plainPoint(drift) }),
    ...(note !== '' && { note }),
    ...(outline && { outline: plainRing(outline) }),
    ...(defects.length > 0 && { defects: defects.map(plainDefect) }),
    ...(picture && { picture: plainPicture(picture) }),
    ...(cuts.length > 0 && { cuts: cuts.map(plainCut) }),
  }
}

const plainCut = ({ part, cell, outline }: DoneCut): Json => ({ part, cell, outline: plainRing(outline) })

const plainPicture = ({ hash, width, height, mmPerPx, origin }: StoredPicture): Json => ({
  hash,
  width,
  height,
  mmPerPx,
  origin: plainPoint(origin),
})

function plainDefect(defect: Defect): Json {
  const { id, kind } = defect
  // a break is square unless something else is said
  const through = defect.through === 'slanted' ? defect.through : undefined
  const note = defect.note === '' ? undefined : defect.note
  switch (defect.shape) {
    case 'spot':
      return { id, kind, shape: defect.shape, centre: plainPoint(defect.centre), radius: defect.radius, note, through }
    case 'line':
      return { id, kind, shape: defect.shape, from: plainPoint(defect.from), to: plainPoint(defect.to), note, through }
    case 'area':
      return { id, kind, shape: defect.shape, ring: plainRing(defect.ring), note, through }
  }
}

const plainPart = ({
  core,
  overhang,
  outline,
  recipe,
  positions,
  chosen,
  nudges,
  madeUp,
  asCut,
  border,
  pressing,
  ...part
}: Part): Json => ({
  ...part,
  outline: plainOutline(outline),
  core: plainEdges(core),
  overhang: plainEdges(overhang),
  recipe: plainRecipe(recipe),
  positions: plainRecord(positions, plainPoint),
  chosen: plainRecord(chosen, (leaf) => leaf),
  nudges: plainRecord(nudges, ({ leaf, by }) => ({ leaf, by: plainPoint(by) })),
  madeUp: plainRecord(madeUp, plainMakeUp),
  asCut: plainRecord(inOrder(asCut), (length) => length),
  border: border ? plainBorder(border) : undefined,
  pressing: plainPressing(pressing),
})

const plainPressing = (pressing: Pressing): Json => {
  const { layers, wantedThickness, gluedBefore, method, glue, edges, curve } = pressing
  return {
    layers: layers.map((layer) => ({ ...layer })),
    wantedThickness,
    gluedBefore,
    method,
    glue,
    edges: {
      top: { ...edges.top },
      right: { ...edges.right },
      bottom: { ...edges.bottom },
      left: { ...edges.left },
    },
    curve: curve && { ...curve },
  }
}

/** Only what has been read on the sheets, glue by glue. */
const plainDataSheets = (sheets: DataSheets): Json | undefined =>
  plainRecord(
    sheets as Readonly<Record<string, DataSheet>>,
    (sheet) =>
      Object.fromEntries(Object.entries(sheet).filter(([, value]) => value !== null)) as Readonly<Record<string, Json>>,
  )

const plainPressRoom = ({ platen, bag, suction, hands, clamps, ...room }: PressRoom): Json => ({
  gluing: { ...room.gluing },
  driest: { ...room.driest },
  dampest: { ...room.dampest },
  coreTemperature: room.coreTemperature,
  dataSheets: plainDataSheets(room.dataSheets),
  suction: { ...suction },
  platen: [platen.width, platen.length],
  bag: [bag.width, bag.length],
  hands,
  clamps: { ...clamps },
})

function plainMakeUp(makeUp: MakeUp): Json {
  if (makeUp.how === 'longer') return { ...makeUp, cut: plainSlant(makeUp.cut) }
  const { kept, offcut, cut, strip } = makeUp
  return {
    ...makeUp,
    kept: plainBox(kept),
    offcut: plainBox(offcut),
    cut: cut && plainSlant(cut),
    strip: plainBox(strip),
  }
}

const plainSlant = (cut: SlantedCut): Json => ({ ...cut, through: plainPoint(cut.through) })

const plainBox = ({ min, max }: Box<'leaf'>): Json => [plainPoint(min), plainPoint(max)]

const plainOutline = (outline: PanelOutline): Json =>
  outline.shape === 'drawn'
    ? {
        shape: 'drawn',
        corners: outline.corners.map(({ at, bulge }) => (bulge === 0 ? plainPoint(at) : [at.x, at.y, bulge])),
      }
    : { ...outline }

const plainRecipe = (recipe: Recipe): Json =>
  recipe.pattern === 'radial' ? { ...recipe, centre: plainPoint(recipe.centre) } : { ...recipe }

const plainBorder = ({ string, flitch, ...border }: Border): Json => ({
  ...border,
  flitch: flitch ?? undefined,
  string: string && { ...string },
})

function plainEdges({ top, right, bottom, left }: Edges): Json {
  if (top !== bottom || left !== right) return [top, right, bottom, left]
  return top === left ? top : { sides: left, ends: top }
}

function plainRecord<T>(record: Readonly<Record<string, T>>, plain: (value: T) => Json): Json | undefined {
  const entries = Object.entries(record)
  return entries.length === 0 ? undefined : Object.fromEntries(entries.map(([key, value]) => [key, plain(value)]))
}

/** The same measures give the same file, in whatever order they were taken. */
const inOrder = (asCut: Part['asCut']): Readonly<Record<string, number>> =>
  Object.fromEntries(MEASURED_AT.flatMap((at) => (asCut[at] === undefined ? [] : [[at, asCut[at]]])))

const plainPoint = <S extends Space>({ x, y }: Point<S>): Json => [x, y]

const plainRing = <S extends Space>(ring: Ring<S>): Json => ring.map(plainPoint)

const unlessEmpty = (list: readonly Json[]): Json | undefined => (list.length === 0 ? undefined : list)

/** Width and length of an outline that is nothing but a rectangle from the origin. */
function sizeOf(outline: Ring<'leaf'>): Json | null {
  const corner = outline[2]
  if (!corner || outline.length !== 4) return null
  const plain = rectangle(corner.x, corner.y)
  return outline.every((p, i) => p.x === plain[i]!.x && p.y === plain[i]!.y) ? [corner.x, corner.y] : null
}
