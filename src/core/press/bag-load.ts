/**
 * Panels laid out on the platen, load by load.
 *
 * Input: sizes above 0. Output: every panel that fits the platen alone is in exactly one load, inside the platen,
 * at least the gap away from every other; grain does not matter in the press, so panels are turned as it suits.
 * Failure: panels that fit in no way are named, the others still laid. Shelves by falling height, first that has room:
 * simple, and never a panel worse than a maker would do by eye in one try; not the least number of loads there may be.
 */
import { practice } from './provenance'

export interface LoadPanel {
  readonly id: string
  readonly width: number
  readonly length: number
}

export interface LaidPanel {
  readonly id: string
  /** Left upper corner on the platen, mm. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly length: number
  readonly turned: boolean
}

export interface Loads {
  readonly loads: readonly (readonly LaidPanel[])[]
  readonly tooLarge: readonly string[]
}

export interface Platen {
  readonly width: number
  readonly length: number
}

/** The film needs room to come down between two panels without tearing at their edges. */
export const PANEL_GAP = practice(40)

interface Shelf {
  readonly y: number
  readonly height: number
  x: number
}

interface OpenLoad {
  readonly shelves: Shelf[]
  readonly laid: LaidPanel[]
  y: number
}

/** Lays panels out, those of one load together under the bag. */
export function layLoads(panels: readonly LoadPanel[], platen: Platen, gap = PANEL_GAP.value): Loads {
  const fitting = panels.flatMap((panel) => wayToFit(panel, platen) ?? [])
  const tooLarge = panels.filter((panel) => wayToFit(panel, platen) === null).map(({ id }) => id)
  const loads: OpenLoad[] = []
  for (const panel of [...fitting].sort((a, b) => b.length - a.length || b.width - a.width)) {
    if (loads.some((load) => laidIn(load, panel, platen, gap))) continue
    const fresh: OpenLoad = { shelves: [], laid: [], y: 0 }
    laidIn(fresh, panel, platen, gap)
    loads.push(fresh)
  }
  return { loads: loads.map(({ laid }) => laid), tooLarge }
}

type Turned = LoadPanel & { readonly turned: boolean }

/** Lying down (the flatter way up) where that fits, since shelves then waste least; else the way that fits; else null. */
function wayToFit(panel: LoadPanel, platen: Platen): Turned | null {
  const asIs: Turned = { ...panel, turned: false }
  const turned: Turned = { ...panel, width: panel.length, length: panel.width, turned: true }
  const ways = [asIs, turned].filter(({ width, length }) => width <= platen.width && length <= platen.length)
  return ways.sort((a, b) => a.length - b.length)[0] ?? null
}

/** Puts the panel on the first shelf with room, or on a new one; false when the load has no room. */
function laidIn(load: OpenLoad, panel: Turned, platen: Platen, gap: number): boolean {
  const shelf = load.shelves.find(({ x, height }) => panel.length <= height && x + panel.width <= platen.width)
  const place = shelf ?? newShelf(load, panel, platen, gap)
  if (!place) return false
  load.laid.push({ ...panel, x: place.x, y: place.y })
  place.x += panel.width + gap
  return true
}

function newShelf(load: OpenLoad, panel: Turned, platen: Platen, gap: number): Shelf | null {
  if (load.y + panel.length > platen.length) return null
  const shelf: Shelf = { x: 0, y: load.y, height: panel.length }
  load.shelves.push(shelf)
  load.y += panel.length + gap
  return shelf
}
