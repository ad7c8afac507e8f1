import type { Finding, Remedy } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { beyondAtGap, edgeOfMeeting, meetingEdges } from '../fit/pair-edges'
import type { Side } from '../geometry/box'
import type { Pair } from '../job/job'
import type { PairReport } from '../seams/pair-report'

/** What is to be known of a pair, for one of its parts. */
export function checkPair(face: LaidFace, other: LaidFace, report: PairReport): readonly Finding[] {
  if (report.void) return [voidFinding(face, other, report, report.void)]
  return report.meeting ? [meetingFinding(face, report, report.meeting)] : []
}

const voidFinding = (face: LaidFace, other: LaidFace, { pair }: PairReport, why: string): Finding => ({
  code: 'pair-void',
  grade: 'wrong',
  part: face.part.id,
  place: { on: 'face' },
  measured: edgeOfMeeting(pair.meet, face.part),
  limit: edgeOfMeeting(pair.meet, other.part),
  about: { other: other.part.name, why },
  remedies: [{ remedy: 'part the pair', first: pair.first, second: pair.second }],
})

const meetingFinding = (
  face: LaidFace,
  { pair, other, side }: PairReport,
  { meets, jump, depthOffset, lost }: NonNullable<PairReport['meeting']>,
): Finding => ({
  code: 'pair-meets',
  grade: meets === 'breaks' || meets === 'steps' ? 'note' : 'good',
  part: face.part.id,
  place: { on: 'edge', side },
  measured: lost,
  limit: null,
  about: {
    other: other.name,
    meets,
    jump: jump ?? 0,
    depth: depthOffset ?? 0,
    over: beyondAtGap(pair),
    gap: pair.gap,
    pressed: pair.pressed,
  },
  remedies: [],
})

/**
 * The findings of a face by itself, as they hold within its pairs: how far the sheet goes at a gap is the pair's business,
 * and what follows from another part is mended there. Only where the window lies may be said on either.
 */
export function withinPairs(
  findings: readonly Finding[],
  { part }: LaidFace,
  pairs: readonly Pair[],
  following: Pair | null,
): readonly Finding[] {
  const mine = pairs.filter(({ first, second }) => first === part.id || second === part.id)
  if (mine.length === 0) return findings
  const sideOf = (pair: Pair) => meetingEdges(pair)[pair.first === part.id ? 'first' : 'second']
  const sawn = mine.filter(({ pressed }) => pressed === 'one board').map(sideOf)
  return findings
    .flatMap((finding) =>
      finding.code === 'overhang-small' ? smallElsewhere(finding, part.overhang, sawn) : [finding],
    )
    .map((finding) => ({
      ...finding,
      remedies: finding.remedies.filter((one) => isOpen(one, following, mine.map(sideOf))),
    }))
}

/** Where one board is sawn through its sheet ends with it, and no edge can come out bare. */
function smallElsewhere(
  finding: Finding,
  over: Readonly<Record<Side, number>>,
  sawn: readonly Side[],
): readonly Finding[] {
  const sides = (String(finding.about['sides']).split(', ') as Side[]).filter((side) => !sawn.includes(side))
  if (sides.length === 0) return []
  const least = sides.reduce((best, side) => (over[side] < over[best] ? side : best))
  return [
    {
      ...finding,
      place: { on: 'edge', side: least },
      measured: over[least],
      about: { ...finding.about, sides: sides.join(', ') },
    },
  ]
}

function isOpen(remedy: Remedy, following: Pair | null, atGap: readonly Side[]): boolean {
  switch (remedy.remedy) {
    case 'less overhang':
    case 'overhang':
      return !atGap.includes(remedy.side)
    case 'move window':
    case 'other leaf':
    case 'next in run':
    case 'make up':
      return true
    default:
      return following === null
  }
}
