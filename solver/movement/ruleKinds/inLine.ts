/** A point on the line through two others. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, namedIn, type RuleKindInDocument } from './kind.ts';

/** `point` lies on the line through two others. */
export const inLineRule = z.looseObject({
  kind: z.literal('inLine'),
  ...everyRule,
  point: pointId,
  through: z.tuple([pointId, pointId]),
});

type InLineRule = Known<z.output<typeof inLineRule>>;

/** What the document knows of points in line. */
export const inLineInDocument: RuleKindInDocument<InLineRule> = {
  stem: 'in-line',
  names: { point: POINTS, through: POINTS },
  // The point may stand at one end of its line; the ends must be two.
  apart: (rule) => [namedIn(rule, ['through'])],
  subject: ({ kind, point, through }) => `${kind} ${inAnyOrder([point, ...through])}`,
};
