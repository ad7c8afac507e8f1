import { describe, expect, it } from 'vitest'
import { jobOf, flitchOf, partOf, strips } from '../../../tests/properties/job-builders'
import { derive } from '../derive'
import { withoutMemory } from '../fit/answers'
import { point } from '../geometry/point'
import { planLedger } from '../ledger/ledger'
import { commandSentence } from './command-trouble'
import type { Next } from './change-within'
import { markCut } from './cut-commands'
import { holdCuts } from './hold-cuts'
import { changePair, changeSides, pairParts, partThePair, placeWindow } from './pair-commands'

const taken = (next: Next) => {
  if (!next.ok) throw new Error(commandSentence(next.reason))
  return next.value
}
const sentence = (next: Next) => (next.ok ? 'taken' : commandSentence(next.reason))
const door = (id: string) => partOf({ id, name: id, width: 380, recipe: strips({ count: 2 }) })
const job = jobOf([door('left'), door('right'), door('third')], flitchOf())
const ref = { first: 'left', second: 'right' }
const paired = taken(pairParts(job, 'left', 'right'))

describe('a pair', () => {
  it('[A26] is made, changed, turned round and parted in one step each, and nothing of the parts is lost', () => {
    expect(paired.parts).toBe(job.parts)
    const wide = taken(changePair(paired, ref, { gap: 5, meet: 'same leaves', pressed: 'one board' }))
    expect(wide.pairs).toEqual([
      { first: 'left', second: 'right', meet: 'same leaves', gap: 5, pressed: 'one board', overhang: 6 },
    ])
    expect(taken(changePair(wide, ref, { gap: 5 }))).toBe(wide)
    expect(taken(changeSides(wide, ref)).pairs[0]).toMatchObject({ first: 'right', second: 'left', gap: 5 })
    expect(taken(partThePair(wide, ref))).toEqual(job)
  })

  it('[A26] is refused with a sentence where it can’t be', () => {
    expect(sentence(pairParts(paired, 'right', 'left'))).toBe(
      'Pair 2: “left” would follow itself, round by way of the others.',
    )
    expect(sentence(pairParts(paired, 'third', 'right'))).toBe('Pair 2: “right” follows another part already.')
    expect(sentence(changePair(paired, ref, { gap: 300 }))).toBe('Pair 1: gap is 300 mm; 200 mm is the most.')
    expect(sentence(partThePair(job, ref))).toBe('There is no pair “right” any more.')
  })

  it('[A25] the window of the one that follows moves the other’s, along a chain too', () => {
    const three = taken(pairParts(paired, 'right', 'third'))
    const before = derive(three, withoutMemory).parts
    const { x, y } = before[2]!.position
    const after = derive(taken(placeWindow(three, before[2]!, 'window', point(x + 1, y - 30))), withoutMemory).parts
    for (const [i, face] of after.entries()) {
      expect(face.position.x - before[i]!.position.x).toBeCloseTo(1, 9)
      expect(face.position.y - before[i]!.position.y).toBeCloseTo(-30, 9)
    }
    expect(after.map(({ part }) => part.recipe.firstLeaf)).toEqual([1, 3, 5])
  })

  it('[A25, Z4] what is cut of the one that follows keeps the place of the other, which can’t be moved any more', () => {
    const faces = derive(paired, withoutMemory).parts
    const ledger = planLedger(faces)
    const cuts = ledger.find(({ face }) => face.part.id === 'right')!.packets.flatMap((packet) => packet.cuts)
    const cut = taken(markCut(paired, cuts))
    expect(cut.parts.map(({ positions }) => positions)).toEqual([{ window: faces[0]!.position }, {}, {}])
    const moved = placeWindow(cut, faces[0]!, 'window', point(faces[0]!.position.x, faces[0]!.position.y + 20))
    expect(sentence(holdCuts(cut, moved, withoutMemory))).toMatch(/is cut for (L1|R1) of “right”, and this needs/)
    expect(sentence(holdCuts(cut, partThePair(cut, ref), withoutMemory))).toMatch(/is cut for (L1|R1) of “right”/)
  })
})
