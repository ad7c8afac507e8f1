import type { DerivedPart } from '../core/derive'
import { BORDER, WINDOW } from '../core/faces/window-group'
import type { WindowGroup } from '../core/ids'
import type { Selected } from './session.svelte'

/** Which window lies on the leaf below the face: that of the piece picked, else the field's. */
export function shownGroup({ pieces }: DerivedPart, selected: Selected | null): WindowGroup {
  const isPicked = ({ cell, flitch, leaf }: DerivedPart['pieces'][number]) => {
    if (selected?.on === 'cell') return cell.id === selected.cell
    return selected?.on === 'leaf' && flitch.id === selected.leaf.flitch && leaf?.number === selected.leaf.leaf
  }
  return pieces.find(isPicked)?.cell.group ?? WINDOW
}

/** As it is called in what is undone. */
export const windowName = (group: WindowGroup): string => (group === BORDER ? 'the border’s window' : 'the window')
