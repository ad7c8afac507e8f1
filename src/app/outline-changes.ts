import type { OutlineHandlers } from '../board/board-types'
import type { Next } from '../core/commands/change-within'
import { addDefect, changeDefect, removeDefect } from '../core/commands/defect-commands'
import { setCommonOutline } from '../core/commands/flitch-commands'
import { setLeafOutline } from '../core/commands/leaf-commands'
import type { OutlineRef } from '../core/commands/outline-commands'
import type { Ring } from '../core/geometry/polygon'
import type { LeafRef } from '../core/ids'
import type { Defect, DefectShape } from '../core/leaves/leaf'
import { newId } from '../stations/flitch/new-id'
import type { Workshop } from '../store/workshop.svelte'

type Phase = 'move' | 'end' | 'cancel'

/** Turns what is drawn on a leaf into decisions: previews while the pointer moves, one step when it is let go. */
export function outlineHandlers(workshop: Workshop, drawnOn: () => OutlineRef | null): OutlineHandlers {
  const decide = (label: string, next: Next, phase: Phase): void => {
    if (phase === 'cancel') workshop.cancel()
    else if (phase === 'move') workshop.preview(next)
    else workshop.act(label, next)
  }
  const onLeaf = (then: (ref: LeafRef) => void): void => {
    const ref = drawnOn()
    if (ref && ref.leaf !== null) then({ flitch: ref.flitch, leaf: ref.leaf })
  }
  return {
    onOutline({ ring, phase }) {
      const ref = drawnOn()
      if (ref)
        decide(
          ref.leaf === null ? 'Common outline' : `Outline of leaf ${ref.leaf}`,
          outlined(workshop, ref, ring),
          phase,
        )
    },
    onDefectAdd: ({ kind, shape }) =>
      onLeaf((ref) =>
        workshop.act(
          `Mark a ${kind} on leaf ${ref.leaf}`,
          addDefect(workshop.job, ref, { ...shape, id: newId('defect'), kind, note: '' }),
        ),
      ),
    onDefectChange: ({ defect, shape, phase }) =>
      onLeaf((ref) => {
        const known = findDefect(workshop, ref, defect)
        if (known)
          decide(
            `Move the ${known.kind} on leaf ${ref.leaf}`,
            changeDefect(workshop.jobs.decided, ref, reshaped(known, shape)),
            phase,
          )
      }),
    onDefectRemove: (defect) =>
      onLeaf((ref) => workshop.act(`Take a defect off leaf ${ref.leaf}`, removeDefect(workshop.job, ref, defect))),
    onSelect(target) {
      onLeaf((leaf) => {
        workshop.session.selected =
          target?.kind === 'defect' ? { on: 'defect', leaf, defect: target.defect } : { on: 'leaf', leaf }
      })
    },
    onSay(words) {
      workshop.said = words
    },
  }
}

const outlined = (workshop: Workshop, { flitch, leaf }: OutlineRef, ring: Ring<'leaf'>): Next =>
  leaf === null
    ? setCommonOutline(workshop.jobs.decided, flitch, ring)
    : setLeafOutline(workshop.jobs.decided, { flitch, leaf }, ring)

const findDefect = (workshop: Workshop, { flitch, leaf }: LeafRef, id: string): Defect | null =>
  workshop.jobs.decided.flitches
    .find((held) => held.id === flitch)
    ?.leaves.find(({ number }) => number === leaf)
    ?.defects.find((defect) => defect.id === id) ?? null

const reshaped = ({ id, kind, note }: Defect, shape: DefectShape): Defect => ({ ...shape, id, kind, note })
