import { describe, expect, it } from 'vitest'
import type { Finding } from '../finding'
import { findingSentence, remedyLabel } from './wording'

const finding = (
  code: Finding['code'],
  measured: number | null,
  about: Finding['about'],
  limit: number | null = null,
): Finding => ({
  code,
  grade: 'wrong',
  part: 'p',
  place: { on: 'face' },
  measured,
  limit,
  about,
  remedies: [],
})

describe('findings as sentences', () => {
  it.each([
    { says: 'Leaf 7 is 12 mm short at its far end.', f: finding('short', 12, { leaf: 7, side: 'far end' }) },
    {
      says: 'Seam B lies on the panel’s centre, 300 mm from both edges.',
      f: finding('centred', 0, { what: 'seam', letter: 'B', left: 300, right: 300 }),
    },
    {
      says: 'Seam B lies 2.5 mm left of the panel’s centre',
      f: finding('off-centre', -2.5, { what: 'seam', letter: 'B', left: 297.5, right: 302.5 }),
    },
    { says: 'Take 4 or 2 for a seam', f: finding('odd-count', 3, { count: 3 }) },
    { says: '2 leaves are missing between them', f: finding('sequence-broken', 3, { before: 4, after: 5, breaks: 1 }) },
    {
      says: 'Seam C is 2600 mm long, this shop trues 1200 mm in one go, and 2 more seams are too long.',
      f: finding('seam-long', 2600, { letter: 'C', more: 2 }, 1200),
    },
    {
      says: 'The figure mirrors at all 3 seams;',
      f: finding('figure-meets', 0, { promised: 'mirrors', seams: 3, of: 3, mirrored: 3 }),
    },
    {
      says: 'The figure mirrors at the 3 of 17 seams where the match asks for it;',
      f: finding('figure-meets', 0, { promised: 'mirrors', seams: 3, of: 17, mirrored: 3 }),
    },
    {
      says: 'the figure mirrors; the faces that meet lie 1 mm apart in the log. Pressed apart, 15 mm is lost between them: 6 mm over at each edge and the gap of 3 mm.',
      f: finding('pair-meets', 15, { other: 'Right', meets: 'mirrors', depth: 1, over: 6, gap: 3, pressed: 'apart' }),
    },
    {
      says: 'The pair with “Right” does not hold: along the gap this one is 700 mm and the other 680 mm.',
      f: finding('pair-void', 700, { other: 'Right', why: 'lengths' }, 680),
    },
    { says: 'Move it 12 mm towards the numbered end', f: finding('outside-play', 12, { x: 0, y: -12 }) },
  ])('[K3] $says', ({ says, f }) => {
    expect(findingSentence(f, 'mm')).toContain(says)
  })

  it('[K3] speaks the unit of the job', () => {
    expect(findingSentence(finding('short', 12.7, { leaf: 7, side: 'far end' }), 'in')).toContain('1/2 in short')
  })

  it('[K4] names what a remedy would do', () => {
    expect(remedyLabel({ remedy: 'less overhang', side: 'bottom', by: 12 }, 'mm')).toBe('12 mm less over at the bottom')
    expect(remedyLabel({ remedy: 'start at leaf', leaf: 8 }, 'mm')).toBe('Start at leaf 8')
  })
})
