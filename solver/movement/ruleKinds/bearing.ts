/** A direction about a centre. (The file keeps its first word for it.) */
import { z } from 'zod';
import { pointId } from '../ids.ts';
import type { Known } from '../known.ts';
import { angleDeg } from '../quantities.ts';
import { POINTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import type { RuleKindInDocument } from './kind.ts';

/** The ray from `centre` to `point` makes `angle` with the direction centre → `reference`, or with +x. */
export const bearingRule = z.looseObject({
  kind: z.literal('bearing'),
  ...everyRule,
  point: pointId,
  centre: pointId,
  reference: pointId.exactOptional(),
  angle: angleDeg,
});

type BearingRule = Known<z.output<typeof bearingRule>>;

/** What the document knows of directions. */
export const bearingInDocument: RuleKindInDocument<BearingRule> = {
  stem: 'bearing',
  names: { point: POINTS, centre: POINTS, reference: POINTS },
  number: { field: 'angle', measures: 'angle' },
  subject: ({ kind, point, centre, reference }) => `${kind} ${point} ${centre} ${reference ?? ''}`,
};
