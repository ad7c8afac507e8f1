import type { PartId } from '../ids'
import { fieldsTrouble, repeated } from './check-number'
import type { Job, Pair } from './job'
import { LIMITS } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

type Why = Extract<MeaningTrouble, { trouble: 'bad pair' }>['why']

/** The first thing about the pairs of a job that can't be so, or null. */
export function pairsTrouble({ parts, pairs }: Pick<Job, 'parts' | 'pairs'>): MeaningTrouble | null {
  const ids = new Set(parts.map(({ id }) => id))
  for (const [i, pair] of pairs.entries()) {
    const owner = `pair ${i + 1}`
    const bad = wrongWith(pair, pairs.slice(0, i + 1), ids)
    if (bad) return { trouble: 'bad pair', place: inPlace([owner], []), ...bad }
    const wrong = fieldsTrouble(pair, { gap: LIMITS.gap, overhang: LIMITS.overhang }, [owner])
    if (wrong) return wrong
  }
  return null
}

/** What is wrong with a pair among those up to it. */
function wrongWith(
  { first, second }: Pair,
  upTo: readonly Pair[],
  ids: ReadonlySet<PartId>,
): { readonly part: string; readonly why: Why } | null {
  const unknown = [first, second].find((id) => !ids.has(id))
  if (unknown !== undefined) return { part: unknown, why: 'not there' }
  if (first === second) return { part: first, why: 'itself' }
  if (repeated(upTo.map((pair) => pair.first)) !== null) return { part: first, why: 'first twice' }
  if (repeated(upTo.map((pair) => pair.second)) !== null) return { part: second, why: 'second twice' }
  return followsItself(second, upTo) ? { part: second, why: 'in a circle' } : null
}

function followsItself(part: PartId, pairs: readonly Pair[]): boolean {
  let at: PartId | undefined = part
  // no way through pairs without a circle is longer than they are many
  for (let i = 0; i <= pairs.length && at !== undefined; i++) {
    at = pairs.find(({ second }) => second === at)?.first
    if (at === part) return true
  }
  return false
}
