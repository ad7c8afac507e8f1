/**
 * Rules.
 * J1 A job that is written and read again is the same job.
 * J2 What a hand-written file leaves out has its usual value.
 * J3 A field that does not belong where it stands is refused by its name.
 * J4 A number outside its limits is refused with its place, its value and the limit.
 * J5 An outline that crosses itself is refused with the place and the two edges.
 * J6 No two leaves of a flitch have one number, and no two flitches, parts or defects have one id.
 * J7 A part names a flitch of its job.
 * J8 A file of a newer version is refused, saying which version this program reads.
 * J9 A file that is no job is refused with the reason; none makes the program throw.
 * J10 The order of the leaves is the order in the file, whatever their numbers.
 */
import fc from 'fast-check'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { anyJob } from '../../../tests/generators/any-job'
import { readJob } from './read-job'
import { jobSentence } from './trouble-wording'
import { usualPart, usualRecipe } from './usual'
import { writeJob } from './write-job'

const fixture = (name: string) =>
  readFileSync(new URL(`../../../tests/fixtures/jobs/${name}.json`, import.meta.url), 'utf8')

function readFixture(name: string) {
  const read = readJob(fixture(name))
  if (!read.ok) throw new Error(jobSentence(read.reason))
  return read.value
}

/** The sentence about a job that is sound but for what `changed` puts in place of the first flitch and part. */
function sentenceFor({ flitch = {}, part = {}, job = {} }: { flitch?: object; part?: object; job?: object }): string {
  const text = JSON.stringify({
    format: 'leafturn job',
    version: 1,
    flitches: [{ id: 'walnut', name: 'Walnut', leaves: 24, size: [300, 2400], ...flitch }],
    parts: [{ id: 'door', name: 'Door', width: 500, length: 600, ...part }],
    ...job,
  }).replaceAll('"1e999"', '1e999')
  return sentenceOf(text)
}

function sentenceOf(text: string): string {
  const read = readJob(text)
  return read.ok ? 'read' : jobSentence(read.reason)
}

describe('a job written and read', () => {
  it('[J1] is the same job', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const read = readJob(writeJob(job))
        expect(read).toEqual({ ok: true, value: job })
      }),
      { numRuns: 150 },
    )
  })

  it.each(['short', 'sideboard'])('[J1] %s: written, read and written again it is the same text', (name) => {
    const written = writeJob(readFixture(name))
    const again = readJob(written)
    expect(again).toEqual({ ok: true, value: readFixture(name) })
    expect(again.ok && writeJob(again.value)).toBe(written)
  })

  it('[J1] shows the work of a hand: points in brackets, short things on one line, long lists filling their lines', () => {
    const lines = writeJob(readFixture('sideboard')).split('\n')
    expect(lines[1]).toBe('  "format": "leafturn job",')
    expect(lines).toContain('      "outline": [[4, 0], [298, 6], [303, 2396], [0, 2400]],')
    expect(lines).toContain('      "leaves": [1, 2, 3, 4, 6, 5, 8, 9, 10],')
    expect(lines).toContain('      "size": [180, 2100],')
    expect(lines).toContain('      "leaves": 12')
    expect(lines).toContain('      "overhang": [10, 6, 12, 8],')
    expect(lines).toContain('      "core": { "sides": 10, "ends": 12 },')
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(120)
  })
})

describe('a short file', () => {
  it('[J2] has the usual values', () => {
    const job = readFixture('short')
    expect(job.unit).toBe('mm')
    const [flitch] = job.flitches
    expect(flitch?.leaves.map(({ number }) => number)).toEqual(Array.from({ length: 24 }, (_, i) => i + 1))
    expect(flitch?.outline).toEqual([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 2400 },
      { x: 0, y: 2400 },
    ])
    expect(job.parts).toEqual([usualPart('part-1', 'Part 1', 1100, 520, flitch!)])
  })

  it('[J2] takes overhang and core as one number, by sides and ends, or from the top clockwise', () => {
    const { parts } = readFixture('sideboard')
    expect(parts.map(({ overhang }) => overhang)).toEqual([
      { top: 10, right: 6, bottom: 12, left: 8 },
      { top: 8, right: 8, bottom: 8, left: 8 },
      { top: 10, right: 6, bottom: 10, left: 6 },
    ])
    expect(parts[0]!.core).toEqual({ top: 12, right: 10, bottom: 12, left: 10 })
    expect(parts[2]!.core).toEqual({ top: -3, right: -3, bottom: -3, left: -3 })
  })

  it('[J2] takes a recipe that says only what is not usual, and the allowance of the way of jointing', () => {
    const { parts } = readFixture('sideboard')
    expect(parts[0]!.allowance).toBe(1.5)
    expect(parts[0]!.recipe).toEqual({
      ...usualRecipe('strips', 2),
      arrangement: 'balance',
      count: 3,
      spine: 'left',
    })
    expect(parts[2]!.recipe).toEqual(usualRecipe('four-way', 1))
  })

  it('[J2] keeps the shop usual but for what is said', () => {
    const { shop } = readFixture('sideboard')
    expect(shop.clearance).toEqual({ knot: 4, hole: 5, split: 3, stain: 2, sapwood: 0, tear: 3 })
    expect(shop.tolerates).toEqual({ show: [], 'now and then': ['stain', 'sapwood'], hidden: ['stain', 'sapwood'] })
    expect(shop.sliver).toBe(40)
    expect(shop.betweenPieces).toBe(2)
  })

  it('[J10] keeps leaves in the order of the list and what is said of them with their number', () => {
    const { leaves } = readFixture('sideboard').flitches[0]!
    expect(leaves.map(({ number }) => number)).toEqual([1, 2, 3, 4, 6, 5, 8, 9, 10])
    expect(leaves.map(({ note }) => note)[6]).toBe('end broken off')
    expect(leaves[3]).toMatchObject({ number: 4, state: 'spare', drift: { x: 0.5, y: -2 } })
  })
})

const crossed = [
  [0, 0],
  [300, 2400],
  [300, 0],
  [0, 2400],
]
const door = 'Part 1, “Door”'
const walnut = 'Flitch 1, “Walnut”'

describe('the documentation', () => {
  const page = readFileSync(new URL('../../../docs/job-file.md', import.meta.url), 'utf8')
  const [example, defects] = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map((block) => block[1]!)

  it('[J2] shows a whole job', () => expect(sentenceOf(example!)).toBe('read'))

  it('[J2] shows a defect of each shape', () => {
    const shown = defects!.trim().split('\n')
    expect(shown).toHaveLength(3)
    const differing = [{ number: 3, defects: shown.map((line) => JSON.parse(line) as object) }]
    expect(sentenceFor({ flitch: { differing } })).toBe('read')
  })
})

describe('a faulty file', () => {
  it('is otherwise sound', () => expect(sentenceFor({})).toBe('read'))

  it.each([
    ['[J3]', { part: { widht: 3 } }, `${door}: “widht” is not a field that belongs there. It may be misspelt.`],
    [
      '[J3]',
      { part: { recipe: { pattern: 'strips', firstSeam: 3 } } },
      `${door}: recipe, “firstSeam” is not a field that belongs there. It may be misspelt.`,
    ],
    ['[J3]', { job: { units: 'mm' } }, 'The job: “units” is not a field that belongs there. It may be misspelt.'],
    ['[J4]', { part: { width: 0 } }, `${door}: width is 0 mm; it must be more than 0 mm.`],
    ['[J4]', { part: { length: -5 } }, `${door}: length is -5 mm; it must be more than 0 mm.`],
    ['[J4]', { part: { width: 20_001 } }, `${door}: width is 20001 mm; 20000 mm is the most.`],
    ['[J4]', { part: { width: '1e999' } }, `${door}: width is endless; 20000 mm is the most.`],
    ['[J4]', { part: { overhang: [10, -6, 10, 6] } }, `${door}: overhang, right is -6 mm; 0 mm is the least.`],
    ['[J4]', { part: { core: -250 } }, `${door}: core leaves 0 mm of the panel; more than 0 mm must be left.`],
    [
      '[J4]',
      { part: { recipe: { pattern: 'radial', firstSeam: 400 } } },
      `${door}: recipe, firstSeam is 400°; 360° is the most.`,
    ],
    ['[J4]', { part: { recipe: { pattern: 'strips', count: 0 } } }, `${door}: recipe, count is 0; 1 is the least.`],
    ['[J4]', { part: { chosen: { L1: -2 } } }, `${door}: chosen, L1 is -2; 1 is the least.`],
    [
      '[J4]',
      { part: { positions: { all: [0, 3e4] } } },
      `${door}: positions, all, y is 30000 mm; 20000 mm is the most.`,
    ],
    ['[J4]', { flitch: { thickness: 0 } }, `${walnut}: thickness is 0 mm; it must be more than 0 mm.`],
    ['[J4]', { flitch: { size: [300, 24_000] } }, `${walnut}: size, length is 24000 mm; 20000 mm is the most.`],
    ['[J4]', { flitch: { size: [0, 2400] } }, `${walnut}: size, width is 0 mm; it must be more than 0 mm.`],
    [
      '[J4]',
      { flitch: { leaves: 2001 } },
      `${walnut}: leaves should be a whole number from 1 to 2000, or a list of that many leaf numbers, not 2001.`,
    ],
    [
      '[J4]',
      { flitch: { leaves: 1e9 } },
      `${walnut}: leaves should be a whole number from 1 to 2000, or a list of that many leaf numbers, not 1000000000.`,
    ],
    [
      '[J4]',
      {
        job: {
          flitches: [
            { leaves: 1500, size: [1, 1] },
            { leaves: 501, size: [1, 1] },
          ],
          parts: [],
        },
      },
      'The job has 2001 leaves; 2000 is the most.',
    ],
    ['[J4]', { flitch: { leaves: [0, 1] } }, `${walnut}, leaf 0: number is 0; 1 is the least.`],
    [
      '[J4]',
      { flitch: { differing: [{ number: 1, drift: [0, 1] }] } },
      `${walnut}, leaf 1: drift must be 0: drift is measured from leaf 1, the first of its flitch.`,
    ],
    [
      '[J4]',
      { flitch: { differing: [{ number: 7, defects: [{ kind: 'knot', shape: 'spot', centre: [1, 2], radius: 0 }] }] } },
      `${walnut}, leaf 7, defect 1: radius is 0 mm; it must be more than 0 mm.`,
    ],
    [
      '[J4]',
      { flitch: { differing: [{ number: 7, defects: [{ kind: 'split', shape: 'line', from: [1, 2], to: [1, 2] }] }] } },
      `${walnut}, leaf 7, defect 1 begins and ends at the same point.`,
    ],
    ['[J4]', { job: { shop: { clearance: { knot: -1 } } } }, 'Shop, clearance, knot is -1 mm; 0 mm is the least.'],
    [
      '[J5]',
      { flitch: { size: undefined, outline: crossed } },
      `${walnut}: outline crosses or touches itself at 150 mm across and 1200 mm along, where edges 1 and 3 meet.`,
    ],
    [
      '[J5]',
      { flitch: { differing: [{ number: 9, outline: crossed }] } },
      `${walnut}, leaf 9: outline crosses or touches itself at 150 mm across and 1200 mm along, where edges 1 and 3 meet.`,
    ],
    ['[J6]', { flitch: { leaves: [1, 2, 2] } }, `${walnut}: leaves: leaf 2 is listed twice.`],
    [
      '[J6]',
      { flitch: { differing: [{ number: 2 }, { number: 2 }] } },
      `${walnut}: differing: leaf 2 is listed twice.`,
    ],
    [
      '[J6]',
      { flitch: { differing: [{ number: 25 }] } },
      `${walnut}: differing names leaf 25, which is not in the flitch.`,
    ],
    [
      '[J6]',
      { flitch: { missing: [{ after: 30, count: 1 }] } },
      `${walnut}: missing names leaf 30, which is not in the flitch.`,
    ],
    [
      '[J6]',
      {
        job: {
          parts: [
            { id: 'a', width: 1, length: 1 },
            { id: 'a', width: 1, length: 1 },
          ],
        },
      },
      'Parts: the id “a” is taken already.',
    ],
    ['[J7]', { part: { flitch: 'oak' } }, `${door}: flitch names the flitch “oak”, which is not in this job.`],
    ['[J7]', { job: { flitches: [] } }, `${door}: flitch is missing.`],
    ['[J8]', { job: { version: 2 } }, /saved in version 2 of the format, and this program reads up to 1\. A newer/],
    ['[J8]', { job: { version: '1' } }, 'The job does not say its version: a whole number from 1 is wanted, not "1".'],
    ['[J8]', { job: { version: undefined } }, /wanted, not nothing\.$/],
    ['[J9]', { job: { format: 'shopping list' } }, /its format is “shopping list”, not “leafturn job”/],
    ['[J9]', { part: { width: undefined } }, `${door}: width is missing.`],
    ['[J9]', { part: { width: '500' } }, `${door}: width should be a number, not “500”.`],
    ['[J9]', { part: { width: null } }, `${door}: width should be a number, not null.`],
    [
      '[J9]',
      { part: { recipe: { pattern: 'zigzag' } } },
      `${door}: recipe, pattern should be one of “strips”, “four-way”, “end match”, “radial”, “diamond”, “box”, “herringbone”, “parquet”, “planks”, not “zigzag”.`,
    ],
    [
      '[J9]',
      { part: { overhang: [1, 2] } },
      `${door}: overhang should be one number, [top, right, bottom, left] or { "sides": …, "ends": … }, not a list of 2.`,
    ],
    [
      '[J9]',
      { flitch: { size: undefined, outline: [[0, 0], [5], [0, 9]] } },
      `${walnut}: outline, point 2, y is missing.`,
    ],
    [
      '[J9]',
      { part: { recipe: { pattern: 'strips', count: 2.5 } } },
      `${door}: recipe, count should be a whole number or “fewest”, not 2.5.`,
    ],
    ['[J9]', { flitch: { leaves: [1, 2.5] } }, `${walnut}: leaves, entry 2 should be a whole number, not 2.5.`],
    [
      '[J9]',
      { flitch: { leaves: [1, 'two'] } },
      /^Flitch 1, “Walnut”: leaves should be a whole number from 1 to 2000, or a list/,
    ],
    ['[J9]', { flitch: { size: undefined } }, `${walnut}: size or outline is missing.`],
    ['[J9]', { flitch: { outline: crossed } }, `${walnut} should be given a size or an outline, not both.`],
    ['[J9]', { job: { parts: {} } }, 'Parts should be a list, not an object.'],
  ])('%s %j', (_rule, changed, sentence) => {
    if (typeof sentence === 'string') expect(sentenceFor(changed)).toBe(sentence)
    else expect(sentenceFor(changed)).toMatch(sentence)
  })

  it.each([
    ['', 'The file is empty.'],
    [' \n', 'The file is empty.'],
    ['[]', 'This is not a Leafturn job: it does not begin with "format": "leafturn job".'],
    ['null', 'This is not a Leafturn job: it does not begin with "format": "leafturn job".'],
    ['{\n  "format": "leafturn job",\n  version: 1\n}', 'This is not well-formed JSON (line 3, column 3).'],
    ['{ "format": ', 'This is not well-formed JSON (line 1).'],
  ])('[J9] %j', (text, sentence) => expect(sentenceOf(text)).toBe(sentence))

  it('[J9] never throws, whatever is changed in a sound file', () => {
    const sound = fixture('sideboard')
    fc.assert(
      fc.property(fc.nat(sound.length - 1), fc.nat(40), fc.string({ maxLength: 6 }), (from, length, instead) => {
        const text = sound.slice(0, from) + instead + sound.slice(from + length)
        const sentence = sentenceOf(text)
        expect(sentence).not.toContain('undefined')
      }),
      { numRuns: 400 },
    )
  })
})
