/**
 * A name for a new thing that no other thing of the job has, such as `part-3f9a1c2b`. Given out here at the edge: the
 * core knows no chance.
 */
export function newId(kind: 'flitch' | 'part' | 'defect'): string {
  const [number = 0] = crypto.getRandomValues(new Uint32Array(1))
  return `${kind}-${number.toString(16).padStart(8, '0')}`
}
