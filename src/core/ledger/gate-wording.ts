import type { Gate, Hindrance, Way } from './gate'

/** `leaf 9`, `leaves 3 and 9`, `leaves 3, 9 to 12`: neighbours in the list, counted on by one, are drawn together. */
export function leavesListed(numbers: readonly number[]): string {
  const runs: [number, number][] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  const words = runs.flatMap(([from, to]) => {
    if (to === from) return [String(from)]
    return to === from + 1 ? [String(from), String(to)] : [`${from} to ${to}`]
  })
  const listed = words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
  return `${numbers.length === 1 ? 'leaf' : 'leaves'} ${listed}`
}

const WAYS: Readonly<Record<Way, string>> = {
  'crosscut first': '',
  'rip first': 'rip it free first: a crosscut would go through a piece beside it',
  'knife round it': 'cut round it with the knife: a straight cut would go through a piece beside it',
}

/** What the gate says, as it follows the name of the piece. */
export function gateWords(gate: Gate): string {
  switch (gate.state) {
    case 'done':
      return 'done'
    case 'safe':
      return WAYS[gate.way] === '' ? 'safe' : `safe, but ${WAYS[gate.way]}`
    case 'not yet':
      return `not yet: ${gate.hindrances.map(hindranceWords).join('; ')}`
  }
}

function hindranceWords(hindrance: Hindrance): string {
  switch (hindrance.why) {
    case 'to mend':
      return `this face has ${hindrance.things === 1 ? 'one thing' : `${hindrance.things} things`} to mend`
    case 'planned there':
      return hindrance.own ? `${hindrance.cell} is planned in the same wood` : `“${hindrance.part}” needs this wood`
    case 'cut there':
      return `this wood was cut for ${hindrance.cell} of “${hindrance.part}”`
    case 'too near': {
      const other = hindrance.own ? hindrance.cell : `${hindrance.cell} of “${hindrance.part}”`
      return `${other} lies so near that there is no room for the saw between`
    }
    case 'still needs':
      return `“${hindrance.part}” still needs ${leavesListed(hindrance.leaves)}`
  }
}
