import { describe, expect, it } from 'vitest'
import { LengthEntry, type LengthTerms } from './length-entry.svelte'
import { placeHint } from './place-hint'
import { readText, textSentence } from './read-text'
import { stepOfKey } from './step-key'
import { WholeEntry, type WholeTerms } from './whole-entry.svelte'

// [U13] What is typed counts when it is committed; what cannot be read stays as typed and changes nothing.
// [U14] A text that was not changed never replaces the exact value by the rounded one shown.
// [U15] An arrow key steps what is in the field, typed or not, and stops at the limits.

/** A length field whose owner keeps what it is given. */
function lengthField(given: Partial<LengthTerms> = {}) {
  const taken: number[] = []
  let value = given.value ?? 420
  const onchange = (length: number) => {
    taken.push(length)
    value = length
  }
  const entry = new LengthEntry(() => ({ label: 'Width', unit: 'mm', grain: 'exact', ...given, value, onchange }))
  return { entry, taken }
}

function wholeField(given: Partial<WholeTerms> = {}) {
  const taken: (number | null)[] = []
  let value = given.value === undefined ? 4 : given.value
  const onchange = (count: number | null) => {
    taken.push(count)
    value = count
  }
  const entry = new WholeEntry(() => ({ label: 'Leaves', min: 1, max: 40, ...given, value, onchange }))
  return { entry, taken }
}

describe('a length being typed', () => {
  it('[U13] counts when it is committed, not before, and once', () => {
    const { entry, taken } = lengthField()
    entry.type('16 1/2 in')
    expect([entry.text, taken]).toEqual(['16 1/2 in', []])
    expect(entry.commit()).toBe(true)
    expect([entry.text, taken]).toEqual(['419.1 mm', [419.1]])
    entry.commit()
    expect(taken).toEqual([419.1])
  })

  it('[U13] stays as typed when it cannot be read, until it is mended', () => {
    const { entry, taken } = lengthField({ max: 600 })
    entry.type('9OO')
    expect(entry.commit()).toBe(false)
    expect([entry.text, taken]).toEqual(['9OO', []])
    expect(entry.sentence).toBe('Width: in “9OO”, “oo” is not a unit. Use mm, cm, m, in or ft.')
    entry.type('900')
    expect(entry.sentence).toBeNull()
    entry.commit()
    expect(entry.sentence).toBe('Width: “900” is more than 600 mm, the most it can be.')
    entry.type('590')
    entry.commit()
    expect([entry.text, entry.sentence, taken]).toEqual(['590 mm', null, [590]])
  })

  it('[U13] goes back to the value on Escape, which says whether there was something to take back', () => {
    const { entry, taken } = lengthField()
    entry.type('abc')
    entry.commit()
    expect([entry.restore(), entry.text, entry.sentence, taken]).toEqual([true, '420 mm', null, []])
    expect(entry.restore()).toBe(false)
  })

  it('[U14] leaves the exact value alone when the shown text is committed unchanged', () => {
    const { entry, taken } = lengthField({ value: 441.4, grain: 'place' })
    entry.type('441')
    entry.type('441 mm')
    entry.commit()
    expect(taken).toEqual([])
  })
})

describe('[U15] a length stepped by the arrow keys', () => {
  it('moves by the step of the unit', () => {
    const { entry, taken } = lengthField()
    entry.step(1, 'plain')
    entry.step(-1, 'large')
    entry.step(-1, 'small')
    expect(taken).toEqual([421, 411, 410.8])
    const inches = lengthField({ unit: 'in', value: 25.4 })
    inches.entry.step(1, 'plain')
    expect(inches.entry.text).toBe('1 1/16 in')
  })

  it('starts from what was typed', () => {
    const { entry, taken } = lengthField()
    entry.type('300')
    entry.step(1, 'plain')
    expect(taken).toEqual([301])
  })

  it('does not step from what cannot be read, and says why', () => {
    const { entry, taken } = lengthField()
    entry.type('abc')
    entry.step(1, 'plain')
    expect([entry.text, taken, entry.sentence?.slice(0, 12)]).toEqual(['abc', [], 'Width: “abc”'])
  })

  it('stops on a limit, and there changes nothing', () => {
    const { entry, taken } = lengthField({ value: 595, max: 600 })
    entry.step(1, 'large')
    entry.step(1, 'large')
    expect(taken).toEqual([600])
    const low = lengthField({ value: 0.1 })
    low.entry.step(-1, 'plain')
    expect(low.taken).toEqual([0])
    const below = lengthField({ value: 0, negative: true })
    below.entry.step(-1, 'plain')
    expect(below.taken).toEqual([-1])
  })
})

describe('a whole number or a word', () => {
  it('[U13] takes the word for null, and a number again', () => {
    const { entry, taken } = wholeField({ word: 'fewest' })
    entry.type(' Fewest')
    entry.commit()
    expect(entry.text).toBe('fewest')
    entry.type('6')
    entry.commit()
    expect(taken).toEqual([null, 6])
    entry.type('abc')
    entry.chooseWord()
    expect([entry.text, taken.at(-1)]).toEqual(['fewest', null])
  })

  it('[U13] says that the word may be typed', () => {
    const { entry } = wholeField({ word: 'fewest' })
    entry.type('few')
    entry.commit()
    expect(entry.sentence).toBe(
      'Leaves: “few” is not a whole number. Type a whole number from 1 to 40. Or type fewest.',
    )
  })

  it('[U15] steps from the number that the word comes to', () => {
    const { entry, taken } = wholeField({ word: 'fewest', value: null, found: 6 })
    entry.step(-1, 'plain')
    entry.step(1, 'large')
    entry.step(1, 'large')
    entry.step(1, 'large')
    entry.step(1, 'large')
    expect(taken).toEqual([5, 15, 25, 35, 40])
    const unknown = wholeField({ word: 'fewest', value: null })
    unknown.entry.step(1, 'plain')
    expect(unknown.taken).toEqual([1])
  })
})

describe('the small things of a field', () => {
  it('reads a name on one line within its length', () => {
    const limits = { required: true, max: 10 }
    const read = (text: string) => {
      const found = readText(text, limits)
      return found.ok ? found.value : textSentence(found.reason, 'Name')
    }
    expect(read('  Door,\n left ')).toBe('Door, left')
    expect(read('  ')).toBe('Name: nothing is typed. Type at least one letter.')
    expect(read('Sideboard top')).toBe('Name: this has 13 letters, and there is room for 10. Make it shorter.')
    expect(readText('', { required: false, max: 10 })).toEqual({ ok: true, value: '' })
  })

  it('[U15] knows the arrow keys', () => {
    const pressed = { key: 'ArrowUp', shiftKey: false, ctrlKey: false, altKey: false }
    expect(stepOfKey(pressed)).toEqual({ direction: 1, size: 'plain' })
    expect(stepOfKey({ ...pressed, key: 'ArrowDown', shiftKey: true })).toEqual({ direction: -1, size: 'large' })
    expect(stepOfKey({ ...pressed, ctrlKey: true })).toEqual({ direction: 1, size: 'small' })
    expect(stepOfKey({ ...pressed, altKey: true })).toBeNull()
    expect(stepOfKey({ ...pressed, key: 'ArrowLeft' })).toBeNull()
  })

  it.each([
    ['under its word', { left: 100, top: 100 }, { left: 100, top: 120 }],
    ['above it at the window’s foot', { left: 100, top: 570 }, { left: 100, top: 490 }],
    ['away from the right side', { left: 700, top: 100 }, { left: 592, top: 120 }],
    ['away from the left side', { left: -30, top: 100 }, { left: 8, top: 120 }],
  ])('puts a hint %s', (_, { left, top }, place) => {
    const word = { left, top, width: 60, height: 20 }
    expect(placeHint(word, { width: 200, height: 80 }, { width: 800, height: 600 })).toEqual(place)
  })
})
