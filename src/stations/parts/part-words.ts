import type { DerivedPart } from '../../core/derive'
import { fitsItsLeaves } from '../../core/fit/lay-face'
import type { Part } from '../../core/job/job'
import type { ShowClass } from '../../core/shop'

export const SHOW_CLASSES: readonly { readonly value: ShowClass; readonly name: string }[] = [
  { value: 'show', name: 'a show face' },
  { value: 'now and then', name: 'seen now and then' },
  { value: 'hidden', name: 'hidden' },
]

/** How much of a face is wrong. */
export const thingsToMend = ({ findings }: DerivedPart): number =>
  findings.filter(({ grade }) => grade === 'wrong').length

/** How a part stands, in a few words, and whether that asks for something to be done. */
export interface PartState {
  readonly words: string
  readonly mood: 'good' | 'plain' | 'wrong'
}

const ON_CENTRE: Readonly<Record<string, string>> = {
  seam: 'centre seam on the centre',
  leaf: 'leaf on the centre',
  'moved crossing': 'seams cross where they were put',
  crossing: 'seams cross on the centre',
}

/** A finished panel is finished; else what is wrong comes first, then what lies on the centre. */
export function partState(face: DerivedPart | null): PartState {
  if (!face) return { words: 'its flitch is not in the job', mood: 'wrong' }
  if (face.part.finished) return { words: 'finished', mood: 'good' }
  if (!fitsItsLeaves(face)) return { words: 'does not fit these leaves', mood: 'wrong' }
  const wrong = thingsToMend(face)
  if (wrong > 0) return { words: `${wrong} ${wrong === 1 ? 'thing' : 'things'} to mend`, mood: 'wrong' }
  const centred = face.findings.find(({ code }) => code === 'centred')
  if (!centred) return { words: 'fits', mood: 'plain' }
  return { words: ON_CENTRE[String(centred.about['what'])] ?? 'seams cross on the centre', mood: 'good' }
}

const CLASS_FIRST: Readonly<Record<ShowClass, number>> = { show: 0, 'now and then': 1, hidden: 2 }

/** Show faces first to look at; the order of the job stays, and parts of one class keep it. */
export const showFacesFirst = (parts: readonly Part[]): readonly Part[] =>
  [...parts].sort((a, b) => CLASS_FIRST[a.showClass] - CLASS_FIRST[b.showClass])

/** A name that no other part has: `Door, copy`, `Door, copy 2`. */
export function copyName(name: string, parts: readonly Part[]): string {
  const taken = new Set(parts.map((part) => part.name))
  const base = `${name}, copy`
  for (let n = 1; n <= parts.length; n++) {
    const tried = n === 1 ? base : `${base} ${n}`
    if (!taken.has(tried)) return tried
  }
  return `${base} ${parts.length + 1}`
}
