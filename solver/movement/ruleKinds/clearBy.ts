/** A gap between two outlines. */
import { z } from 'zod';
import { partId } from '../ids.ts';
import type { Known } from '../known.ts';
import { extent } from '../quantities.ts';
import { PARTS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument } from './kind.ts';

/**
 * A stated gap between two outlines: circles of wheels (tips), arbors, posts, marks and round walls; for a wall
 * with straight sides `edge` says which side (index of its first vertex). A part inside a ring keeps the gap inside.
 */
export const clearByRule = z.looseObject({
  kind: z.literal('clearBy'),
  ...everyRule,
  parts: z.tuple([partId, partId]),
  gap: extent,
  edge: z.int().min(0).exactOptional(),
});

type ClearByRule = Known<z.output<typeof clearByRule>>;

/** What the document knows of gaps. */
export const clearByInDocument: RuleKindInDocument<ClearByRule> = {
  stem: 'clear-by',
  names: { parts: PARTS },
  number: { field: 'gap', measures: 'gap', least: 0 },
  subject: ({ kind, parts }) => `${kind} ${inAnyOrder(parts)}`,
};
