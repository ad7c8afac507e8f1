import { svelte } from '@sveltejs/vite-plugin-svelte'
import { configDefaults, defineConfig } from 'vitest/config'
import { unusedLibraries } from './vite.shared.ts'

export default defineConfig({
  plugins: [svelte()],
  resolve: {
    // the browser's Svelte: the server's has no live state
    conditions: ['browser', 'module', 'import', 'default'],
    alias: unusedLibraries,
  },
  test: {
    environment: 'node',
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, 'dist/**', 'dist-cli/**', 'tests/e2e/**'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    // a machine that does something else beside is slow, not wrong
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // left to itself the runner keeps one core idle
    maxWorkers: '100%',
  },
})
