import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  // Tables of commands and views name components, and the window's state is tested as the page runs it.
  plugins: [svelte({ configFile: false })],
  resolve: { conditions: ['browser'] },
  test: {
    setupFiles: ['tests/seed.ts'],
    include: [
      'tests/{published,geometry,movement,teeth,train,planting,clearance,marking,made,files,fuzz,words,electron,renderer,house}/**/*.test.ts',
    ],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
