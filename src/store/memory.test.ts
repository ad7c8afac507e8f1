import { describe, expect, it } from 'vitest'
import { rememberingAnswers } from './memory'

describe('remembering answers', () => {
  it('[H9] finds an answer once for the same objects and numbers', () => {
    const answers = rememberingAnswers()
    const thing = {}
    let asked = 0
    const ask = (about: readonly (object | number)[]) => answers('kind', about, () => ++asked)
    expect([ask([thing, 1]), ask([thing, 1])]).toEqual([1, 1])
    expect(ask([thing, 2])).toBe(2)
    expect(ask([{}, 1])).toBe(3)
    expect(answers('other kind', [thing, 1], () => 'fresh')).toBe('fresh')
  })

  it('[H9] forgets the oldest of very many', () => {
    const answers = rememberingAnswers()
    let asked = 0
    const ask = (n: number) => answers('kind', [n], () => ++asked)
    for (let n = 0; n <= 400; n++) ask(n)
    ask(400)
    expect(asked).toBe(401)
    ask(0)
    expect(asked).toBe(402)
  })
})
