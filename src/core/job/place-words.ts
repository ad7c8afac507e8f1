/**
 * Where something stands in a job.json, as it would be said: `part 2, “Door”: overhang, right` for the path
 * `parts`, 1, `overhang`, 1. The file is looked into for names and leaf numbers; it may be anything.
 */
export function placeInWords(file: unknown, path: readonly unknown[]): string {
  const owners: string[] = []
  const rest: string[] = []
  let held = file
  for (let i = 0; i < path.length; i++) {
    const key = path[i]
    const inside = fieldOf(held, key)
    const owner = typeof path[i + 1] === 'number' ? OWNERS[String(key)] : undefined
    if (owner) {
      const nth = path[++i] as number
      held = fieldOf(inside, nth)
      owners.push(owner(nth, held))
    } else {
      rest.push(typeof key === 'number' ? entryInWords(path[i - 1], key, inside) : String(key))
      held = inside
    }
  }
  return inPlace(owners, rest)
}

/** The words for a thing and for a field of it. */
export const inPlace = (owners: readonly string[], fields: readonly string[]): string =>
  [owners.join(', '), fields.join(', ')].filter((words) => words !== '').join(': ') || 'the job'

export const flitchInWords = (nth: number, name: unknown): string => `flitch ${nth + 1}${quoted(name)}`

export const partInWords = (nth: number, name: unknown): string => `part ${nth + 1}${quoted(name)}`

const OWNERS: Readonly<Record<string, (nth: number, held: unknown) => string>> = {
  flitches: (nth, held) => flitchInWords(nth, fieldOf(held, 'name')),
  parts: (nth, held) => partInWords(nth, fieldOf(held, 'name')),
  differing: (nth, held) => {
    const number = fieldOf(held, 'number')
    return typeof number === 'number' ? `leaf ${number}` : `entry ${nth + 1} of “differing”`
  },
  pairs: (nth) => `pair ${nth + 1}`,
  defects: (nth) => `defect ${nth + 1}`,
}

const EDGES = ['top', 'right', 'bottom', 'left']

function entryInWords(list: unknown, nth: number, held: unknown): string {
  if (list === 'overhang' || list === 'core') return EDGES[nth] ?? `entry ${nth + 1}`
  if (list === 'size') return nth === 0 ? 'width' : 'length'
  if (Array.isArray(held) || list === 'outline' || list === 'ring') return `point ${nth + 1}`
  if (nth < 2 && list !== 'leaves' && typeof held !== 'object') return nth === 0 ? 'x' : 'y'
  return `entry ${nth + 1}`
}

const quoted = (name: unknown): string => (typeof name === 'string' && name !== '' ? `, “${name}”` : '')

function fieldOf(held: unknown, key: unknown): unknown {
  if (typeof held !== 'object' || held === null) return undefined
  return (held as Readonly<Record<string, unknown>>)[String(key)]
}
