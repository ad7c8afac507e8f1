import { defineConfig } from 'vite'
import { unusedLibraries } from './vite.shared.ts'

/** The command line: one file for node, with the libraries inside. */
export default defineConfig({
  publicDir: false,
  resolve: { alias: unusedLibraries },
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/sheets.ts',
    outDir: 'dist-cli',
    emptyOutDir: true,
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: 'sheets.js' } },
  },
})
