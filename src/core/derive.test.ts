import { describe, expect, it } from 'vitest'
import { derive } from './derive'
import { withoutMemory } from './fit/answers'
import { point } from './geometry/point'
import type { Job, Part } from './job/job'
import type { Flitch } from './leaves/flitch'
import { USUAL_STRIPS } from './patterns/strips'
import { USUAL_ROOM, usualPressing } from './press/usual-pressing'
import { USUAL_SHOP } from './shop'

const flitch: Flitch = {
  id: 'f',
  name: 'Walnut',
  species: 'walnut',
  cut: 'flat',
  figure: 'straight',
  upEnd: 'numbered',
  thickness: 0.6,
  lossBetween: 0,
  leafOneAt: 'top',
  numberedFace: 'upper',
  numberedFaceIs: 'tight',
  outline: [point(0, 0), point(215, 0), point(215, 2400), point(0, 2400)],
  leaves: Array.from({ length: 24 }, (_, i) => ({
    number: i + 1,
    outline: null,
    defects: [],
    state: 'in use' as const,
    drift: point<'leaf'>(0, 0),
    cuts: [],
    note: '',
    picture: null,
  })),
  missing: [],
  sideMargin: 0,
  endMargin: 0,
}

const part: Part = {
  id: 'p',
  name: 'Door',
  width: 600,
  length: 720,
  outline: { shape: 'rectangle' },
  showClass: 'show',
  core: { top: 0, right: 0, bottom: 0, left: 0 },
  overhang: { top: 10, right: 10, bottom: 10, left: 10 },
  jointing: 'packet',
  allowance: 3,
  laterAllowance: 8,
  lying: false,
  finished: false,
  flitch: 'f',
  recipe: USUAL_STRIPS,
  windowTurn: 0,
  positions: {},
  chosen: {},
  nudges: {},
  madeUp: {},
  asCut: {},
  border: null,
  pressing: usualPressing(flitch.species, flitch.thickness),
}

const jobOf = (over: Partial<Part> = {}): Job => ({
  name: 'Job',
  unit: 'mm',
  shop: USUAL_SHOP,
  pressRoom: USUAL_ROOM,
  flitches: [flitch],
  pairs: [],
  parts: [{ ...part, ...over }],
})

describe('derive', () => {
  it('[F1] lays a door in centre balance with its centre seam on the centre', () => {
    const [door] = derive(jobOf(), withoutMemory).parts
    expect(
      door!.pieces.map(({ cell, leaf }) => `${cell.id}:${leaf!.number}${cell.turn.turnedOver ? '↻' : ''}`),
    ).toEqual(['L2:4↻', 'L1:3', 'R1:2↻', 'R2:1'])
    expect(door!.seams.map(({ letter, meets, depthOffset }) => `${letter} ${meets} ${depthOffset}`)).toEqual([
      'A mirrors 1.2',
      'B mirrors 0',
      'C mirrors 1.2',
    ])
    expect(door!.centre.x).toBeCloseTo(0, 9)
    expect(door!.findings.map(({ code }) => code)).toEqual(['centred', 'figure-meets'])
  })
})
