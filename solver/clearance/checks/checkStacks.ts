/** Stacks that leave no end shake, too little of it, or much more than is stated, as findings. */

import type { Arbor, Movement } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import type { Finding } from '../findings/finding.ts';
import { pieceOf } from '../solids/piece.ts';
import type { PipeStack } from '../stacks/pipeStack.ts';
import { type Stack, stackOf } from '../stacks/stackOf.ts';

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
  const base = baseOf(arbor);
  if (stack.room < arbor.endShake - TOUCH) {
    const severity = stack.room <= TOUCH ? 'stops' : 'warns';
    return [{ ...base, severity, gap: stack.room, cause: { kind: 'stackShort', arbor: arbor.id } }];
  }
  const [likely] = stack.statistical;
  if (likely > 0) return [];
  const lengths = stack.pieces.length;
  const cause = { kind: 'stackUsedUp', arbor: arbor.id, lengths, likely, worst: stack.worst[0] } as const;
  return [{ ...base, severity: 'notes', gap: likely, cause }];
}

function ofPipe(arbor: Arbor, stack: PipeStack): Finding[] {
  const base = baseOf(arbor);
  const { below, above, room, worst, statistical } = stack;
  if (!below || !above || room === undefined || !worst || !statistical) {
    const cause = { kind: 'pipeUnstopped', arbor: arbor.id, down: !below, up: !above } as const;
    return [{ ...base, severity: 'notes', cause }];
  }
  const between = [pieceOf(below), pieceOf(above)] as const;
  const of = { arbor: arbor.id, between };
  if (room < arbor.endShake - TOUCH) {
    return [{ ...base, severity: room <= TOUCH ? 'stops' : 'warns', gap: room, cause: { kind: 'pipeShort', ...of } }];
  }
  if (room > arbor.endShake + worst[1] - room) {
    return [{ ...base, severity: 'notes', gap: room, cause: { kind: 'pipeLoose', ...of } }];
  }
  const [likely] = statistical;
  if (likely > 0) return [];
  const cause = { kind: 'pipeUsedUp', ...of, room, likely, worst: worst[0] } as const;
  return [{ ...base, severity: 'notes', gap: likely, cause }];
}
