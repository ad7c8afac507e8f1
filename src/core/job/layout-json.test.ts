import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layoutJson, type Json } from './layout-json'

describe('layoutJson', () => {
  it('gives JSON that means the same', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(layoutJson(value as Json))).toEqual(JSON.parse(JSON.stringify(value)))
      }),
    )
  })

  it('fills lines with points that do not fit on one', () => {
    const ring = Array.from({ length: 30 }, (_, i) => [i, 1000 + i])
    const lines = layoutJson({ name: 'a', ring }).split('\n')
    expect(lines.slice(0, 3)).toEqual(['{', '  "name": "a",', '  "ring": ['])
    expect(lines).toHaveLength(10)
    expect(lines[3]!.length).toBeGreaterThan(95)
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(111)
  })

  it('leaves out what is undefined', () => expect(layoutJson({ a: undefined, b: 1 })).toBe('{\n  "b": 1\n}\n'))
})
