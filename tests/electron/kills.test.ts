/** A sample of the long proof: kills in the middle of saving. */
import { expect, it } from 'vitest';
import { proof } from '../proof/kills.ts';

it('kills leave the old text or the new, and "saved" is never said too early', async () => {
  const { wrong, lines } = await proof.run(24, 5);
  expect(wrong, lines.join('\n')).toBe(0);
});
