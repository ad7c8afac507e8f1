import fs from 'node:fs'
import http from 'node:http'
import type { AddressInfo } from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { appServer } from './serve.mjs'

const policy = "default-src 'self'; object-src 'none'"
const around = fs.mkdtempSync(path.join(os.tmpdir(), 'serve-'))
const dist = path.join(around, 'dist')
let server: http.Server

beforeAll(async () => {
  fs.mkdirSync(path.join(dist, 'assets'), { recursive: true })
  fs.writeFileSync(path.join(around, 'secret.txt'), 'not for the net')
  fs.writeFileSync(path.join(dist, 'index.html'), `<meta http-equiv="Content-Security-Policy" content="${policy}" />`)
  fs.writeFileSync(path.join(dist, 'assets', 'play.wasm'), 'wasm')
  server = appServer(dist)
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
})

afterAll(() => {
  server.close()
  fs.rmSync(around, { recursive: true })
})

/** Asks for an address as it stands: fetch would tidy the dots away. */
function ask(address: string, method = 'GET') {
  const { port } = server.address() as AddressInfo
  return new Promise<{ status?: number; headers: http.IncomingHttpHeaders; text: string }>((answered, failed) => {
    const request = http.request({ port, host: '127.0.0.1', path: address, method, agent: false }, (response) => {
      let text = ''
      response.on('data', (part: Buffer) => (text += part.toString()))
      response.on('end', () => answered({ status: response.statusCode, headers: response.headers, text }))
    })
    request.on('error', failed).end()
  })
}

it('the page comes with the policy that it states itself', async () => {
  const { status, headers } = await ask('/')
  expect(status).toBe(200)
  expect(headers['content-security-policy']).toBe(`${policy}; frame-ancestors 'none'`)
})

it('a compiled module is named as one, and kept by the browser', async () => {
  const { headers } = await ask('/assets/play.wasm?v=1')
  expect(headers['content-type']).toBe('application/wasm')
  expect(headers['cache-control']).toContain('immutable')
})

it.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/assets/..%2f..%2fsecret.txt',
  '/%zz',
  '/assets',
  '/nowhere.js',
  '/%00',
])('%s is not here', async (address) => {
  const { status, text } = await ask(address)
  expect(status).toBe(404)
  expect(text).not.toContain('not for the net')
})

it('nothing can be sent to it', async () => {
  expect((await ask('/', 'POST')).status).toBe(405)
})

it('a folder without a build is named', () => {
  expect(() => appServer(around)).toThrow(/holds no build/)
})
