import type { WindowDrag } from '../board/board-types'
import { placeWindow } from '../core/commands/pair-commands'
import type { DerivedPart } from '../core/derive'
import { groupOf } from '../core/fit/lay-face'
import { add, distance, type Point } from '../core/geometry/point'
import { nearestInside } from '../core/geometry/pole'
import type { Region } from '../core/geometry/polygon'
import type { CellId, WindowGroup } from '../core/ids'
import { moveLabel, shownGroup } from '../store/shown-window'
import type { Workshop } from '../store/workshop.svelte'

/** How far past the border a drag is pulled before it goes on beyond it, mm of leaf. */
const PULL = 24

/** Within the play as it goes; held at its border at first; pulled further, beyond it. */
export function heldInPlay(region: Region<'leaf'>, at: Point<'leaf'>): Point<'leaf'> {
  const inside = region.length ? nearestInside(region, at) : null
  return inside && distance(inside, at) < PULL ? inside : at
}

/** Where a drag began: field and border have a window each, and a piece moves that of its own. */
interface Began {
  readonly face: DerivedPart
  readonly label: string
  readonly group: WindowGroup
  readonly at: Point<'leaf'>
  readonly play: Region<'leaf'>
}

function beginDrag({ face, session, derived: { parts: faces } }: Workshop, cell: CellId): Began | null {
  const held = face?.pieces.find((piece) => piece.cell.id === cell)
  if (!face || !held) return null
  const { group, position, play } = groupOf(face, held.cell.group)
  // the leaf below the face shows the window that is moved
  if (group !== shownGroup(face, session.selected)) session.selected = { on: 'cell', cell }
  return {
    face,
    label: moveLabel(face, faces, group),
    group,
    at: position,
    play: play.region,
  }
}

/** Turns the drags of a board into previews and one decision at the end. */
export function windowDragger(workshop: Workshop): (drag: WindowDrag) => void {
  let began: Began | null = null
  return ({ cell, by, phase }) => {
    began ??= beginDrag(workshop, cell)
    if (!began) return
    if (phase === 'cancel') {
      workshop.cancel()
      began = null
      return
    }
    const to = heldInPlay(began.play, add(began.at, by))
    const next = placeWindow(workshop.jobs.decided, began.face, began.group, to)
    if (phase === 'move') workshop.preview(next)
    else {
      workshop.act(began.label, next)
      began = null
    }
  }
}
