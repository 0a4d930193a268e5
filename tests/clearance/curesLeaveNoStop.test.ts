/** A small sample of the proof that cures leave no new stop: `npm run proof -- cures` runs the whole. */
import { expect, it } from 'vitest';
import { proof } from '../proof/cures.ts';

it('cures of disturbed demos, of the catalogue and of random scenes leave no new stop', { timeout: 120_000 }, () => {
  const { wrong, lines } = proof.run(12, 5);
  expect(wrong, lines.join('\n')).toBe(0);
});
