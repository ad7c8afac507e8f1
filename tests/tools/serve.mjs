/** Serves the built app from dist, on nothing but node itself. */
import fs from 'node:fs'
import http from 'node:http'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

/** @type {Record<string, string>} */
const kinds = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
}

/**
 * The content security policy written in the page itself, with what only a header may say added.
 * @param {string} page
 */
function policyOf(page) {
  const written = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(page)?.[1]
  if (!written) throw new Error('index.html states no content security policy')
  return `${written}; frame-ancestors 'none'`
}

/**
 * The file that an address asks for; null where there is none, or it lies outside the folder.
 * @param {string} folder @param {string} address
 */
function fileFor(folder, address) {
  let asked
  try {
    asked = decodeURIComponent(address.replace(/[?#].*$/, ''))
  } catch {
    return null
  }
  const file = path.join(folder, asked.endsWith('/') ? `${asked}index.html` : asked)
  if (!file.startsWith(folder + path.sep) || file.includes('\0')) return null
  return fs.statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null
}

/**
 * A server of the built app; it does not listen yet.
 * @param {string} folder where the build lies
 */
export function appServer(folder) {
  const index = path.join(folder, 'index.html')
  if (!fs.existsSync(index)) throw new Error(`${folder} holds no build: run "npm run build" first`)
  const always = {
    'Content-Security-Policy': policyOf(fs.readFileSync(index, 'utf8')),
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
  }
  return http.createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return void response.writeHead(405, always).end()
    const file = fileFor(folder, request.url ?? '/')
    if (!file) return void response.writeHead(404, { ...always, 'Content-Type': 'text/plain' }).end('Not here.')
    const hashed = path.dirname(file).endsWith('assets')
    response.writeHead(200, {
      ...always,
      'Content-Type': kinds[path.extname(file)] ?? 'application/octet-stream',
      'Content-Length': fs.statSync(file).size,
      'Cache-Control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    })
    if (request.method === 'HEAD') return void response.end()
    fs.createReadStream(file)
      .on('error', () => response.destroy())
      .pipe(response)
  })
}

/** The port to serve on: PORT, else 4173. Throws where PORT is no port. */
function port() {
  const wanted = process.env.PORT || '4173'
  const number = Number(wanted)
  if (Number.isInteger(number) && number >= 0 && number <= 65535) return number
  throw new Error(`PORT is "${wanted}", but a port is a whole number from 0 to 65535.`)
}

/** Serves dist on PORT and HOST (this machine alone unless said otherwise) and prints the address. */
export function serve() {
  const host = process.env.HOST || '127.0.0.1'
  const server = appServer(path.resolve('dist'))
  server.on('error', (trouble) => {
    const taken = 'code' in trouble && trouble.code === 'EADDRINUSE'
    console.error(taken ? `Port ${port()} is taken: set PORT to another one.` : trouble.message)
    process.exit(1)
  })
  server.listen(port(), host, () => {
    const address = server.address()
    const at = typeof address === 'object' && address ? address.port : port()
    console.log(`Leafturn is at http://${host === '127.0.0.1' ? 'localhost' : host}:${at}/`)
  })
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  try {
    serve()
  } catch (trouble) {
    console.error(trouble instanceof Error ? trouble.message : trouble)
    process.exit(1)
  }
}
