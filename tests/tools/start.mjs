/** `npm start`: builds the app and serves the build. */
import { spawnSync } from 'node:child_process'
import { serve } from './serve.mjs'

const built = spawnSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn'], {
  stdio: 'inherit',
})
if (built.status !== 0) process.exit(built.status ?? 1)
try {
  serve()
} catch (trouble) {
  console.error(trouble instanceof Error ? trouble.message : trouble)
  process.exit(1)
}
