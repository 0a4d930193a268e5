/** A pair of wheels in mesh. */
import { z } from 'zod';
import { readingId, wheelId } from '../ids.ts';
import type { Known } from '../known.ts';
import { bounded, length, MIN_LENGTH, plusMinus } from '../quantities.ts';
import { WHEELS } from '../references/collections.ts';
import { everyRule } from './common.ts';
import { inAnyOrder, type RuleKindInDocument, type TellFault } from './kind.ts';

/** The first wheel drives the second; the centre distance is calculated, measured or held at a value. */
export const depthRule = z.looseObject({
  kind: z.literal('depth'),
  ...everyRule,
  wheels: z.tuple([wheelId, wheelId]),
  use: z.enum(['calculated', 'measured', 'held']).default('calculated'),
  measured: z
    .looseObject({ value: length, plusMinus: plusMinus.exactOptional(), reading: readingId.exactOptional() })
    .exactOptional(),
  held: length.exactOptional(),
  /** Added to the calculated distance, mm: the shake that the maker wants. */
  allowance: bounded(-10, 10).default(0),
});

type DepthRule = Known<z.output<typeof depthRule>>;

/** What the document knows of depths. */
export const depthInDocument: RuleKindInDocument<DepthRule> = {
  stem: 'depth',
  names: { wheels: WHEELS },
  namesWithin: { measured: { reading: ['readings'] } },
  number: { field: 'held', measures: 'length', least: MIN_LENGTH, sets: { use: 'held' }, isOneOfSeveral: true },
  apartSays: 'two wheels on different axes',
  faults: lacksWhatItUses,
  without: withoutParts,
  subject: ({ kind, wheels }) => `${kind} ${inAnyOrder(wheels)}`,
};

function lacksWhatItUses({ use, measured, held }: DepthRule, tell: TellFault): void {
  if (use === 'calculated' || (use === 'measured' ? measured : held) !== undefined) return;
  tell(['use'], {
    found: `“${use}” without a ${use} value`,
    expected: use === 'measured' ? '“measured” with a “value” in mm' : '“held” with a length in mm',
    remedy: `enter the ${use} distance, or write “calculated”`,
  });
}

/** A depth forgets a reading that is gone, and goes with its wheels. */
function withoutParts(rule: DepthRule, isGone: (id: string | undefined) => boolean): DepthRule | undefined {
  if (rule.wheels.some(isGone)) return undefined;
  if (rule.measured === undefined || !isGone(rule.measured.reading)) return rule;
  const { reading: _, ...measured } = rule.measured;
  return { ...rule, measured };
}
