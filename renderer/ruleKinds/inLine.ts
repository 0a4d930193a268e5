/** Lines on the bench: through a centre and another point. */
import type { RuleKindOnBench } from './kind.ts';
import { WEIGHT } from './kind.ts';

/** Each of three with the two others. */
export const inLineOnBench: RuleKindOnBench = {
  ofThree: (point, first, second) => ({ kind: 'inLine', point, through: [first, second] }),
  snaps:
    ({ point, lines }) =>
    (question) =>
      lines(question).map(({ centre, other, along }) => ({
        key: `inLine ${[centre.id, other.id].sort().join(' ')}`,
        locus: { kind: 'line', through: centre, along },
        keeps: { kind: 'inLine', point, through: [centre.id, other.id] },
        says: `in line with ${question.nameOf(centre.id)} and ${question.nameOf(other.id)}`,
        weight: WEIGHT.line,
      })),
};
