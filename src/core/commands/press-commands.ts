import type { Side } from '../geometry/box'
import { hasOneOverhang } from '../geometry/panel-outline'
import type { PartId } from '../ids'
import { pressRoomTrouble } from '../job/check-part'
import type { Job, Part } from '../job/job'
import { edgeSpare, pressedEdge } from '../press/edges'
import { withLayer, withLayerMoved, withoutLayer } from '../press/change-layers'
import type { PressRemedy } from '../press/of-job/press-finding'
import {
  NO_DATA_SHEET,
  type DataSheet,
  type EdgeWork,
  type GlueName,
  type Layer,
  type Pressing,
  type PressRoom,
} from '../press/pressing'
import { facedTwice } from '../press/warp'
import { ok, refused } from '../result'
import { changeWithinPart, patched, type Next } from './change-within'

/** What is said of a pressing apart from its layers and edges. */
export type PressingPatch = Partial<Pick<Pressing, 'wantedThickness' | 'gluedBefore' | 'method' | 'glue' | 'curve'>>

export const changePressing = (job: Job, id: PartId, patch: PressingPatch): Next =>
  changeWithinPressing(job, id, (pressing) => patched(pressing, patch))

/** Puts a layer in the place `at`, counted from the show face; what lay there goes one further back. */
export const addLayer = (job: Job, id: PartId, at: number, layer: Layer): Next =>
  changeWithinPressing(job, id, (pressing) => withLayer(pressing, at, layer))

export const removeLayer = (job: Job, id: PartId, nth: number): Next =>
  atLayer(job, id, nth, (pressing) => withoutLayer(pressing, nth))

/** Puts the layer that lies at `nth` in the place `to`; beyond the ends it stops there. */
export const moveLayer = (job: Job, id: PartId, nth: number, to: number): Next =>
  atLayer(job, id, nth, (pressing) => withLayerMoved(pressing, nth, to))

/** Puts another layer in the place of one. */
export const changeLayer = (job: Job, id: PartId, nth: number, layer: Layer): Next =>
  atLayer(job, id, nth, (pressing) => ({ ...pressing, layers: pressing.layers.with(nth, layer) }))

/** Another build-up altogether, all of it glued in one pressing. */
export const setLayers = (job: Job, id: PartId, layers: readonly Layer[]): Next =>
  changeWithinPressing(job, id, (pressing) => ({ ...pressing, layers, gluedBefore: [] }))

/**
 * What is done to an edge. The core as pressed follows in the same step: what the edge has to be sawn off stays, as far
 * as the new work leaves room for it. An outline without four sides has one edge, and one work for it.
 */
export const setEdge = (job: Job, id: PartId, side: Side, work: EdgeWork): Next =>
  changeWithinPart(job, id, (part) => {
    const sides = hasOneOverhang(part.outline) ? SIDES : [side]
    const moved = pressedEdge(work, edgeSpare(part.pressing.edges[side], part.core[side]))
    const all = <T>(value: T) => Object.fromEntries(sides.map((one) => [one, value]))
    const edges = { ...part.pressing.edges, ...all(work) }
    return ok({ ...part, core: { ...part.core, ...all(moved) }, pressing: { ...part.pressing, edges } })
  })

/** The part with a finding's remedy carried out. */
export function applyPressRemedy(job: Job, id: PartId, remedy: PressRemedy): Next {
  switch (remedy.remedy) {
    case 'glue':
      return changePressing(job, id, { glue: remedy.glue })
    case 'method':
      return changePressing(job, id, { method: remedy.method })
    case 'backer':
      return changeWithinPressing(job, id, (pressing) => ({ ...pressing, layers: facedTwice(pressing.layers) }))
  }
}

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

/** What the press room is changed by: the clamps one kind at a time. */
export type PressRoomPatch = Partial<Omit<PressRoom, 'clamps' | 'dataSheets'>> & {
  readonly clamps?: Partial<PressRoom['clamps']>
}

export function changePressRoom(job: Job, { clamps = {}, ...patch }: PressRoomPatch): Next {
  return withPressRoom(job, patched(job.pressRoom, { ...patch, clamps: patched(job.pressRoom.clamps, clamps) }))
}

/** What the maker has read on a glue's own data sheet; null for what is not on it. A sheet without anything goes. */
export function changeDataSheet(job: Job, glue: GlueName, patch: Partial<DataSheet>): Next {
  const { [glue]: before = NO_DATA_SHEET, ...others } = job.pressRoom.dataSheets
  const sheet = patched(before, patch)
  if (sheet === before) return ok(job)
  const isEmpty = Object.values(sheet).every((value) => value === null)
  return withPressRoom(job, { ...job.pressRoom, dataSheets: isEmpty ? others : { ...others, [glue]: sheet } })
}

function withPressRoom(job: Job, pressRoom: PressRoom): Next {
  const wrong = pressRoomTrouble(pressRoom)
  return wrong ? refused(wrong) : ok(patched(job, { pressRoom }))
}

const changeWithinPressing = (job: Job, id: PartId, change: (pressing: Pressing) => Pressing): Next =>
  changeWithinPart(job, id, (part) => ok(patched(part, { pressing: change(part.pressing) })))

/** As above, where the layer that is spoken of must be there. */
const atLayer = (job: Job, id: PartId, nth: number, change: (pressing: Pressing) => Pressing): Next =>
  changeWithinPart(job, id, (part: Part) =>
    part.pressing.layers[nth] === undefined
      ? refused({ trouble: 'not there', thing: 'layer', id: String(nth + 1) })
      : ok(patched(part, { pressing: change(part.pressing) })),
  )
