/** A sample of the long proof of drags: every step of a few drags of each kind of linkage is looked at. */
import { expect, it } from 'vitest';
import { proof } from '../proof/drags.ts';

it('no drag leaps, turns a triangle over, breaks a rule or stops short of what it can reach', () => {
  const { wrong, lines } = proof.run(7, 4);
  expect(wrong, lines.join('\n')).toBe(0);
}, 120_000);
