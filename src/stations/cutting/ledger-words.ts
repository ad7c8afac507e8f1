/** `3 done, 4 safe, 2 not yet`; what there is none of is left out. */
export function countWords(counts: Readonly<Record<'done' | 'safe' | 'not yet', number>>): string {
  const words = (['done', 'safe', 'not yet'] as const).filter((state) => counts[state] > 0)
  return words.map((state) => `${counts[state]} ${state}`).join(', ') || 'nothing to cut'
}
