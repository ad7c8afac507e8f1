import { changePair, pairParts, type PairPatch } from '../../core/commands/pair-commands'
import { pairVoid } from '../../core/fit/pair-edges'
import type { PartId } from '../../core/ids'
import type { Job, Pair, Part } from '../../core/job/job'
import { usualPair } from '../../core/job/usual'
import type { Workshop } from '../../store/workshop.svelte'

export const MEETS: readonly { readonly value: Pair['meet']; readonly name: string }[] = [
  { value: 'booked', name: 'booked' },
  { value: 'running through', name: 'running through' },
  { value: 'same leaves', name: 'from the same leaves' },
]

export const PRESSED: readonly { readonly value: Pair['pressed']; readonly name: string }[] = [
  { value: 'apart', name: 'pressed apart' },
  { value: 'one board', name: 'sawn from one board' },
]

/** What each way of meeting means, for those who don't know the word. */
export const MEET_MEANS: Readonly<Record<Pair['meet'], string>> = {
  booked: 'The second is laid as the mirror image of the first, from the leaves next in sequence.',
  'running through': 'The leaves go on across the gap as the match has it.',
  'same leaves': 'Both are cut from the same leaves, one piece farther on than the other.',
}

/** The parts that may follow one, those that go with it as they are first. */
export function canFollow(job: Job, first: Part): readonly Part[] {
  const open = job.parts.filter(({ id }) => pairParts(job, first.id, id).ok)
  const goesWith = (second: Part) => pairVoid(usualPair(first.id, second.id), first, second) === null
  return [...open].sort((p, q) => Number(goesWith(q)) - Number(goesWith(p)))
}

export const decidePair = (workshop: Workshop, pair: Pair, label: string, patch: PairPatch): boolean =>
  workshop.act(`${namesOf(workshop.job, pair)}: ${label}`, changePair(workshop.job, pair, patch))

export const namesOf = ({ parts }: Job, { first, second }: Pick<Pair, 'first' | 'second'>): string =>
  [first, second].map((id: PartId) => parts.find((part) => part.id === id)?.name ?? id).join(' and ')
