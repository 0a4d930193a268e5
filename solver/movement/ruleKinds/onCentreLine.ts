/** A point on the centre line. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import type { RuleKindInDocument } from './kind.ts';

/** `point` stands on the centre line. */
export const onCentreLineRule = z.looseObject({ kind: z.literal('onCentreLine'), ...everyRule, point: pointId });

type OnCentreLineRule = Known<z.output<typeof onCentreLineRule>>;

/** What the document knows of points on the centre line. */
export const onCentreLineInDocument: RuleKindInDocument<OnCentreLineRule> = {
  stem: 'on-centre-line',
  names: { point: POINTS },
  subject: ({ kind, point }) => `${kind} ${point}`,
};
