/** Builds a TypeScript file of the project, with all that it imports, so that a thread of node can run it. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

/**
 * Calls `use` with the place of the built file, which is gone when that has ended.
 * @template T
 * @param {string} entry from the project's folder
 * @param {(program: string) => Promise<T>} use
 * @returns {Promise<T>}
 */
export async function withBuiltForNode(entry, use) {
  const folder = mkdtempSync(join(tmpdir(), 'built-for-node-'))
  try {
    await build({
      configFile: false,
      logLevel: 'warn',
      publicDir: false,
      root: fileURLToPath(new URL('../../', import.meta.url)),
      ssr: { noExternal: true },
      build: {
        ssr: entry,
        outDir: folder,
        emptyOutDir: true,
        target: 'node20',
        rolldownOptions: { output: { entryFileNames: 'program.mjs' } },
      },
    })
    return await use(join(folder, 'program.mjs'))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
