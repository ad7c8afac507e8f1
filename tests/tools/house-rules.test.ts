/**
 * The rules of the house are only kept if breaking one is reported: each is broken here on purpose,
 * through the project's own lint settings.
 */
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { ESLint } from 'eslint'
import { afterAll, describe, expect, it } from 'vitest'

const eslint = new ESLint()

async function rulesBroken(filePath: string, code: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(code, { filePath })
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message)
}

const importing = (source: string) => `import { x } from '${source}'\nx()\n`

describe('who may import whom', () => {
  it.each([
    ['src/core/geometry/zz.ts', '../fit/placement'],
    ['src/core/result.ts', './ids'],
    ['src/core/units/zz.ts', '../job/job'],
    ['src/core/patterns/zz.ts', '../leaves/leaf-size'],
    ['src/core/leaves/zz.ts', '../patterns/recipe'],
    ['src/core/leaves/leaf.ts', '../shop'],
    ['src/core/job/zz.ts', '../figure/marks'],
    ['src/core/checks/zz.ts', './wording'],
    ['src/core/derive.ts', './commands/add-part'],
    ['src/core/zz.ts', './result'],
    ['src/core/elsewhere/zz.ts', '../result'],
    ['src/core/sheets/zz.ts', '../../documents/pdf/write-pdf'],
    ['src/core/fit/zz.ts', '../../../tests/bench/big-leaf'],
    ['src/documents/pdf/zz.ts', '../../store/history'],
    ['src/store/zz.ts', '../workers/play'],
    ['src/cli/sheets.ts', '../workers/figure-door'],
    ['src/workers/zz.ts', '../board/camera'],
    ['src/board/zz.ts', '../stations/face.svelte'],
    ['src/board/zz.ts', '../fields/length.svelte'],
    ['src/stations/zz.ts', '../board/board'],
    ['src/stations/zz.ts', '../app/shortcuts'],
    ['src/app/zz.ts', '../cli/sheets'],
    ['src/kitchen/zz.ts', '../core/result'],
  ])('%s may not import %s', async (file, source) => {
    expect(await rulesBroken(file, importing(source))).toContain('rooms/imports')
  })

  it.each([
    ['src/core/finding.ts', './geometry/box'],
    ['src/core/shop.ts', './leaves/leaf'],
    ['src/core/leaves/usable.ts', '../shop'],
    ['src/core/fit/placement.ts', '../seams/../faces/cells'],
    ['src/core/templates/zz.ts', '../checks/wording'],
    ['src/core/commands/zz.ts', '../derive'],
    ['src/documents/pdf/write-pdf.ts', '../../core/drawing/drawing'],
    ['src/stations/zz.ts', '../fields/length.svelte'],
    ['src/main.ts', './app/App.svelte'],
    ['src/core/geometry/zz.test.ts', '../fit/placement'],
  ])('%s may import %s', async (file, source) => {
    expect(await rulesBroken(file, importing(source))).toEqual([])
  })

  it.each([
    ['a type', `import type { Job } from '../job/job'\nexport type X = Job\n`],
    ['a type named in place', `export type X = import('../job/job').Job\n`],
    ['a module loaded later', `export const x = () => import('../job/job')\n`],
    ['an address of a module', `export const x = new URL('../job/job.ts', import.meta.url)\n`],
    ['something passed on', `export { x } from '../job/job'\n`],
  ])('%s counts as an import', async (_what, code) => {
    expect(await rulesBroken('src/core/geometry/zz.ts', code)).toContain('rooms/imports')
  })

  it('a component is held to the same rules as a module', async () => {
    const code = `<script lang="ts">\n  import { x } from '../board/board'\n</script>\n\n{x}\n`
    expect(await rulesBroken('src/stations/Zz.svelte', code)).toContain('rooms/imports')
  })
})

describe('who may import which library', () => {
  it.each([
    ['src/core/geometry/offset.ts', 'polygon-clipping'],
    ['src/core/geometry/clip-grid.ts', 'polygon-clipping'],
    ['src/core/fit/play.ts', 'clipper2-ts'],
    ['src/core/fit/play.test.ts', 'clipper2-ts'],
    ['src/stations/zz.ts', 'konva'],
    ['src/app/zz.ts', 'konva/lib/Core'],
    ['src/documents/svg/zz.ts', 'jspdf'],
    ['src/store/zz.ts', 'jspdf'],
    ['src/core/sheets/zz.ts', 'svelte'],
    ['src/core/job/zz.ts', 'node:fs'],
    ['src/stations/zz.ts', 'fast-check'],
    ['src/app/zz.ts', 'left-pad'],
  ])('%s may not import %s', async (file, source) => {
    expect(await rulesBroken(file, importing(source))).toContain('rooms/imports')
  })

  it.each([
    ['src/core/geometry/clip.ts', 'polygon-clipping'],
    ['src/core/geometry/inner-fit.ts', 'clipper2-ts'],
    ['src/core/geometry/inner-fit.test.ts', 'clipper2-ts'],
    ['src/board/zz.ts', 'konva/lib/Core'],
    ['src/main.ts', 'svelte'],
    ['src/documents/pdf/zz.ts', 'jspdf'],
    ['src/cli/zz.ts', 'node:fs'],
    ['src/core/units/zz.test.ts', 'fast-check'],
  ])('%s may import %s', async (file, source) => {
    expect(await rulesBroken(file, importing(source))).toEqual([])
  })
})

describe('imports in a circle', () => {
  const root = fs.mkdtempSync(path.join(os.tmpdir(), 'circle-'))
  afterAll(() => fs.rmSync(root, { recursive: true }))

  const put = (name: string, text: string) => {
    const file = path.join(root, name)
    fs.writeFileSync(file, text)
    return file
  }

  async function circles(file: string) {
    const { rooms } = await import('../../eslint.rooms.js')
    const parser = (await import('typescript-eslint')).parser
    const own = new ESLint({
      cwd: root,
      overrideConfigFile: true,
      overrideConfig: {
        files: ['**/*.ts'],
        languageOptions: { parser },
        plugins: { rooms },
        rules: { 'rooms/no-cycle': 'error' },
      },
    })
    const [result] = await own.lintFiles([file])
    return (result?.messages ?? []).map(({ message }) => message)
  }

  it('are reported with the way round, types included', async () => {
    const leaf = put('leaf.ts', `import type { Flitch } from './flitch'\nexport type Leaf = Flitch\n`)
    put('flitch.ts', `export type { Log as Flitch } from './log'\n`)
    put('log.ts', `import type { Leaf } from './leaf'\nexport type Log = Leaf\n`)
    expect(await circles(leaf)).toEqual(['imports go in a circle: leaf.ts → flitch.ts → log.ts → leaf.ts'])
  })

  it('are not seen where there is none', async () => {
    const seam = put('seam.ts', `import type { Cell } from './cell'\nexport type Seam = Cell\n`)
    put('cell.ts', `import type { Edge } from './edge'\nexport type Cell = Edge\n`)
    put('edge.ts', `export type Edge = number\n`)
    expect(await circles(seam)).toEqual([])
  })
})

describe('files and their contents', () => {
  it.each([
    ['a barrel', 'src/core/seams/zz.ts', `export * from './seam'\n`, 'rooms/no-barrel'],
    ['an index', 'src/core/seams/index.ts', `export const x = 1\n`, 'rooms/file-name'],
    ['a name that hides what is inside', 'src/core/seams/seam-utils.ts', `export const x = 1\n`, 'rooms/file-name'],
    ['a module in capitals', 'src/core/seams/findSeams.ts', `export const x = 1\n`, 'rooms/file-name'],
    ['the clock in the core', 'src/core/sheets/zz.ts', `export const x = () => Date.now()\n`, 'no-restricted-globals'],
    ['chance in the core', 'src/core/figure/zz.ts', `export const x = Math.random()\n`, 'no-restricted-properties'],
    ['a file over 400 lines', 'src/core/seams/zz.ts', 'export {}\n'.repeat(401), 'max-lines'],
    ['a word to the console', 'src/store/zz.ts', `console.log('here')\n`, 'no-console'],
    [
      'a test left out',
      'src/core/seams/zz.test.ts',
      `import { it } from 'vitest'\nit.skip('x', () => {})\n`,
      'no-restricted-syntax',
    ],
    [
      'a test that shuts out others',
      'tests/e2e/zz.spec.ts',
      `import { test } from '@playwright/test'\ntest.only('x', () => {})\n`,
      'no-restricted-syntax',
    ],
  ])('%s is reported', async (_what, file, code, rule) => {
    expect(await rulesBroken(file, code)).toContain(rule)
  })
})
