import type { WindowDrag } from '../board/board-types'
import { setPosition } from '../core/commands/face-commands'
import { WINDOW } from '../core/faces/window-group'
import { add, distance, type Point } from '../core/geometry/point'
import { nearestInside } from '../core/geometry/pole'
import type { Region } from '../core/geometry/polygon'
import type { PartId } from '../core/ids'
import type { Workshop } from '../store/workshop.svelte'

/** How far past the border a drag is pulled before it goes on beyond it, mm of leaf. */
const PULL = 24

/** Within the play as it goes; held at its border at first; pulled further, beyond it. */
export function heldInPlay(region: Region<'leaf'>, at: Point<'leaf'>): Point<'leaf'> {
  const inside = region.length ? nearestInside(region, at) : null
  return inside && distance(inside, at) < PULL ? inside : at
}

/** Turns the drags of a board into previews and one decision at the end. */
export function windowDragger(workshop: Workshop): (drag: WindowDrag) => void {
  let began: {
    readonly part: PartId
    readonly name: string
    readonly at: Point<'leaf'>
    readonly play: Region<'leaf'>
  } | null = null
  return ({ by, phase }) => {
    const face = workshop.face
    if (!began && face) began = { part: face.part.id, name: face.part.name, at: face.position, play: face.play.region }
    if (!began) return
    if (phase === 'cancel') {
      workshop.cancel()
      began = null
      return
    }
    const to = heldInPlay(began.play, add(began.at, by))
    const next = setPosition(workshop.jobs.decided, began.part, WINDOW, to)
    if (phase === 'move') workshop.preview(next)
    else {
      workshop.act(`${began.name}: move the window`, next)
      began = null
    }
  }
}
