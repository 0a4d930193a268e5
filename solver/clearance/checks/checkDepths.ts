/** Depths that cannot be right whatever the distance: teeth of different size, or wheels that do not meet in height. */

import type { WheelId } from '../../movement/ids.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';

/** Findings on the depth rules that are in use. */
export function checkDepths(placed: PlacedMovement): readonly Finding[] {
  const { movement } = placed;
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  return movement.rules.flatMap((rule): Finding[] => {
    if (rule.kind !== 'depth' || rule.leaveOut) return [];
    const first = wheels.get(rule.wheels[0]);
    const second = wheels.get(rule.wheels[1]);
    if (!first || !second) return [];
    const found: Finding[] = [];
    const pair = [first.id, second.id] as const;
    const calculated = calculatedDepth(first, second, movement);
    if (calculated.kind === 'mismatch') {
      found.push(depthFinding('size', pair, { kind: 'sizes', wheels: pair, calculated }));
    }
    const meet = Math.min(first.level + first.thickness, second.level + second.thickness);
    const apart = Math.max(first.level, second.level) - meet;
    if (apart >= 0) {
      const cause = { kind: 'apartInHeight', wheels: pair, apart } as const;
      found.push({ ...depthFinding('depth', pair, cause), gap: apart });
    }
    return found;
  });
}

function depthFinding(kind: 'size' | 'depth', parts: readonly [WheelId, WheelId], cause: FindingCause): Finding {
  return { key: `${kind} ${parts.join(' ')}`, kind, severity: 'stops', parts, cause };
}
