/** Readings of depths brought together: what each pair measured, which readings are odd, and the edits that take them over. */

import type { RuleId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Movement, Reading, RuleOf } from '../../movement/schema.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import { type Combined, type CombinedReadings, combineReadings } from './combine.ts';
import type { ReadingDoubt } from './doubt.ts';
import { trueLength } from './trueLength.ts';

/** All readings of one depth together, mm. */
export interface DepthReadings {
  readonly rule: RuleId;
  readonly calculated: number;
  readonly measured?: Combined;
  /** What is asked about readings that cannot be or are doubtful; they are kept in the movement but not used. */
  readonly doubts: readonly ReadingDoubt[];
}

/** For every depth with readings that are not set aside: the combined value against the calculated one. */
export function depthReadings(movement: Movement): readonly DepthReadings[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  return movement.rules.flatMap((rule): DepthReadings[] => {
    if (rule.kind !== 'depth') return [];
    const [a, b] = rule.wheels.map((id) => wheels.get(id));
    const readings = a && b ? movement.readings.filter((reading) => isOfPair(reading, rule, [a.arbor, b.arbor])) : [];
    if (!a || !b || readings.length === 0) return [];
    const calculated = calculatedDepth(a, b, movement).distance;
    const doubts: ReadingDoubt[] = [];
    const good: CombinedReadings[] = [];
    for (const reading of readings) {
      const found = trueLength(reading, calculated);
      if (found.kind === 'length') good.push({ ...found, id: reading.id, stands: reading.stands !== undefined });
      else doubts.push(found.doubt);
    }
    const measured = combineReadings(good);
    return [{ rule: rule.id, calculated, doubts, ...(measured ? { measured } : {}) }];
  });
}

/** A depth reading names the two wheels, or their two arbors, in either order. */
function isOfPair(reading: Reading, rule: RuleOf<'depth'>, arbors: readonly [string, string]): boolean {
  if (reading.setAside || (reading.kind !== 'depth' && reading.kind !== 'distance') || reading.of.length !== 2) {
    return false;
  }
  const names = new Set<string>(reading.of);
  return rule.wheels.every((id) => names.has(id)) || arbors.every((id) => names.has(id));
}

/** The edits by which measured depths replace calculated ones: one for each depth that has a usable reading. */
export function editsOfDepthReadings(movement: Movement): readonly Edit[] {
  return depthReadings(movement).flatMap(({ rule, measured }): Edit[] => {
    if (!measured) return [];
    const [only] = measured.used;
    const reading = measured.used.length === 1 && only !== undefined ? { reading: only } : {};
    return [{ kind: 'setMeasured', rule, value: measured.length, plusMinus: measured.plusMinus, ...reading }];
  });
}
