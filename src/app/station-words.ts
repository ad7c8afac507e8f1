import { fitsItsLeaves } from '../core/fit/lay-face'
import { partState, thingsToMend } from '../stations/parts/part-words'
import type { Workshop } from '../store/workshop.svelte'

export const STATIONS = [
  { id: 'flitch', name: 'Flitch' },
  { id: 'parts', name: 'Parts' },
  { id: 'face', name: 'Face' },
  { id: 'cutting', name: 'Cutting' },
  { id: 'press', name: 'Press' },
] as const

export type StationId = (typeof STATIONS)[number]['id']

/** What stands under a station's name: its state in a few words. */
export function stationWords(id: StationId, workshop: Workshop): string {
  switch (id) {
    case 'flitch':
      return flitchWords(workshop)
    case 'parts':
      return partsWords(workshop)
    case 'face':
      return workshop.face ? partState(workshop.face).words : 'no part yet'
    case 'cutting':
      return cuttingWords(workshop)
    case 'press':
      return pressWords(workshop)
  }
}

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

function flitchWords({ job }: Workshop): string {
  const leaves = job.flitches.flatMap((flitch) => flitch.leaves)
  if (leaves.length === 0) return 'no leaves yet'
  const flawed = leaves.filter(({ defects }) => defects.length > 0).length
  return `${count(leaves.length, 'leaf', 'leaves')}${flawed ? `, ${flawed} with defects` : ''}`
}

function partsWords({ job, derived, isWhole }: Workshop): string {
  if (job.parts.length === 0) return 'none yet'
  if (!isWhole) return count(job.parts.length, 'part')
  const wrong = derived.parts.filter((face) => thingsToMend(face) > 0).length
  return `${count(job.parts.length, 'part')}, ${wrong ? `${wrong} to mend` : 'all fit'}`
}

function cuttingWords({ job, derived, isWhole }: Workshop): string {
  if (!isWhole) return `${count(job.parts.length, 'part')} to cut`
  const open = derived.parts.filter(({ part }) => !part.finished)
  const finished = derived.parts.length - open.length
  if (open.length === 0) return finished ? `all ${count(finished, 'panel')} finished` : 'nothing to cut yet'
  const ready = open.filter((face) => fitsItsLeaves(face) && thingsToMend(face) === 0).length
  return `${ready} of ${open.length} ready to cut${finished ? `, ${finished} finished` : ''}`
}

function pressWords({ job, derived, isWhole }: Workshop): string {
  if (job.parts.length === 0) return 'nothing to press yet'
  const parts = count(job.parts.length, 'part')
  if (!isWhole) return `${parts} to press`
  const wrong = derived.parts.filter(({ pressFindings }) => pressFindings.length > 0).length
  return wrong ? `${wrong} of ${parts} to mend` : `${parts}, all in order`
}
