/**
 * [T17] A part's files are named after it in plain letters, whatever its name, and no two alike on any system.
 */
import { describe, expect, it } from 'vitest'
import { fileNames } from './file-names'

describe('file names', () => {
  it.each([
    { names: ['Door, left', 'Door, right'], files: ['door-left', 'door-right'] },
    { names: ['Tür „links“ 1/2', '../../etc', 'a\\b:c*?'], files: ['tur-links-1-2', 'etc', 'a-b-c'] },
    { names: ['Top', 'top', 'TOP!'], files: ['top', 'top-2', 'top-3'] },
    { names: ['A', 'A', 'A 2'], files: ['a', 'a-2', 'a-2-2'] },
    { names: ['', '扉', '…'], files: ['part', 'part-2', 'part-3'] },
    { names: ['Con', 'LPT1', 'Console'], files: ['part-con', 'part-lpt1', 'console'] },
    { names: [`${'x'.repeat(59)} y`], files: ['x'.repeat(59)] },
  ])('[T17] $names', ({ names, files }) => {
    expect(fileNames(names)).toEqual(files)
  })
})
