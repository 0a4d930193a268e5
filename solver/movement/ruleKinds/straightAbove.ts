/** A point straight above or below another, along the centre line. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** `point` stands straight above or below `of`: the line of both runs along the centre line. */
export const straightAboveRule = z.looseObject({
  kind: z.literal('straightAbove'),
  ...everyRule,
  point: pointId,
  of: pointId,
});

type StraightAboveRule = Known<z.output<typeof straightAboveRule>>;

/** What the document knows of points straight above others. */
export const straightAboveInDocument: RuleKindInDocument<StraightAboveRule> = {
  stem: 'straight-above',
  names: { point: POINTS, of: POINTS },
  subject: ({ kind, point, of }) => `${kind} ${inAnyOrder([point, of])}`,
};
