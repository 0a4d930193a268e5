/** Every depth with its values side by side: calculated, measured, held and made. */

import { type DepthReadings, depthReadings } from '../../solver/made/index.ts';
import type { WheelId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { RuleOf } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { calculatedDepth } from '../../solver/teeth/index.ts';
import type { Speaker } from '../../solver/words/index.ts';
import { pairSays } from '../../solver/words/shop/index.ts';

/** A depth with its distances side by side. */
export interface DepthRow {
  readonly rule: RuleOf<'depth'>;
  readonly label: string;
  /** mm */
  readonly calculated: number;
  readonly measured: DepthReadings | undefined;
  /** Distance of the two holes, once both are drilled, mm. */
  readonly made: number | undefined;
  readonly of: readonly [WheelId, WheelId];
}

/** The rows in the order of the file. */
export function depthRows(settled: PlacedMovement, speaker: Speaker): readonly DepthRow[] {
  const { movement, rules } = settled;
  const combined = new Map(depthReadings(movement).map((each) => [each.rule, each]));
  return movement.rules.flatMap((rule): DepthRow[] => {
    if (rule.kind !== 'depth') return [];
    const [a, b] = rule.wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id));
    if (!a || !b) return [];
    return [
      {
        rule,
        label: pairSays(rule.id, speaker),
        // The card of the depth tells the same value.
        calculated: rules.get(rule.id)?.calculated ?? calculatedDepth(a, b, movement).distance,
        measured: combined.get(rule.id),
        made: madeDepth(settled, rule),
        of: [a.id, b.id],
      },
    ];
  });
}

/** Distance of the two holes of a depth, mm, once both are drilled. */
export function madeDepth({ movement, places }: PlacedMovement, rule: RuleOf<'depth'>): number | undefined {
  const arbors = rule.wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id)?.arbor);
  const isMade = arbors.every((id) => movement.made.some(({ point, at }) => point === id && at));
  const [p, q] = arbors.map((id) => (id === undefined ? undefined : places.get(id)));
  return isMade && p && q ? Math.hypot(p.x - q.x, p.y - q.y) : undefined;
}

/** Is there a measured value that the depth does not use yet? */
export const hasUnused = ({ rule, measured }: DepthRow): boolean =>
  measured?.measured !== undefined && (rule.use !== 'measured' || rule.measured?.value !== measured.measured.length);

/** The edit by which a depth uses what was measured of it. */
export function editOfDepthRow({ rule, measured }: DepthRow): Edit | undefined {
  const found = measured?.measured;
  if (!found) return undefined;
  const [only] = found.used;
  const reading = found.used.length === 1 && only !== undefined ? { reading: only } : {};
  return { kind: 'setMeasured', rule: rule.id, value: found.length, plusMinus: found.plusMinus, ...reading };
}
