/** A point and its image in the centre line. */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/** `point` is the mirror image of `of` in the centre line. */
export const mirroredRule = z.looseObject({ kind: z.literal('mirrored'), ...everyRule, point: pointId, of: pointId });

type MirroredRule = Known<z.output<typeof mirroredRule>>;

/** What the document knows of mirrored places. */
export const mirroredInDocument: RuleKindInDocument<MirroredRule> = {
  stem: 'mirrored',
  names: { point: POINTS, of: POINTS },
  subject: ({ kind, point, of }) => `${kind} ${inAnyOrder([point, of])}`,
};
