/** A depth by its two arbors and their counts, as tables name it: "Third 60 : 8 Escape". */
import type { RuleId } from '../../movement/ids.ts';
import type { Speaker } from '../speaker.ts';

/** The pair of a depth with its tooth counts; the rule's own words where it is no depth or a wheel is gone. */
export function pairSays(ruleId: RuleId, { movement, name, rule }: Speaker): string {
  const depth = movement.rules.find(({ id }) => id === ruleId);
  if (depth?.kind !== 'depth') return rule(ruleId);
  const [a, b] = depth.wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id));
  return a && b ? `${name(a.arbor)} ${a.teeth} : ${b.teeth} ${name(b.arbor)}` : rule(ruleId);
}
