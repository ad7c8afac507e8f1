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
const windowName = (group: WindowGroup): string => (group === BORDER ? 'the border’s window' : 'the window')

/** What of a part says which others move with its window. */
type Moved = Pick<DerivedPart, 'part' | 'follows'>

/** What is undone when a window has been moved: it names every part that moves with it, as those of a pair do. */
export function moveLabel(face: Moved, faces: readonly Moved[], group: WindowGroup): string {
  const head = face.follows?.part ?? face.part.id
  const together = faces.filter(({ part, follows }) => part.id === head || follows?.part === head)
  const names = (together.length > 0 ? together : [face]).map(({ part }) => part.name)
  const listed = names.length < 2 ? names.join('') : `${names.slice(0, -1).join('; ')} and ${names.at(-1)}`
  return `${listed}: move ${windowName(group)}`
}
