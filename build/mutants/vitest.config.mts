/** The tests that mutants of one room are tried on: `MUTANTS_TESTS` lists their folders, separated by commas. */
import { defineConfig } from 'vitest/config';

const folders = (process.env['MUTANTS_TESTS'] ?? 'tests').split(',');

export default defineConfig({
  test: {
    setupFiles: ['tests/seed.ts'],
    include: folders.map((folder) => `${folder}/**/*.test.ts`),
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
