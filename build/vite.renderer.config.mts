/** How the bench page is built: root renderer/, one page, relative addresses, files only (nothing inlined). */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';
import { contentPolicy } from '../electron/contentPolicy.ts';

const place = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Writes the content policy into the built page; the development server needs inline scripts and goes without. */
const policyInPage: Plugin = {
  name: 'content-policy-in-page',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: contentPolicy },
      injectTo: 'head-prepend',
    },
  ],
};

/** The licence of the lettering goes with it. */
const letteringLicence: Plugin = {
  name: 'lettering-licence',
  apply: 'build',
  generateBundle() {
    const source = readFileSync(place('../node_modules/dejavu-fonts-ttf/LICENSE'));
    this.emitFile({ type: 'asset', fileName: 'assets/DejaVuSans-LICENSE.txt', source });
  },
};

export default defineConfig({
  root: place('../renderer'),
  base: './',
  cacheDir: place('../node_modules/.vite/renderer'),
  plugins: [svelte({ configFile: false }), policyInPage, letteringLicence],
  worker: { format: 'es' },
  server: { host: '127.0.0.1', fs: { allow: [place('..')] } },
  build: {
    outDir: place('out/renderer'),
    emptyOutDir: true,
    // The oldest page engine that the shell runs on (Electron 25).
    target: 'chrome114',
    // The content policy allows files of our own only, so small assets stay files too.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 2000,
  },
});
