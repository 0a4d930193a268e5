/** A point at a length from a centre. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { length, MIN_LENGTH } from '../quantities.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import type { RuleKindInDocument } from './kind.ts';

/** The point stands a length from a centre. */
export const radiusRule = z.looseObject({
  kind: z.literal('radius'),
  ...everyRule,
  point: pointId,
  centre: pointId,
  length,
});

type RadiusRule = Known<z.output<typeof radiusRule>>;

/** What the document knows of radii. */
export const radiusInDocument: RuleKindInDocument<RadiusRule> = {
  stem: 'radius',
  names: { point: POINTS, centre: POINTS },
  number: { field: 'length', measures: 'length', least: MIN_LENGTH },
  apartSays: 'two points with a distance between them',
  subject: ({ kind, point, centre }) => `${kind} ${point} ${centre}`,
};
