/** Stacks that leave no end shake, too little of it, or much more than is stated, as findings. */
import type { Arbor, Movement } from '../../movement/schema.ts';
import type { Finding } from '../findings/finding.ts';
import { lengthWords } from '../findings/lengthWords.ts';
import type { PipeStack } from '../stacks/pipeStack.ts';
import { type Stack, stackOf } from '../stacks/stackOf.ts';

/** Room may fall short of the end shake by rounding only, mm. */
const TOUCH = 1e-6;

/** Arbors and pipes whose neighbours leave them less room than their end shake, or that small errors would use up. */
export function checkStacks(movement: Movement): readonly Finding[] {
  return movement.arbors.flatMap((arbor): Finding[] => {
    if (arbor.endShake === 0 || (arbor.ridesOn === undefined && arbor.bearings.length < 2)) return [];
    const stack = stackOf(movement, arbor.id);
    if (stack.kind === 'none') return [];
    return stack.kind === 'pipe' ? ofPipe(arbor, stack) : betweenPlates(arbor, stack);
  });
}

const baseOf = (arbor: Arbor) =>
  ({ key: `stack ${arbor.id}`, kind: 'stack', parts: [arbor.id], wanted: arbor.endShake }) as const;

function betweenPlates(arbor: Arbor, stack: Extract<Stack, { kind: 'stack' }>): Finding[] {
  const name = arbor.name ?? arbor.id;
  const base = baseOf(arbor);
  if (stack.room < arbor.endShake - TOUCH) {
    const says = `What stands on ${name} leaves ${lengthWords(stack.room)} between the plates, less than its end shake of ${lengthWords(arbor.endShake)}.`;
    return [{ ...base, severity: stack.room < 0 ? 'stops' : 'warns', gap: stack.room, says }];
  }
  const [least] = stack.statistical;
  if (least > 0) return [];
  const says = `The end shake of ${name}, ${lengthWords(arbor.endShake)}, can be used up by the ${stack.pieces.length} lengths of its stack: likely down to ${lengthWords(least)}, at worst ${lengthWords(stack.worst[0])}.`;
  return [{ ...base, severity: 'notes', gap: least, says }];
}

function ofPipe(arbor: Arbor, stack: PipeStack): Finding[] {
  const name = arbor.name ?? arbor.id;
  const base = baseOf(arbor);
  const { below, above, room, worst, statistical } = stack;
  if (!below || !above || room === undefined || !worst || !statistical) {
    const sides = [below ? '' : 'downwards', above ? '' : 'upwards'].filter(Boolean).join(' or ');
    const says = `Nothing stops ${name} ${sides}, so its end shake of ${lengthWords(arbor.endShake)} is not kept.`;
    return [{ ...base, severity: 'notes', says }];
  }
  const between = `between ${below.label} and ${above.label}`;
  if (room < arbor.endShake - TOUCH) {
    const says = `${name} has ${lengthWords(room)} of room ${between}, less than its end shake of ${lengthWords(arbor.endShake)}.`;
    return [{ ...base, severity: room < 0 ? 'stops' : 'warns', gap: room, says }];
  }
  if (room > arbor.endShake + worst[1] - room) {
    const says = `${name} can move ${lengthWords(room)} up and down ${between}, more than its end shake of ${lengthWords(arbor.endShake)}.`;
    return [{ ...base, severity: 'notes', gap: room, says }];
  }
  const [least] = statistical;
  if (least > 0) return [];
  const says = `The end shake of ${name}, ${lengthWords(room)} ${between}, can be used up by the errors of their lengths: likely down to ${lengthWords(least)}, at worst ${lengthWords(worst[0])}.`;
  return [{ ...base, severity: 'notes', gap: least, says }];
}
