/**
 * All that is told about gluing up one part, from what has been decided: the one way through this room. Nothing here
 * is saved; every sentence can be made again.
 */
import type { Edges } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { afterwardsSentences } from './afterwards'
import {
  bagOrder,
  caulSize,
  fitSentence,
  fitTroubles,
  NEVER_HOLLOW,
  overhangSentence,
  overhangTroubles,
  type FitTrouble,
} from './bag-advice'
import { balanceOf, balanceSentences, type Balance } from './balance'
import { clampSentences } from './cauls'
import { cautionsAt, type Caution } from './cautions'
import { chooseGlue, judgeGlue, type GlueTask, type GlueVerdict } from './choose-glue'
import { curveSentence, curveTrouble, developed } from './curved-work'
import {
  coreSentence,
  edgeOrder,
  edgeStrips,
  hasEdgeVeneer,
  LEAF_TOO_NARROW,
  sizeWith,
  stripSentence,
  type EdgeStrips,
} from './edges'
import { amountSentence, BOTH_AT_ONCE, coatingSentence, glueLines, glueNeed, type GlueNeed } from './glue-amount'
import { glueInUse, type GlueInUse } from './glues'
import { HAMMER_OTHERWISE, hammerOrder, hammerSentences } from './hammer-work'
import { layerLine } from './layer-words'
import { minutesToPressure, openSentence } from './open-time'
import { pressTimeSentences } from './press-time'
import { NO_DATA_SHEET, type DataSheet, type GlueName, type Layer, type Pressing, type PressRoom } from './pressing'
import { sandingSentence } from './sanding'
import { STEPS, type StepName } from './steps'
import { thicknessSentences, totalThickness, type Thickness } from './thickness'
import { pressureSentences } from './vacuum'
import { backerSentence, UPPER_BOUND, warpSentences } from './warp-words'
import { panelMovement, warpOverYear, worstBow, type PanelSize, type SeasonWarp } from './warp'
import { woodNotes } from './wood-notes'
import { findWood } from './woods'

export interface PressTask {
  readonly pressing: Pressing
  readonly room: PressRoom
  /** Finished. */
  readonly panel: PanelSize
  /** The core as pressed beyond the finished panel, and the taped sheet beyond that. */
  readonly core: Edges
  readonly overhang: Edges
  /** Panels of this kind that are spread and closed in one go. */
  readonly panels: number
  /** Borders of the strips from the left, the outer edges first and last; null where the face is not laid in strips. */
  readonly borders: readonly number[] | null
  /** What a leaf of the face has to give for strips on the edges. */
  readonly leaf: PanelSize
  readonly unit: LengthUnit
}

export interface PressPlan {
  readonly buildUp: readonly string[]
  readonly thickness: readonly string[]
  readonly balance: Balance & { readonly sentences: readonly string[] }
  readonly warp: { readonly driest: SeasonWarp; readonly dampest: SeasonWarp; readonly sentences: readonly string[] }
  readonly glue: {
    readonly inUse: GlueInUse
    readonly verdict: GlueVerdict
    /** All of them, the fittest first. */
    readonly all: readonly GlueVerdict[]
    readonly need: GlueNeed
    readonly sentences: readonly string[]
  }
  /** Pressure, fit and order of the way of pressing that was chosen. */
  readonly press: readonly string[]
  /** Where the core, the platen and the bag do not fit each other; empty outside the bag. */
  readonly fit: readonly FitTrouble[]
  /** Where the core goes into the press. */
  readonly pressed: PanelSize
  readonly total: Thickness
  /** Strips of veneer for the edges; null where none is veneered, or a leaf is too narrow. */
  readonly strips: EdgeStrips | null
  readonly edges: readonly string[]
  readonly curve: readonly string[]
  readonly afterwards: readonly string[]
  readonly cautions: Readonly<Record<StepName, readonly Caution[]>>
}

export function planPressing(task: PressTask): PressPlan {
  const { pressing, unit, panel } = task
  const total = totalThickness(pressing.layers)
  const fit = bagFit(task, total)
  const strips = edgeStrips({ ...panel, thickness: total.nominal }, pressing.edges, task.leaf)
  return {
    buildUp: pressing.layers.map((layer) => layerLine(layer, unit)),
    thickness: thicknessSentences(pressing.layers, pressing.wantedThickness, unit),
    balance: { ...balanceOf(pressing.layers), sentences: balanceSentences(pressing.layers, unit) },
    warp: warpPlan(task),
    glue: gluePlan(task),
    press: pressWords(task, fit),
    fit,
    pressed: sizeWith(panel, task.core),
    total,
    strips,
    edges: edgeWords(task, strips),
    curve: curveWords(task),
    afterwards: afterwardsWords(pressing, unit),
    cautions: cautionsOf(task),
  }
}

function warpPlan({ pressing, room, panel, unit }: PressTask): PressPlan['warp'] {
  const { layers } = pressing
  const { driest, dampest } = warpOverYear(layers, panel, room)
  return {
    driest,
    dampest,
    sentences: [
      ...warpSentences('driest', driest, layers, unit),
      ...warpSentences('dampest', dampest, layers, unit),
      ...(worstBow([driest.warp, dampest.warp]) === 0 ? [] : [UPPER_BOUND]),
      backerSentence(layers, panel, room, unit),
      movementSentence({ pressing, room, panel, unit }),
      ...woodNotes(layers),
    ],
  }
}

/** From the driest to the dampest season, the face by itself and the panel. */
function movementSentence({
  pressing,
  room,
  panel,
  unit,
}: Pick<PressTask, 'pressing' | 'room' | 'panel' | 'unit'>): string {
  const at = (season: 'driest' | 'dampest') => panelMovement(pressing.layers, panel, room.gluing, room[season])
  const [dry, damp] = [at('driest'), at('dampest')]
  const say = (length: number): string => showLength(Math.abs(length), unit, 'seam')
  const free = Math.max(
    Math.abs(damp.freeFace.width - dry.freeFace.width),
    Math.abs(damp.freeFace.length - dry.freeFace.length),
  )
  return `Over the year a free face would move ${say(free)}; the glued panel moves ${say(damp.panel.width - dry.panel.width)} over its width and ${say(damp.panel.length - dry.panel.length)} over its length.`
}

const sheetOf = ({ dataSheets }: PressRoom, glue: GlueName): DataSheet => dataSheets[glue] ?? NO_DATA_SHEET

/** The glue of a part, by its data sheet where that says more than the general figures. */
export const glueOf = ({ pressing, room }: Pick<PressTask, 'pressing' | 'room'>): GlueInUse =>
  glueInUse(pressing.glue, sheetOf(room, pressing.glue))

function gluePlan(task: PressTask): PressPlan['glue'] {
  const { pressing, room } = task
  const inUse = glueOf(task)
  const work = glueTask(task)
  const core = sizeWith(task.panel, task.core)
  const need = glueNeed(glueLines(pressing), core.width * core.length * task.panels, inUse)
  const several = need.lines.length > 1 ? [BOTH_AT_ONCE] : []
  const minutes = minutesToPressure(work.squareMetres, task.panels, pressing.method, room.hands)
  const open =
    pressing.method === 'leaf by leaf' || pressing.glue === 'contact cement' ? [] : [openSentence(inUse, minutes)]
  return {
    inUse,
    verdict: judgeGlue(inUse, work),
    all: chooseGlue(work, room.dataSheets),
    need,
    sentences: [
      amountSentence(need, inUse),
      coatingSentence(inUse),
      ...several,
      ...open,
      ...pressTimeSentences(inUse, room.coreTemperature),
    ],
  }
}

const isLeaf = (layer: Layer): layer is Extract<Layer, { kind: 'veneer' | 'solid' }> => layer.kind === 'veneer'

/** What the glue of this part has to do. */
export function glueTask({ pressing, room, panel, core, panels }: PressTask): GlueTask {
  const size = sizeWith(panel, core)
  const leaves = pressing.layers.filter(isLeaf)
  return {
    squareMetres: (glueLines(pressing).length * size.width * size.length * panels) / 1e6,
    panels,
    longestSide: Math.max(size.width, size.length),
    method: pressing.method,
    curved: pressing.curve !== null,
    noSingleGrain: leaves.some(({ grain }) => grain === 'no single grain'),
    oily: leaves.some(({ species }) => findWood(species)?.oily ?? false),
    coreTemperature: room.coreTemperature,
    hands: room.hands,
  }
}

function pressWords(task: PressTask, fit: readonly FitTrouble[]): string[] {
  const { pressing, room, panel, core, overhang, unit } = task
  const size = sizeWith(panel, core)
  const area = size.width * size.length
  if (pressing.method === 'cauls') return clampSentences(size, room.clamps, unit)
  if (pressing.method === 'leaf by leaf') return hammerWords(task.borders, unit)
  const caul = caulSize(size)
  return [
    ...pressureSentences(room.suction, area, pressing.layers, sheetOf(room, pressing.glue).pressure),
    ...fit.map((trouble) => fitSentence(trouble, unit)),
    ...overhangTroubles(overhang).map((trouble) => overhangSentence(trouble, unit)),
    `Caul: ${showLength(caul.width, unit, 'whole')} × ${showLength(caul.length, unit, 'whole')}.`,
    ...bagOrder(pressing.layers),
    NEVER_HOLLOW,
  ]
}

const hammerWords = (borders: readonly number[] | null, unit: LengthUnit): string[] =>
  borders ? hammerSentences(hammerOrder(borders), unit) : HAMMER_OTHERWISE

const bagFit = ({ pressing, room, panel, core }: PressTask, { nominal }: Thickness): readonly FitTrouble[] =>
  pressing.method === 'bag' ? fitTroubles(sizeWith(panel, core), nominal + BESIDES_THE_WORK, room) : []

function edgeWords({ pressing, panel, core, unit }: PressTask, strips: EdgeStrips | null): string[] {
  return [
    coreSentence(panel, pressing.edges, core, unit),
    ...edgeOrder(pressing.edges),
    ...(strips ? [stripSentence(strips, unit)] : hasEdgeVeneer(pressing.edges) ? [LEAF_TOO_NARROW] : []),
  ]
}

/** A platen and a caul of 3/4 in each. */
const BESIDES_THE_WORK = 38.1

function curveWords({ pressing, unit }: PressTask): string[] {
  const { curve, layers } = pressing
  if (!curve) return []
  const trouble = curveTrouble(curve, layers, (length) => showLength(length, unit, 'exact'))
  if (trouble !== null) return [trouble]
  const bent = developed(curve, layers)
  return bent ? [curveSentence(bent, unit)] : []
}

function afterwardsWords({ layers, glue }: Pressing, unit: LengthUnit): string[] {
  const face = layers.find(isLeaf)
  return [...(face ? [sandingSentence(face.thickness, unit)] : []), ...afterwardsSentences(glue)]
}

function cautionsOf({ pressing, room }: PressTask): PressPlan['cautions'] {
  const inUse = glueOf({ pressing, room })
  const of = {
    glue: pressing.glue,
    method: pressing.method,
    warmed: room.coreTemperature < inUse.leastTemperature.value,
    oily: pressing.layers.some((layer) => isLeaf(layer) && (findWood(layer.species)?.oily ?? false)),
  }
  return Object.fromEntries(STEPS.map(({ step }) => [step, cautionsAt(step, of)])) as Record<StepName, Caution[]>
}
