import type { DerivedPart } from '../core/derive'
import type { Region } from '../core/geometry/polygon'
import { gateWords } from '../core/ledger/gate-wording'
import { planLedger, type PlannedCut } from '../core/ledger/ledger'
import { offcutWords } from '../core/ledger/offcut-wording'
import type { LeafRest, Offcut } from '../core/ledger/offcuts'
import type { LengthUnit } from '../core/units/unit'

/** The cuts of a whole job in their order, and what is left of its leaves, as plain numbers: mm, rings as [[x, y], …]. */
export const summariseLedger = (faces: readonly DerivedPart[], rests: readonly LeafRest[], unit: LengthUnit) => ({
  cuts: planLedger(faces).flatMap(({ packets }) =>
    packets.flatMap(({ template, cuts }) => cuts.map((cut) => ({ template, ...cutOf(cut) }))),
  ),
  offcuts: rests.flatMap(({ offcuts, letGo }) => offcuts.map((offcut) => ({ ...offcutOf(offcut, unit), letGo }))),
})

const cutOf = ({ part, name, cell, flitch, leaf, takes, gate }: PlannedCut) => ({
  part,
  name,
  cell,
  flitch,
  leaf,
  takes: takes.map((claim) => ({ flitch: claim.flitch, leaf: claim.leaf, polygons: pairs(claim.region) })),
  state: gate.state,
  sentence: gateWords(gate),
})

const offcutOf = (offcut: Offcut, unit: LengthUnit) => ({
  flitch: offcut.flitch,
  leaf: offcut.leaf,
  label: offcut.label === '' ? null : offcut.label,
  use: offcut.use,
  polygon: pairs([offcut.outline])[0],
  strip: offcut.strip && {
    from: [offcut.strip.box.min.x, offcut.strip.box.min.y],
    width: offcut.strip.width,
    length: offcut.strip.length,
    area: offcut.strip.area,
    bound: offcut.strip.bound,
  },
  sentence: offcutWords(offcut, unit),
})

const pairs = (region: Region<'leaf'>) => region.map((polygon) => polygon.map((ring) => ring.map(({ x, y }) => [x, y])))
