/** A distance between two points. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { length, MIN_LENGTH } from '../quantities.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** Two points stand a length apart. */
export const distanceRule = z.looseObject({
  kind: z.literal('distance'),
  ...everyRule,
  points: z.tuple([pointId, pointId]),
  length,
});

type DistanceRule = Known<z.output<typeof distanceRule>>;

/** What the document knows of distances. */
export const distanceInDocument: RuleKindInDocument<DistanceRule> = {
  stem: 'distance',
  names: { points: POINTS },
  number: { field: 'length', measures: 'length', least: MIN_LENGTH },
  apartSays: 'two points with a distance between them',
  subject: ({ kind, points }) => `${kind} ${inAnyOrder(points)}`,
};
