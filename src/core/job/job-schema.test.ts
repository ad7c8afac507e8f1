/**
 * Rules.
 * J12 The published schema accepts every job that is written, and refuses every fault of form or size that the
 *     reader refuses.
 */
import Ajv from 'ajv'
import fc from 'fast-check'
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { anyJob } from '../../../tests/generators/any-job'
import { readJob } from './read-job'
import { writeJob } from './write-job'

const root = new URL('../../../', import.meta.url)
const schema = JSON.parse(readFileSync(new URL('static/leafturn-job.schema.json', root), 'utf8')) as object
const accepts = new Ajv().compile(schema)

const fixtures = readdirSync(new URL('tests/fixtures/jobs/', root)).filter((name) => name.endsWith('.json'))
const fixture = (name: string) => readFileSync(new URL(`tests/fixtures/jobs/${name}`, root), 'utf8')

type Plain = Record<string, unknown> | unknown[]

/** Every place in parsed JSON that holds a value, as the object and the key. */
function places(held: unknown): [Plain, string][] {
  if (typeof held !== 'object' || held === null) return []
  return Object.entries(held).flatMap(([key, value]) => [[held as Plain, key] as [Plain, string], ...places(value)])
}

describe('the schema', () => {
  it.each(fixtures)('[J12] accepts %s', (name) => {
    accepts(JSON.parse(fixture(name)))
    expect(accepts.errors).toBeNull()
  })

  it('[J12] accepts whatever is written', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        accepts(JSON.parse(writeJob(job)))
        expect(accepts.errors).toBeNull()
      }),
      { numRuns: 60 },
    )
  })

  const faults = [null, -1e6, 1e6, 0.5, 'nonsense', true, [], {}, { widht: 1 }].map((fault) => ({ fault }))
  it.each(faults)('[J12] agrees with the reader when any one value is replaced by $fault', ({ fault }) => {
    const count = places(JSON.parse(fixture('sideboard.json'))).length
    let refusals = 0
    for (let i = 0; i < count; i++) {
      const file = JSON.parse(fixture('sideboard.json')) as Plain
      const [held, key] = places(file)[i]!
      ;(held as Record<string, unknown>)[key] = fault
      const read = readJob(JSON.stringify(file))
      const isAboutMeaning =
        !read.ok && /^(no such|repeated|bad outline|first leaf|nothing left|bad pair)/.test(read.reason.trouble)
      if (isAboutMeaning) continue
      expect({ key, accepted: accepts(file) }).toEqual({ key, accepted: read.ok })
      if (!read.ok) refusals++
    }
    expect(refusals).toBeGreaterThan(30)
  })

  it('[J12] refuses a field that does not belong, wherever it stands', () => {
    const count = places(JSON.parse(fixture('sideboard.json'))).length
    for (let i = 0; i < count; i++) {
      const file = JSON.parse(fixture('sideboard.json')) as Plain
      const held = (places(file)[i]![0] as Record<string, unknown>)[places(file)[i]![1]]
      if (typeof held !== 'object' || held === null || Array.isArray(held)) continue
      ;(held as Record<string, unknown>).widht = 'x'
      expect(accepts(file)).toBe(false)
      expect(readJob(JSON.stringify(file)).ok).toBe(false)
    }
  })
})
