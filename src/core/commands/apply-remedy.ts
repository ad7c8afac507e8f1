import type { Remedy } from '../finding'
import { add } from '../geometry/point'
import type { DerivedPart } from '../derive'
import { groupOf, type LaidFace } from '../fit/lay-face'
import { WINDOW } from '../faces/window-group'
import type { Job } from '../job/job'
import type { Next } from './change-within'
import { changeRecipe, chooseLeaf, clearChosen, setMakeUp, setPosition } from './face-commands'
import { cellsDecidedIn, partThePair, placeWindow } from './pair-commands'
import { changePart } from './part-commands'

/**
 * The job with a finding's remedy carried out on the face it was found in. Where nothing fitted anywhere, a place that
 * someone chose for the window says nothing about the face as mended: it goes where there is most room then.
 */
export function applyRemedy(job: Job, face: RemediedFace, remedy: Remedy): Next {
  const next = remedied(job, face, remedy)
  if (!next.ok || face.play.region.length > 0 || remedy.remedy === 'move window') return next
  return setPosition(next.value, face.part.id, WINDOW, null)
}

type RemediedFace = LaidFace & Pick<DerivedPart, 'follows'>

function remedied(job: Job, face: RemediedFace, remedy: Remedy): Next {
  // at a gap the face's part has another overhang than the one decided for it
  const part = job.parts.find(({ id }) => id === face.part.id) ?? face.part
  switch (remedy.remedy) {
    case 'less overhang': {
      const { side, by } = remedy
      return changePart(job, part.id, { overhang: { ...part.overhang, [side]: Math.max(0, part.overhang[side] - by) } })
    }
    case 'overhang':
      return changePart(job, part.id, { overhang: { ...part.overhang, [remedy.side]: remedy.to } })
    case 'move window':
      return placeWindow(job, face, remedy.group, add(groupOf(face, remedy.group).position, remedy.by))
    case 'first position':
      return setPosition(job, part.id, remedy.group, null)
    case 'start at leaf':
      return changeRecipe(job, part.id, { firstLeaf: remedy.leaf })
    case 'count':
      return changeRecipe(job, part.id, { count: remedy.count })
    case 'booked pairs':
      return changeRecipe(job, part.id, { eachFrom: 'booked pair' })
    case 'slipped sheets':
      return changeRecipe(job, part.id, { sheetOf: remedy.leaves })
    case 'other leaf':
      return chooseLeaf(job, cellsDecidedIn(face), remedy.cell, remedy.leaf)
    case 'arrangement':
      return changeRecipe(job, part.id, { arrangement: remedy.arrangement })
    case 'make up':
      return setMakeUp(job, cellsDecidedIn(face), remedy.cell, remedy.makeUp)
    case 'part the pair':
      return partThePair(job, remedy)
    case 'next in run':
      return clearChosen(job, cellsDecidedIn(face))
  }
}
