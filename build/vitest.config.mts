import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    setupFiles: ['tests/seed.ts'],
    include: [
      'tests/{published,geometry,movement,teeth,train,planting,clearance,marking,made,files,words,electron,renderer,house}/**/*.test.ts',
    ],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
