/** Stacks that leave no end shake, as findings. */
import type { Movement } from '../movement/index.ts';
import type { Finding } from './finding.ts';
import { lengthWords } from './lengthWords.ts';
import { stackOf } from './stackOf.ts';

/** Room may fall short of the end shake by rounding only, mm. */
const TOUCH = 1e-6;

/** Arbors whose parts leave less room between the plates than their end shake, or whose end shake small errors would use up. */
export function checkStacks(movement: Movement): readonly Finding[] {
  return movement.arbors.flatMap((arbor): Finding[] => {
    if (arbor.endShake === 0 || arbor.bearings.length < 2) return [];
    const stack = stackOf(movement, arbor.id);
    if (stack.kind === 'none') return [];
    const name = arbor.name ?? arbor.id;
    const base = { key: `stack ${arbor.id}`, kind: 'stack', parts: [arbor.id], wanted: arbor.endShake } as const;
    if (stack.room < arbor.endShake - TOUCH) {
      const says = `What stands on ${name} leaves ${lengthWords(stack.room)} between the plates, less than its end shake of ${lengthWords(arbor.endShake)}.`;
      return [{ ...base, severity: stack.room < 0 ? 'stops' : 'warns', gap: stack.room, says }];
    }
    const [least] = stack.statistical;
    if (least > 0) return [];
    const says = `The end shake of ${name}, ${lengthWords(arbor.endShake)}, can be used up by the ${stack.pieces.length} lengths of its stack: likely down to ${lengthWords(least)}, at worst ${lengthWords(stack.worst[0])}.`;
    return [{ ...base, severity: 'notes', gap: least, says }];
  });
}
