import { describe, expect, it } from 'vitest'
import { textCutTo, textLines, textWidth } from './text-width'

describe('text width', () => {
  it('[D7] is the sum of the advances; an unknown character counts an em', () => {
    expect(textWidth('', 10)).toBe(0)
    expect(textWidth('木', 10)).toBe(10)
    expect(textWidth('AA', 10)).toBeCloseTo(2 * textWidth('A', 10), 12)
    expect(textWidth('numbered', 4, 'bold')).toBeGreaterThan(textWidth('numbered', 4))
    // composed and decomposed letters are set alike
    expect(textWidth('e\u0301', 5)).toBe(textWidth('é', 5))
  })

  it('lines are broken at spaces and hold every word', () => {
    const words = 'Cut each tile along its hairlines and lay it on the dashed line'
    const lines = textLines(words, 40, 4)
    expect(lines.length).toBeGreaterThan(2)
    expect(lines.join(' ')).toBe(words)
    for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(40)
    expect(textLines('unbreakableword', 1, 4)).toEqual(['unbreakableword'])
    expect(textLines('  ', 10, 4)).toEqual([])
  })

  it('a text is cut to its room with an ellipsis, or left out', () => {
    expect(textCutTo('Door', 50, 4)).toBe('Door')
    const cut = textCutTo('Music-room sideboard, left door', 30, 4)
    expect(cut.endsWith('…')).toBe(true)
    expect(textWidth(cut, 4)).toBeLessThanOrEqual(30)
    expect(textCutTo('Door', 1, 4)).toBe('')
  })
})
