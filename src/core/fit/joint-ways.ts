import type { Remedy } from '../finding'
import { boxCentre } from '../geometry/box'
import { regionCovers, type Region } from '../geometry/polygon'
import type { Part } from '../job/job'
import { WHOLE_RUN, type MakeUp } from '../job/make-up'
import { rawWoodFor, usableArea } from '../leaves/usable'
import type { Shop } from '../shop'
import type { Governing } from './governing'
import { fieldPieces, type LaidFace, type Piece } from './lay-face'
import { commonDemand, scarfLoss, searchLengthening, searchWidening, type StripSource } from './make-up-search'

/** Whether a part, changed, has a place for all its pieces. */
export type Fits = (changed: Part) => boolean

/** What other faces leave of the flitch's leaves. */
export interface Stock {
  /** Labelled offcuts, each as the sound wood that strips can be ripped from. */
  readonly offcuts: readonly { readonly leaf: number; readonly label: string; readonly wood: Region<'leaf'> }[]
  /** Leaves of which something is taken: none of them is whole any more. */
  readonly taken: readonly number[]
}

export const NO_STOCK: Stock = { offcuts: [], taken: [] }

export interface JointScene {
  readonly part: Part
  readonly shop: Shop
  readonly fits: Fits
  readonly governing: readonly Governing[]
  readonly stock: Stock
}

/** Leaves made longer or wider: the whole run as a packet, or the one leaf without which the others fit. */
export function jointSearch(face: LaidFace, { part, shop, fits, governing, stock }: JointScene) {
  const pieces = fieldPieces(face).filter(({ leaf, made }) => leaf !== null && made === null)
  const madeUp = (cell: string, makeUp: MakeUp | null): readonly Remedy[] =>
    makeUp && fits({ ...part, madeUp: { ...part.madeUp, [cell]: makeUp } })
      ? [{ remedy: 'make up', cell, makeUp, ...labelOf(makeUp, stock) }]
      : []
  const alone = pieces.length > 1 ? soleTrouble(governing, pieces) : null
  return {
    strips(): readonly Remedy[] {
      if (pieces.length === 0) return []
      const run = commonDemand(pieces)
      const loss = scarfLoss(part, true)
      const forRun = searchWidening(run.wood, run.wanted, loss, null, [{ from: null, wood: run.wood }])
      const forOne =
        alone &&
        searchWidening(alone.usable, commonDemand([alone]).wanted, scarfLoss(part, false), alone.leaf!.number, [
          { from: null, wood: alone.usable },
          ...offcutSources(face, stock),
          ...spareSources(face, shop, stock),
        ])
      return [...madeUp(WHOLE_RUN, forRun), ...(alone ? madeUp(alone.cell.id, forOne) : [])]
    },
    scarf() {
      if (pieces.length === 0) return { way: [], scarf: null }
      const { wood, wanted } = commonDemand(pieces)
      const run = searchLengthening(wood, wanted, scarfLoss(part, true), null)
      const way = [...madeUp(WHOLE_RUN, run.lengthening)]
      if (alone) {
        const loss = scarfLoss(part, false)
        const one = searchLengthening(alone.usable, commonDemand([alone]).wanted, loss, alone.leaf!.number)
        way.push(...madeUp(alone.cell.id, one.lengthening))
      }
      return { way, scarf: { wanted, most: run.most } }
    },
  }
}

/** The one piece without which the others fit. */
function soleTrouble(governing: readonly Governing[], pieces: readonly Piece[]): Piece | null {
  const first = governing.find(({ without }) => without !== null)
  return pieces.find(({ cell }) => cell.id === first?.cell) ?? null
}

/** The leaves of the field's flitch of which the face takes something. */
const leavesOfField = ({ pieces, flitch: own }: LaidFace): ReadonlySet<number> =>
  new Set(pieces.flatMap(({ flitch, leaf }) => (leaf && flitch === own ? [leaf.number] : [])))

/** Offcuts of leaves that the face itself does not use. */
const offcutSources = (face: LaidFace, { offcuts }: Stock): readonly StripSource[] =>
  offcuts.filter(({ leaf }) => !leavesOfField(face).has(leaf)).map(({ leaf, wood }) => ({ from: leaf, wood }))

/** The offcut that a strip comes from, by its label. */
function labelOf(makeUp: MakeUp, { offcuts }: Stock): { readonly offcut?: string } {
  if (makeUp.how === 'longer') return {}
  const found = offcuts.find(({ leaf, wood }) => leaf === makeUp.from && regionCovers(wood, boxCentre(makeUp.offcut)))
  return found ? { offcut: found.label } : {}
}

/** Wood for strips on leaves of which nobody takes anything, those kept back as spares first. */
function spareSources(face: LaidFace, shop: Shop, { taken }: Stock): readonly StripSource[] {
  const { part, flitch } = face
  const used = new Set([...leavesOfField(face), ...taken])
  return flitch.leaves
    .filter(({ number, state }) => state !== 'set aside' && !used.has(number))
    .sort((p, q) => Number(q.state === 'spare') - Number(p.state === 'spare'))
    .slice(0, MOST_SOURCES)
    .map((leaf) => ({
      from: leaf.number,
      wood: rawWoodFor(usableArea(flitch, leaf, shop, part.showClass), leaf, NO_PIECE, shop),
    }))
}

// what was cut for whatever piece is no wood for a strip
const NO_PIECE = { part: '', cell: '' }

const MOST_SOURCES = 4
