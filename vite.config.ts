import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vite'
import { unusedLibraries } from './vite.shared.ts'

/** The app: static files that run from any folder of any server. */
export default defineConfig({
  root: 'src',
  publicDir: '../static',
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' })],
  resolve: { alias: unusedLibraries },
  worker: { format: 'es' },
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2023' },
})
