import type { Remedy } from '../finding'
import { add } from '../geometry/point'
import { groupsOf, type LaidFace } from '../fit/lay-face'
import type { WindowGroup } from '../ids'
import { WINDOW } from '../faces/window-group'
import type { Job } from '../job/job'
import type { Next } from './change-within'
import { changeRecipe, chooseLeaf, clearChosen, setMakeUp, setPosition } from './face-commands'
import { changePart } from './part-commands'

/**
 * The job with a finding's remedy carried out on the face it was found in. Where nothing fitted anywhere, a place that
 * someone chose for the window says nothing about the face as mended: it goes where there is most room then.
 */
export function applyRemedy(job: Job, face: LaidFace, remedy: Remedy): Next {
  const next = remedied(job, face, remedy)
  if (!next.ok || face.play.region.length > 0 || remedy.remedy === 'move window') return next
  return setPosition(next.value, face.part.id, WINDOW, null)
}

const positionOf = (face: LaidFace, wanted: WindowGroup) =>
  groupsOf(face).find(({ group }) => group === wanted)?.position ?? face.position

function remedied(job: Job, face: LaidFace, remedy: Remedy): Next {
  const { part } = face
  switch (remedy.remedy) {
    case 'less overhang': {
      const { side, by } = remedy
      return changePart(job, part.id, { overhang: { ...part.overhang, [side]: Math.max(0, part.overhang[side] - by) } })
    }
    case 'overhang':
      return changePart(job, part.id, { overhang: { ...part.overhang, [remedy.side]: remedy.to } })
    case 'move window':
      return setPosition(job, part.id, remedy.group, add(positionOf(face, remedy.group), remedy.by))
    case 'first position':
      return setPosition(job, part.id, remedy.group, null)
    case 'start at leaf':
      return changeRecipe(job, part.id, { firstLeaf: remedy.leaf })
    case 'count':
      return changeRecipe(job, part.id, { count: remedy.count })
    case 'other leaf':
      return chooseLeaf(job, part.id, remedy.cell, remedy.leaf)
    case 'arrangement':
      return changeRecipe(job, part.id, { arrangement: remedy.arrangement })
    case 'make up':
      return setMakeUp(job, part.id, remedy.cell, remedy.makeUp)
    case 'next in run':
      return clearChosen(job, part.id)
  }
}
