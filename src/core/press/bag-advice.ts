import type { Edges, Side } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { Layer, PressRoom } from './pressing'
import { practice, seen } from './provenance'

/** How far the platen stays inside the bag all round, at least: one guide says 1 in; another 3 in, to spare the seams. */
export const BAG_CLEAR = seen(25)
/** A top board this much smaller than the lower one, all told. */
export const CAUL_SMALLER = seen(6)

/** How far the taped sheet should stand over the core in a bag, mm: along its sides and at its ends. */
export const BAG_OVERHANG = {
  sides: { least: practice(5), most: practice(8) },
  ends: { least: practice(5), most: practice(10) },
} as const

export type FitTrouble =
  | { readonly trouble: 'platen'; readonly over: number }
  | { readonly trouble: 'bag width' | 'bag length'; readonly over: number }

/** Whether a core as pressed fits the platen, and platen and stack fit the bag; `stack` is the height of all in the bag. */
export function fitTroubles(
  core: { width: number; length: number },
  stack: number,
  room: Pick<PressRoom, 'platen' | 'bag'>,
): FitTrouble[] {
  const { platen, bag } = room
  const troubles: FitTrouble[] = []
  const onPlaten = Math.min(
    Math.max(core.width - platen.width, core.length - platen.length),
    Math.max(core.length - platen.width, core.width - platen.length),
  )
  if (onPlaten > 0) troubles.push({ trouble: 'platen', over: onPlaten })
  // a flat bag closed over a stack of this height is narrower by it
  const need = (side: number): number => side + stack + 2 * BAG_CLEAR.value
  if (need(platen.width) > bag.width) troubles.push({ trouble: 'bag width', over: need(platen.width) - bag.width })
  if (need(platen.length) > bag.length) troubles.push({ trouble: 'bag length', over: need(platen.length) - bag.length })
  return troubles
}

export function fitSentence(trouble: FitTrouble, unit: LengthUnit): string {
  const over = showLength(trouble.over, unit, 'whole')
  if (trouble.trouble === 'platen') return `The core is ${over} too large for the platen.`
  const side = trouble.trouble === 'bag width' ? 'wide' : 'long'
  return `With this platen and stack the bag is ${over} too little ${side}: it needs ${showLength(BAG_CLEAR.value, unit, 'whole')} clear all round.`
}

/** The caul above the work: as large as the core, a little less, never more. */
export const caulSize = (core: { width: number; length: number }): { width: number; length: number } => ({
  width: core.width - CAUL_SMALLER.value / 2,
  length: core.length - CAUL_SMALLER.value / 2,
})

/** What a caul of this size does to the panel; null when it does no harm. */
export function caulTrouble(
  core: { width: number; length: number },
  caul: { width: number; length: number },
  unit: LengthUnit,
): string | null {
  const over = Math.max(caul.width - core.width, caul.length - core.length)
  if (over <= 0) return null
  return `The caul stands ${showLength(over, unit, 'seam')} over the core: the bag would bend its rim down and leave the panel hollow. Cut it to ${showLength(caulSize(core).width, unit, 'whole')} × ${showLength(caulSize(core).length, unit, 'whole')}.`
}

export interface OverhangTrouble {
  readonly side: Side
  readonly trouble: 'snaps' | 'bare'
  readonly overhang: number
  readonly limit: number
}

/** Edges where the sheet stands out so far that the bag snaps it, or so little that the edge may stay bare. */
export function overhangTroubles(overhang: Edges): OverhangTrouble[] {
  return (Object.keys(overhang) as Side[]).flatMap((side): OverhangTrouble[] => {
    const { least, most } = side === 'left' || side === 'right' ? BAG_OVERHANG.sides : BAG_OVERHANG.ends
    if (overhang[side] > most.value) return [{ side, trouble: 'snaps', overhang: overhang[side], limit: most.value }]
    if (overhang[side] < least.value) return [{ side, trouble: 'bare', overhang: overhang[side], limit: least.value }]
    return []
  })
}

const EDGE_NAMES: Readonly<Record<Side, string>> = {
  left: 'left side',
  right: 'right side',
  top: 'upper end',
  bottom: 'lower end',
}

export function overhangSentence({ side, trouble, overhang, limit }: OverhangTrouble, unit: LengthUnit): string {
  const [out, at] = [showLength(overhang, unit, 'seam'), showLength(limit, unit, 'seam')]
  return trouble === 'snaps'
    ? `At the ${EDGE_NAMES[side]} the sheet stands ${out} over the core: the bag folds it down and snaps it, and the crack can run in. Leave ${at} at most.`
    : `At the ${EDGE_NAMES[side]} the sheet stands only ${out} over the core: if it creeps on the wet glue the edge is bare. Leave ${at} at least.`
}

/** How the load is built up, from below. */
export function bagOrder(layers: readonly Layer[]): string[] {
  const thin = layers.some(({ kind, thickness }) => kind === 'veneer' && thickness < 1)
  return [
    'Grooved platen, its edges rounded: the air leaves through the grooves.',
    ...(thin ? ['A smooth board on the platen, or the grooves print through a thin leaf.'] : []),
    'Release sheet: film or waxed paper, a little larger than the taped sheet.',
    'Back sheet, glued core, taped face: centre lines drawn on all four edges of the core and on the tape, laid line on line.',
    'Two pins through the waste at opposite ends: wet glue lets the sheet creep.',
    'Release sheet, then a smooth caul as large as the core or a little less, never more.',
    'Breather mesh to the port where there are no grooves.',
    'Pump on; hold the work in place till the film has it, press out folds, read the gauge.',
  ]
}

export const NEVER_HOLLOW = 'Never bag a hollow core or a torsion box: the bag crushes its skins between the ribs.'

export interface LoadNote {
  readonly panels: number
  readonly loads: number
  readonly tooLarge: readonly string[]
}

/** How many panels go into the bag how often. */
export function loadSentence({ panels, loads, tooLarge }: LoadNote): string {
  const cannot = tooLarge.length === 0 ? '' : ` Too large for the platen: ${tooLarge.join(', ')}.`
  const fits = panels - tooLarge.length
  if (fits === 0) return `Nothing fits the platen.${cannot}`
  const count = `${fits} ${fits === 1 ? 'panel' : 'panels'}`
  return `${count} in ${loads} ${loads === 1 ? 'load' : 'loads'}.${cannot}`
}
