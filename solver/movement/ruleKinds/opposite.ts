/** A point straight opposite another. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** `point` is the image of `of` through `centre`. */
export const oppositeRule = z.looseObject({
  kind: z.literal('opposite'),
  ...everyRule,
  point: pointId,
  centre: pointId,
  of: pointId,
});

type OppositeRule = Known<z.output<typeof oppositeRule>>;

/** What the document knows of places straight opposite. */
export const oppositeInDocument: RuleKindInDocument<OppositeRule> = {
  stem: 'opposite',
  names: { point: POINTS, centre: POINTS, of: POINTS },
  subject: ({ kind, point, centre, of }) => `${kind} ${inAnyOrder([point, of])} about ${centre}`,
};
