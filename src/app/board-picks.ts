import type { BoardTarget } from '../board/board-types'
import type { DerivedPart } from '../core/derive'
import type { Selected } from '../store/session.svelte'
import { findingNumbers } from './finding-numbers'

/** What a board marks for what is picked in the session. */
export function boardTarget(selected: Selected | null): BoardTarget | null {
  switch (selected?.on) {
    case 'cell':
      return { kind: 'cell', cell: selected.cell }
    case 'seam':
      return { kind: 'seam', letter: selected.letter }
    case 'leaf':
      return { kind: 'leaf', leaf: selected.leaf.leaf }
    case 'defect':
      return { kind: 'defect', defect: selected.defect }
    default:
      return null
  }
}

/** What is picked in the session when something on the board of a face is pointed at. */
export function picked(face: DerivedPart, target: BoardTarget | null): Selected | null {
  switch (target?.kind) {
    case 'cell':
      return { on: 'cell', cell: target.cell }
    case 'seam':
      return { on: 'seam', letter: target.letter }
    case 'leaf':
      return { on: 'leaf', leaf: { flitch: face.flitch.id, leaf: target.leaf } }
    case 'finding': {
      const found = [...findingNumbers(face)].find(([, number]) => number === target.number)?.[0]
      if (found?.place.on === 'cell') return { on: 'cell', cell: found.place.cell }
      if (found?.place.on === 'seam') return { on: 'seam', letter: found.place.letter }
      if (found?.place.on === 'leaf') return { on: 'leaf', leaf: found.place.leaf }
      return null
    }
    default:
      return null
  }
}
