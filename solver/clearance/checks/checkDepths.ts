/** Depths that cannot be right whatever the distance: teeth of different size, or wheels that do not meet in height. */

import type { Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import type { Finding } from '../findings/finding.ts';
import { lengthWords } from '../findings/lengthWords.ts';
import { wheelLabel } from '../solids/wheelSolids.ts';

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
    const calculated = calculatedDepth(first, second, movement);
    if (calculated.kind === 'mismatch') {
      found.push(depthFinding('size', first, second, calculated.says));
    }
    const meet = Math.min(first.level + first.thickness, second.level + second.thickness);
    const apart = Math.max(first.level, second.level) - meet;
    if (apart >= 0) {
      const says = `${wheelLabel(first)} and ${wheelLabel(second)} do not meet in height: ${lengthWords(apart)} apart.`;
      found.push({ ...depthFinding('depth', first, second, says), gap: apart });
    }
    return found;
  });
}

function depthFinding(kind: 'size' | 'depth', first: Wheel, second: Wheel, says: string): Finding {
  return {
    key: `${kind} ${first.id} ${second.id}`,
    kind,
    severity: 'stops',
    parts: [first.id, second.id],
    says,
  };
}
