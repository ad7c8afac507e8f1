import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { grainsApart, grainWords, layerName } from './layer-words'
import type { Grain, Layer } from './pressing'
import { findWood } from './woods'

/** What keeps a build-up from being the same in front and behind; `front` and `back` are places of layers. */
export type BalanceLack =
  | { readonly lack: 'backer'; readonly front: number }
  | { readonly lack: 'face'; readonly back: number }
  | {
      readonly lack: 'thickness' | 'species' | 'cut' | 'grain' | 'moisture'
      readonly front: number
      readonly back: number
    }
  | { readonly lack: 'core' }
  | { readonly lack: 'cross-band behind' | 'cross-band in front'; readonly place: number }

/** Things worth saying about a build-up that don't unbalance it. */
export type BalanceNote =
  | { readonly note: 'face along outer ply'; readonly layer: number; readonly ply: number }
  | { readonly note: 'middle sheet only adds thickness'; readonly layer: number }
  | { readonly note: 'no single grain'; readonly layer: number }

export interface Balance {
  /** Where a sheet's grain runs every way the tool advises and passes no verdict. */
  readonly verdict: 'balanced' | 'unbalanced' | 'advice'
  readonly lacks: readonly BalanceLack[]
  readonly notes: readonly BalanceNote[]
}

/** Thicknesses within 0.05 mm are one; leaves of one flitch vary by as much. */
export const SAME_THICKNESS = 0.05
const SAME_GRAIN = 1

type Sheet = { readonly layer: Exclude<Layer, { kind: 'glue line' }>; readonly place: number }
type Wooden = Extract<Layer, { kind: 'veneer' | 'solid' }>

/** Whether a build-up is the same from both sides, and what is missing when it isn't. */
export function balanceOf(layers: readonly Layer[]): Balance {
  const sheets = layers.flatMap((layer, place): Sheet[] => (layer.kind === 'glue line' ? [] : [{ layer, place }]))
  const lacks = lacksOf(sheets)
  const notes = [...outerPlies(sheets), ...middleSheets(sheets), ...everyWaySheets(sheets)]
  const anyEveryWay = notes.some(({ note }) => note === 'no single grain')
  const onlyGrain = lacks.every(({ lack }) => lack === 'grain' || lack === 'cut')
  const verdict = lacks.length === 0 ? 'balanced' : anyEveryWay && onlyGrain ? 'advice' : 'unbalanced'
  return { verdict: verdict === 'balanced' && anyEveryWay ? 'advice' : verdict, lacks, notes }
}

function lacksOf(sheets: readonly Sheet[]): BalanceLack[] {
  const first = sheets.findIndex(({ layer }) => layer.kind !== 'veneer')
  const last = sheets.findLastIndex(({ layer }) => layer.kind !== 'veneer')
  if (first === -1) return pairLacks(sheets, (sheets.length - 1) / 2)
  const front = sheets.slice(0, first)
  const behind = sheets.slice(last + 1).reverse()
  const core = sheets.slice(first, last + 1)
  return [...sideLacks(front, behind), ...(mirrors(core) ? [] : [{ lack: 'core' } as const])]
}

/** The veneers in front of the core against those behind, from outside in. */
function sideLacks(front: readonly Sheet[], behind: readonly Sheet[]): BalanceLack[] {
  if (front.length > 0 && behind.length === 0) return [{ lack: 'backer', front: front[0]!.place }]
  if (behind.length > 0 && front.length === 0) return [{ lack: 'face', back: behind[0]!.place }]
  const shared = Math.min(front.length, behind.length)
  const extraFront = front.slice(shared).map(({ place }): BalanceLack => ({ lack: 'cross-band behind', place }))
  const extraBehind = behind.slice(shared).map(({ place }): BalanceLack => ({ lack: 'cross-band in front', place }))
  return [
    ...front.slice(0, shared).flatMap((sheet, i) => differences(sheet, behind[i]!)),
    ...extraFront,
    ...extraBehind,
  ]
}

const pairLacks = (sheets: readonly Sheet[], middle: number): BalanceLack[] =>
  sheets.slice(0, Math.ceil(middle)).flatMap((sheet, i) => differences(sheet, sheets[sheets.length - 1 - i]!))

const mirrors = (core: readonly Sheet[]): boolean => pairLacks(core, (core.length - 1) / 2).length === 0

function differences(front: Sheet, back: Sheet): BalanceLack[] {
  const lack = (name: 'thickness' | 'species' | 'cut' | 'grain' | 'moisture'): BalanceLack => ({
    lack: name,
    front: front.place,
    back: back.place,
  })
  const [a, b] = [front.layer, back.layer]
  const off: BalanceLack[] = []
  if (Math.abs(a.thickness - b.thickness) > SAME_THICKNESS) off.push(lack('thickness'))
  if (stuffOf(a) !== stuffOf(b)) off.push(lack('species'))
  if (isWooden(a) && isWooden(b) && a.cut !== b.cut) off.push(lack('cut'))
  if (!sameGrain(a, b)) off.push(lack('grain'))
  if (a.moisture !== b.moisture) off.push(lack('moisture'))
  return off
}

const isWooden = (layer: Layer): layer is Wooden => layer.kind === 'veneer' || layer.kind === 'solid'

const stuffOf = (layer: Sheet['layer']): string =>
  layer.kind === 'board' ? layer.board : (findWood(layer.species)?.name ?? layer.species.trim().toLowerCase())

const hasGrain = (layer: Sheet['layer']): boolean => isWooden(layer) || layer.board.includes('plywood')

function sameGrain(a: Sheet['layer'], b: Sheet['layer']): boolean {
  if (!hasGrain(a) || !hasGrain(b)) return true
  if (a.grain === 'no single grain' || b.grain === 'no single grain') return a.grain === b.grain
  return grainsApart(a.grain, b.grain) <= SAME_GRAIN
}

/** A leaf straight on plywood with its grain along the outer ply's: the checks of the ply come through. */
function outerPlies(sheets: readonly Sheet[]): BalanceNote[] {
  const beside = sheets.flatMap(({ layer, place }, i) =>
    layer.kind === 'veneer'
      ? [sheets[i - 1], sheets[i + 1]].flatMap((next) => (next ? [{ layer, place, next }] : []))
      : [],
  )
  return beside
    .filter(
      ({ layer, next }) =>
        next.layer.kind === 'board' && hasGrain(next.layer) && crossesLittle(layer.grain, next.layer.grain),
    )
    .map(({ place, next }) => ({ note: 'face along outer ply', layer: place, ply: next.place }))
}

const crossesLittle = (a: Grain, b: Grain): boolean =>
  a !== 'no single grain' && b !== 'no single grain' && grainsApart(a, b) < 45

/** A single sheet between two boards is no cross-band: it lies where nothing bends. */
const middleSheets = (sheets: readonly Sheet[]): BalanceNote[] =>
  sheets
    .filter(
      ({ layer }, i) =>
        layer.kind === 'veneer' && sheets[i - 1]?.layer.kind === 'board' && sheets[i + 1]?.layer.kind === 'board',
    )
    .map(({ place }) => ({ note: 'middle sheet only adds thickness', layer: place }))

const everyWaySheets = (sheets: readonly Sheet[]): BalanceNote[] =>
  sheets
    .filter(({ layer }) => layer.grain === 'no single grain')
    .map(({ place }) => ({ note: 'no single grain', layer: place }))

/** The balance in sentences: the verdict first, then what is missing, then what is worth knowing. */
export function balanceSentences(layers: readonly Layer[], unit: LengthUnit): string[] {
  const { verdict, lacks, notes } = balanceOf(layers)
  const head =
    verdict === 'balanced'
      ? 'The panel is balanced: from both sides the same.'
      : verdict === 'unbalanced'
        ? 'The panel is not balanced.'
        : 'A face without a single grain can’t be judged as balanced or not.'
  return [
    head,
    ...lacks.map((lack) => lackSentence(lack, layers, unit)),
    ...notes.map((note) => noteSentence(note, layers)),
  ]
}

/** What is missing, and what would mend it. */
export function lackSentence(lack: BalanceLack, layers: readonly Layer[], unit: LengthUnit): string {
  const name = (place: number): string => layerName(layers, place)
  const big = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
  const thick = (place: number): string => showLength(layers[place]!.thickness, unit, 'exact')
  switch (lack.lack) {
    case 'backer':
      return `There is nothing on the back: glue on a backer like ${name(lack.front)}, ${thick(lack.front)}, ${grainOf(layers[lack.front]!)}, in the same pressing.`
    case 'face':
      return `There is nothing on the front against ${name(lack.back)}.`
    case 'thickness': {
      const more = Math.abs(layers[lack.back]!.thickness / layers[lack.front]!.thickness - 1)
      const way = layers[lack.back]!.thickness > layers[lack.front]!.thickness ? 'more' : 'less'
      return `${big(name(lack.front))} is ${thick(lack.front)} and ${name(lack.back)} ${thick(lack.back)}, ${Math.round(more * 100)} % ${way}: use one thickness for both.`
    }
    case 'species':
      return `${big(name(lack.front))} and ${name(lack.back)} are of different stuff and move by different amounts: the same species is best, one of like movement will do.`
    case 'cut':
      return `${big(name(lack.front))} and ${name(lack.back)} are cut in different ways: flat-cut wood moves more across the grain than quartered.`
    case 'grain':
      return `${big(name(lack.front))} has its ${grainOf(layers[lack.front]!)} and ${name(lack.back)} its ${grainOf(layers[lack.back]!)}: lay both the same way.`
    case 'moisture':
      return `${big(name(lack.front))} and ${name(lack.back)} go into the press with different moisture: let them lie together till they agree.`
    case 'core':
      return 'The core is not the same from both sides: turn its boards so that they mirror each other.'
    case 'cross-band behind':
      return `${big(name(lack.place))} has no fellow behind: a cross-band steadies a panel only as a pair under both faces.`
    case 'cross-band in front':
      return `${big(name(lack.place))} has no fellow in front: a cross-band steadies a panel only as a pair under both faces.`
  }
}

const grainOf = (layer: Layer): string => (layer.kind === 'glue line' ? '' : grainWords(layer.grain))

function noteSentence(note: BalanceNote, layers: readonly Layer[]): string {
  switch (note.note) {
    case 'face along outer ply':
      return `${layerName(layers, note.layer).replace(/^./, (c) => c.toUpperCase())} lies along the outer ply of ${layerName(layers, note.ply)}: checks of the ply may come through. Turn the board so that they cross, or lay a cross-band between, on both sides.`
    case 'middle sheet only adds thickness':
      return 'The sheet between the two boards only adds thickness; it steadies nothing there.'
    case 'no single grain':
      return `${layerName(layers, note.layer).replace(/^./, (c) => c.toUpperCase())} has no single grain and pulls every way: back it with the same pattern if you can, else with a straight-grained leaf of the same thickness on a stout core, and expect a little movement.`
  }
}
