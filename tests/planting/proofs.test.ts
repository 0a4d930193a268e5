/** Samples of the long proofs of planting: readings and holes off their places, and one wrong rule among true ones. */
import { expect, it } from 'vitest';
import { proof as facts } from '../proof/facts.ts';
import { proof as laws } from '../proof/laws.ts';
import { proof as motions } from '../proof/motions.ts';
import { proof as wrongRules } from '../proof/wrong.ts';

it('of readings and holes nothing is contested, every check is told by the difference that is there, and nothing upstream moves', () => {
  const { wrong, lines } = facts.run(60, 3);
  expect(wrong, lines.join('\n')).toBe(0);
});

it('one wrong rule is one set, minimal, with the wrong rule in it and a number that leaves none', () => {
  const { wrong, lines } = wrongRules.run(60, 3);
  expect(wrong, lines.join('\n')).toBe(0);
});

it('the laws hold on random movements with more rules than they need', () => {
  const { wrong, lines } = laws.run(25, 5);
  expect(wrong, lines.join('\n')).toBe(0);
});

it('free motions are those of a singular value decomposition', () => {
  const { wrong, lines } = motions.run(45, 2);
  expect(wrong, lines.join('\n')).toBe(0);
});
