/**
 * [R15] Without a browser viewfinders are made where they are asked for by name, with the landmarks of the simulated log; of
 *   photographs, which can't be decoded there, without landmarks.
 */
import { expect, it } from 'vitest'
import { viewfinderSights, wantsViewfinders } from '../../src/cli/viewfinder-sights'
import { demoJob } from '../../src/core/figure/demo-job'
import { partSheets } from '../../src/core/sheets/part-sheets'
import { facesOf } from './all-jobs'

it.each([
  { only: [], wanted: false },
  { only: ['templates'], wanted: false },
  { only: ['viewfinders'], wanted: true },
  { only: ['door-left', 'Viewfinder 1'], wanted: true },
  { only: ['top', 'viewfinders'], wanted: false },
])('[R15] $only', ({ only, wanted }) => {
  expect(wantsViewfinders(only, 'door-left', ['door-left', 'top'])).toBe(wanted)
})

it('[R15] viewfinders of one part of the demonstration', () => {
  const job = { ...demoJob(), parts: demoJob().parts.filter(({ id }) => id === 'door-1') }
  const face = facesOf(job)[0]!
  const sights = viewfinderSights(face)
  expect([...sights.values()].map(({ landmarks }) => landmarks[0]?.kind)).toEqual(['crown tip', 'crown tip'])
  expect(viewfinderSights({ ...face, flitch: { ...face.flitch, id: 'other' } }).size).toBe(0)
  const titles = partSheets(face, 'mm', { sights }).sheets.map(({ title }) => title)
  expect(titles.filter((title) => title.startsWith('Viewfinder'))).toEqual([
    'Viewfinder, leaf by leaf',
    'Viewfinder 1, numbered end',
    'Viewfinder 1, far end',
  ])
})
