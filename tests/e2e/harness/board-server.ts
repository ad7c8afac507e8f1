import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { createServer } from 'vite'

const LIBRARIES = ['konva/lib/Core', 'konva/lib/Shape', 'polygon-clipping', 'clipper2-ts', 'simplex-noise']

/** Serves the page with one board on it, on a port of its own. Gives its address and the way to stop. */
export async function serveBoard(): Promise<{ address: string; stop: () => Promise<void> }> {
  const cacheDir = fs.mkdtempSync(path.join(os.tmpdir(), 'boards-'))
  const server = await createServer({
    configFile: false,
    root: fileURLToPath(new URL('.', import.meta.url)),
    logLevel: 'warn',
    // servers side by side must not share a cache
    cacheDir,
    optimizeDeps: { noDiscovery: true, include: LIBRARIES },
    server: {
      port: 0,
      host: '127.0.0.1',
      hmr: false,
      watch: null,
      fs: { allow: [fileURLToPath(new URL('../../../', import.meta.url))] },
    },
  })
  await server.listen()
  const stop = async () => {
    await server.close()
    fs.rmSync(cacheDir, { recursive: true, force: true })
  }
  return { address: `${server.resolvedUrls?.local[0] ?? ''}board.html`, stop }
}
