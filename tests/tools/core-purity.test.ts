/** The compiler, set as tsconfig.core.json says, must refuse whatever is not pure. */
import path from 'node:path'
import ts from 'typescript'
import { expect, it } from 'vitest'

const settings = ts.getParsedCommandLineOfConfigFile(
  'tsconfig.core.json',
  {},
  { ...ts.sys, onUnRecoverableConfigFileDiagnostic: (trouble) => expect.fail(String(trouble.messageText)) },
)

/** What the compiler says about a file of the core with this text. */
function complaints(text: string): string[] {
  const file = path.resolve('src/core/purity-probe.ts')
  const options = settings?.options ?? {}
  const host = ts.createCompilerHost(options)
  const readSource = host.getSourceFile.bind(host)
  host.getSourceFile = (name, target) =>
    path.resolve(name) === file ? ts.createSourceFile(name, text, target) : readSource(name, target)
  const program = ts.createProgram([file], options, host)
  return program
    .getSemanticDiagnostics(program.getSourceFile(file))
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '))
}

it.each(['document', 'window', 'console', 'crypto', 'performance', 'process', 'fetch', 'setTimeout', 'URL', 'Blob'])(
  'the core knows no %s',
  (name) => {
    expect(complaints(`export const probe: unknown = ${name}\n`)).toEqual([
      expect.stringMatching(new RegExp(`Cannot find name '${name}'`)),
    ])
  },
)

it('the core knows the language itself', () => {
  expect(complaints(`export const probe = [3, 1, 2].toSorted().map(Math.sqrt)\n`)).toEqual([])
})

it('the core takes a missing value for one that may be missing', () => {
  expect(complaints(`export const probe: number = [1, 2][5]\n`)).toEqual([expect.stringMatching(/undefined/)])
})

it('the settings cover the whole core and no test', () => {
  const files = (settings?.fileNames ?? []).map((file) => path.relative(process.cwd(), file))
  expect(files).toContain('src/core/geometry/point.ts')
  expect(files.filter((file) => !file.startsWith('src/core/') || file.includes('.test.'))).toEqual([])
})
