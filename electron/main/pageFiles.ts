/** Serves the built page from its folder under our own scheme: reading only, with the content policy. */
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { protocol } from 'electron';
import { contentPolicyHeader } from '../contentPolicy.ts';
import { isOurs, SCHEME } from './pageAddress.ts';

const TYPES: Readonly<Record<string, string>> = {
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

/** To be called before the app is ready: gives our scheme an origin and a secure context. */
export function announceScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** The file inside `folder` that an address means, or undefined when it leads outside. */
export function fileOf(folder: string, address: string): string | undefined {
  if (!isOurs(address)) return undefined;
  let path: string;
  try {
    path = decodeURIComponent(new URL(address).pathname);
  } catch {
    // Not a well-formed address: there is no such file.
    return undefined;
  }
  const file = normalize(join(folder, path));
  return file.startsWith(folder + sep) && !path.includes('\0') ? file : undefined;
}

/** Serves the files of `folder`. */
export function servePage(folder: string): void {
  protocol.handle(SCHEME, async (request) => {
    const file = request.method === 'GET' ? fileOf(folder, request.url) : undefined;
    const type = file && TYPES[extname(file)];
    if (!file || !type) return new Response('Not part of the page.', { status: 404 });
    try {
      const headers = {
        'content-type': type,
        'content-security-policy': contentPolicyHeader,
        'x-content-type-options': 'nosniff',
      };
      return new Response(new Uint8Array(await readFile(file)), { headers });
    } catch {
      return new Response('Not part of the page.', { status: 404 });
    }
  });
}
