import { describe, expect, it, vi } from 'vitest'
import { ok, refused } from '../core/result'
import { Typing } from './typing.svelte'

const field = (onchange = vi.fn()) => ({
  onchange,
  typing: new Typing<number>({
    shown: () => '12',
    read: (text) => (/^\d+$/.test(text) ? ok(Number(text)) : refused(`“${text}” is not a number.`)),
    onchange,
    stepped: (by) => 12 + by,
  }),
})

const key = (name: string) => Object.assign(new Event('keydown', { cancelable: true }), { key: name }) as KeyboardEvent

describe('a typed field', () => {
  it('[U20] hands on nothing before it is left or Enter is pressed', () => {
    const { typing, onchange } = field()
    typing.type('34')
    expect(onchange).not.toHaveBeenCalled()
    typing.key(key('Enter'))
    expect(onchange).toHaveBeenCalledExactlyOnceWith(34)
  })

  it('[U21] keeps what can’t be taken as it was typed, with the reason', () => {
    const { typing, onchange } = field()
    typing.type('abc')
    typing.take()
    expect([typing.text, typing.trouble]).toEqual(['abc', '“abc” is not a number.'])
    expect(onchange).not.toHaveBeenCalled()
    typing.key(key('Escape'))
    expect([typing.text, typing.trouble]).toEqual(['12', null])
  })

  it('[U22] does not change a value by looking at it', () => {
    const { typing, onchange } = field()
    typing.type('12')
    typing.take()
    expect(onchange).not.toHaveBeenCalled()
  })

  it('[U23] steps with the arrow keys', () => {
    const { typing, onchange } = field()
    typing.key(key('ArrowUp'))
    typing.key(key('ArrowDown'))
    expect(onchange.mock.calls).toEqual([[13], [11]])
  })
})
