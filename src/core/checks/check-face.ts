import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import type { Centre } from '../seams/centring'
import type { SeamReport } from '../seams/seam-report'
import type { Shop } from '../shop'
import { checkCentre } from './centre'
import { checkClaims } from './claims'
import { checkFit } from './fit'
import { checkLeaves } from './leaves'
import { checkJointing } from './jointing'
import { checkMadeUp } from './made-up'
import { checkMeeting } from './meeting'
import { checkBorderStep } from './border-step'
import { checkUpEnd } from './up-end'
import { checkWidths } from './widths'

const GRADES = ['wrong', 'note', 'good'] as const

/** Everything to know about one face by itself, what is wrong first. */
export function checkFace(
  face: LaidFace,
  seams: readonly SeamReport[],
  centre: Centre,
  shop: Shop,
): readonly Finding[] {
  const found = [
    ...checkFit(face, shop),
    ...checkLeaves(face),
    ...checkWidths(face, shop),
    ...checkCentre(face, seams, centre, shop),
    ...checkMeeting(face, seams),
    ...checkClaims(face, seams, shop),
    ...checkJointing(face, seams, shop),
    ...checkMadeUp(face),
    ...checkUpEnd(face),
    ...checkBorderStep(face),
  ]
  return inOrder(found)
}

/** What is wrong first, what is good last. */
export const inOrder = (found: readonly Finding[]): readonly Finding[] =>
  [...found].sort((p, q) => GRADES.indexOf(p.grade) - GRADES.indexOf(q.grade))
