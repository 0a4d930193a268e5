/**
 * How the shell and the command line are built, one bundle each with everything inside (no node_modules needed):
 * `--mode main` and `--mode preload` for Electron, `--mode cli` for Node.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const place = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const BUNDLES = {
  main: { entry: '../electron/main/main.ts', file: 'main.cjs' },
  preload: { entry: '../electron/preload/preload.ts', file: 'preload.cjs' },
  cli: { entry: '../electron/cli/depthwright.ts', file: 'depthwright.cjs' },
} as const;

/** The command line letters its PDF sheets: both faces and their licence lie beside it. */
const lettering: Plugin = {
  name: 'lettering',
  generateBundle() {
    for (const file of ['ttf/DejaVuSans.ttf', 'ttf/DejaVuSans-Bold.ttf', 'LICENSE']) {
      const source = readFileSync(place(`../node_modules/dejavu-fonts-ttf/${file}`));
      this.emitFile({ type: 'asset', fileName: `lettering/${file.replace('ttf/', '')}`, source });
    }
  },
};

const isBundle = (mode: string): mode is keyof typeof BUNDLES => mode in BUNDLES;

export default defineConfig(({ mode }) => {
  if (!isBundle(mode)) throw new Error(`--mode must be one of ${Object.keys(BUNDLES).join(', ')}, not "${mode}"`);
  const bundle = BUNDLES[mode];
  return {
    root: place('..'),
    publicDir: false,
    plugins: mode === 'cli' ? [lettering] : [],
    ssr: { noExternal: true, external: ['electron'] },
    build: {
      ssr: place(bundle.entry),
      outDir: place('out'),
      emptyOutDir: false,
      // Node inside Electron 25 is 18; the command line runs on Node 20 and later.
      target: mode === 'cli' ? 'node20' : 'node18',
      minify: false,
      reportCompressedSize: false,
      rollupOptions: {
        output: { format: 'cjs', entryFileNames: bundle.file, codeSplitting: false },
      },
    },
  };
});
