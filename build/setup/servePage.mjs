/** Serves the built bench page on this computer alone. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { TOP } from './run.mjs';

const FOLDER = join(TOP, 'build', 'out', 'renderer');

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

function fileOf(address) {
  let path;
  try {
    path = decodeURIComponent(new URL(address, 'http://127.0.0.1').pathname);
  } catch {
    // Not a well-formed address: there is no such file.
    return undefined;
  }
  const file = normalize(join(FOLDER, path.endsWith('/') ? `${path}index.html` : path));
  const isInside = file.startsWith(FOLDER + sep) && !file.includes('\0');
  return isInside && existsSync(file) && statSync(file).isFile() ? file : undefined;
}

function answer(request, response) {
  const file = fileOf(request.url ?? '/');
  const type = file && TYPES[extname(file)];
  if (!file || !type || (request.method !== 'GET' && request.method !== 'HEAD')) {
    response.writeHead(404, { 'content-type': 'text/plain' }).end('Not part of the page.\n');
    return;
  }
  response.writeHead(200, { 'content-type': type, 'x-content-type-options': 'nosniff', 'cache-control': 'no-cache' });
  if (request.method === 'HEAD') response.end();
  else createReadStream(file).pipe(response);
}

/**
 * Starts serving.
 *
 * @param port wanted port; 0, or one that is taken, gives any free one
 * @returns the page's address, and how to stop
 */
export function servePage(port = 0) {
  const server = createServer(answer);
  return new Promise((done, fail) => {
    server.once('error', (error) => {
      if (error.code === 'EADDRINUSE' && port !== 0) done(servePage(0));
      else fail(error);
    });
    server.listen(port, '127.0.0.1', () => {
      done({ address: `http://127.0.0.1:${server.address().port}/`, stop: () => server.close() });
    });
  });
}
