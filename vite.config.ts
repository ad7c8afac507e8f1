import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig, type Plugin } from 'vite'
import { unusedLibraries } from './vite.shared.ts'

/** While developing, styles are put into the page by script, which the built app's policy forbids. */
const looserWhileDeveloping: Plugin = {
  name: 'looser-while-developing',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
}

/** The app: static files that run from any folder of any server. */
export default defineConfig({
  root: 'src',
  publicDir: '../static',
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' }), looserWhileDeveloping],
  resolve: { alias: unusedLibraries },
  worker: { format: 'es' },
  // nothing is put into the code as a data: address: the policy in index.html lets fonts come from files only
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2023', assetsInlineLimit: 0, chunkSizeWarningLimit: 800 },
})
