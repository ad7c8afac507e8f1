/**
 * Rules.
 * J23 A packed job unpacks to the same job and the same photos; the same job packs to the same bytes.
 * J24 A bare job.json opens like a packed job.
 * J25 A file that is something else, is damaged, too large, or would unpack to too much is refused with the reason.
 * J26 Only job.json and photos/ are taken from a zip, whatever else and under whatever path it holds.
 */
import { strToU8, unzipSync, zipSync } from 'fflate'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anyJob } from '../../tests/generators/any-job'
import { SAMPLE } from '../../tests/generators/sample-job'
import { writeJob } from '../core/job/write-job'
import { jobFileSentence, LARGEST_FILE, packJob, unpackJob } from './job-file'
import { crc32, zipDirectory } from './zip-directory'

const photos = new Map([
  ['0a1b.webp', Uint8Array.from({ length: 3000 }, (_, i) => (i * 7919) % 251)],
  ['ff00.jpg', strToU8('another')],
])
const json = strToU8(writeJob(SAMPLE))

function sentenceFor(bytes: Uint8Array): string {
  const unpacked = unpackJob(bytes)
  return unpacked.ok ? 'unpacked' : jobFileSentence(unpacked.reason)
}

describe('a job in one file', () => {
  it('[J23] comes out as it went in', () => {
    expect(unpackJob(packJob(SAMPLE, photos))).toEqual({ ok: true, value: { job: SAMPLE, photos } })
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(unpackJob(packJob(job, new Map()))).toEqual({ ok: true, value: { job, photos: new Map() } })
      }),
      { numRuns: 20 },
    )
  })

  it('[J23] has the same bytes each time, in whatever order the photos come', () => {
    expect(packJob(SAMPLE, new Map([...photos].reverse()))).toEqual(packJob(SAMPLE, photos))
  })

  it('[J23] stores photos as they are, and can be opened by hand', () => {
    const packed = packJob(SAMPLE, photos)
    expect(Object.keys(unzipSync(packed))).toEqual(['job.json', 'photos/0a1b.webp', 'photos/ff00.jpg'])
    expect(Buffer.from(packed).includes(Buffer.from(photos.get('0a1b.webp')!))).toBe(true)
    expect(zipDirectory(packed)?.[1]).toEqual({
      name: 'photos/0a1b.webp',
      size: 3000,
      crc: crc32(photos.get('0a1b.webp')!),
    })
  })

  it('[J24] may be a bare job.json', () => {
    expect(unpackJob(json)).toEqual({ ok: true, value: { job: SAMPLE, photos: new Map() } })
    expect(sentenceFor(strToU8(`\uFEFF\n${writeJob(SAMPLE)}`))).toBe('unpacked')
  })

  it('[J26] gives nothing of other files', () => {
    const zip = zipSync({
      'job.json': json,
      '../job.json': strToU8('{}'),
      'photos/../../evil.webp': strToU8('x'),
      'photos/deep/er.webp': strToU8('x'),
      'photos/.hidden.webp': strToU8('x'),
      '/photos/root.webp': strToU8('x'),
      'photos/good.webp': strToU8('good'),
      'readme.txt': strToU8('x'),
    })
    const unpacked = unpackJob(zip)
    expect(unpacked).toEqual({ ok: true, value: { job: SAMPLE, photos: new Map([['good.webp', strToU8('good')]]) } })
  })
})

describe('another file', () => {
  const packed = packJob(SAMPLE, photos)
  const cut = packed.slice(0, packed.length - 30)
  const spoilt = packed.slice()
  const photoAt = Buffer.from(packed).indexOf(Buffer.from(photos.get('0a1b.webp')!))
  spoilt[photoAt + 100]! ^= 1

  it.each([
    {
      file: 'a picture',
      bytes: Uint8Array.of(0xff, 0xd8, 0xff, 0xe0),
      sentence: 'This is neither a packed job nor a job.json.',
    },
    { file: 'a text', bytes: strToU8('Dear veneer'), sentence: 'This is neither a packed job nor a job.json.' },
    { file: 'nothing', bytes: new Uint8Array(0), sentence: 'The file is empty.' },
    { file: 'half a job.json', bytes: json.slice(0, 300), sentence: /^This is not well-formed JSON/ },
    {
      file: 'a zip of other things',
      bytes: zipSync({ 'a/job.json': json }),
      sentence: /^There is no job\.json inside this zip/,
    },
    { file: 'an empty zip', bytes: zipSync({}), sentence: /^There is no job\.json inside this zip/ },
    { file: 'a zip cut off', bytes: cut, sentence: "The file is damaged: the list of what it holds can't be read." },
    {
      file: 'a photo with one bit changed',
      bytes: spoilt,
      sentence: "The file is damaged: photos/0a1b.webp can't be read.",
    },
    {
      file: 'a faulty job',
      bytes: zipSync({ 'job.json': strToU8('{"format":"leafturn job","version":2}') }),
      sentence: /A newer Leafturn/,
    },
    {
      file: 'a job that is no text',
      bytes: zipSync({ 'job.json': Uint8Array.of(0x7b, 0xff) }),
      sentence: "The file is damaged: job.json can't be read.",
    },
  ])('[J25] $file', ({ bytes, sentence }) => {
    if (typeof sentence === 'string') expect(sentenceFor(bytes)).toBe(sentence)
    else expect(sentenceFor(bytes)).toMatch(sentence)
  })

  it('[J25] that is too large, or says that it would be', () => {
    expect(sentenceFor(new Uint8Array(LARGEST_FILE + 1))).toMatch(/^The file holds 501 MB; 500 MB is the most/)
    const bomb = zipSync({ 'job.json': json, 'photos/a.webp': new Uint8Array(60_000) })
    // the size in the directory, which is what would be unpacked
    const at = Buffer.from(bomb).lastIndexOf('photos/a.webp') - 46
    new DataView(bomb.buffer, bomb.byteOffset).setUint32(at + 24, 0xfffffff0, true)
    expect(sentenceFor(bomb)).toMatch(/^The file holds 4295 MB/)
    const lying = zipSync({ 'job.json': strToU8(' '.repeat(60_000_000)) })
    expect(sentenceFor(lying)).toMatch(/^The file holds 60 MB/)
  })

  it('[J25] never throws, whichever byte is changed', () => {
    fc.assert(
      fc.property(fc.nat(packed.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const changed = packed.slice()
        changed[at]! ^= change
        const unpacked = unpackJob(changed)
        if (unpacked.ok) expect(unpacked.value.job).toEqual(SAMPLE)
        else expect(jobFileSentence(unpacked.reason)).toMatch(/\.\)?$/)
      }),
      { numRuns: 300 },
    )
  })

  it('[J25] is checked by the checksum of ISO 3309', () => expect(crc32(strToU8('123456789'))).toBe(0xcbf43926))
})
