/** Cures of depths that cannot be right and of rules that disagree: another value, the size or the height of the mate. */
import type { RuleOf, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type Finding, keyOfRules } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';
import type { CureDeed } from './deed.ts';

/** The value of one rule that ends a disagreement, as planting found it. */
export function ruleCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'planting') return [];
  return placed.disagreements.flatMap(({ rules, cure }): Candidate[] => {
    const rule = cure && placed.movement.rules.find(({ id }) => id === cure.rule);
    if (!cure || !rule || keyOfRules(rules) !== finding.key) return [];
    const deed: CureDeed =
      rule.kind === 'bearing'
        ? { kind: 'setAngle', rule: rule.id, angle: (cure.value * Math.PI) / 180 }
        : { kind: 'setLength', rule: rule.id, length: cure.value };
    return [{ deed, edit: { kind: 'setValue', rule: cure.rule, value: cure.value } }];
  });
}

/** One wheel of a pair gets the size of the other, in both ways. */
export function sizeCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'size') return [];
  const [a, b] = pairOf(movement.wheels, finding);
  if (!a || !b) return [];
  const give = (to: Wheel, from: Wheel): Candidate => ({
    deed: { kind: 'cutInSizeOf', wheel: to.id, like: from.id },
    edit: { kind: 'change', id: to.id, set: { size: from.size } },
  });
  return [give(a, b), give(b, a)];
}

/** One wheel of a pair that does not meet in height goes to the middle of the other, in both ways. */
export function meetingCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'depth') return [];
  const isDepth = movement.rules.some(
    (rule): rule is RuleOf<'depth'> => rule.kind === 'depth' && rule.wheels.every((id) => finding.parts.includes(id)),
  );
  const [a, b] = pairOf(movement.wheels, finding);
  if (!a || !b || !isDepth || !apartInHeight(a, b)) return [];
  const bring = (wheel: Wheel, to: Wheel): Candidate => {
    const by = to.level + to.thickness / 2 - wheel.level - wheel.thickness / 2;
    const { hub } = wheel;
    const moved = hub ? { hub: { ...hub, from: hub.from + by, to: hub.to + by } } : {};
    return {
      deed: { kind: 'moveToMeet', wheel: wheel.id, mate: to.id, by },
      edit: { kind: 'change', id: wheel.id, set: { level: wheel.level + by, ...moved } },
    };
  };
  return [bring(a, b), bring(b, a)];
}

const apartInHeight = (a: Wheel, b: Wheel): boolean =>
  Math.min(a.level + a.thickness, b.level + b.thickness) <= Math.max(a.level, b.level);

/** An opening across its plate's edge may have been meant as a notch. */
export function notchCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'case') return [];
  const opening = movement.openings.find(({ id, kind }) => id === finding.parts[0] && kind !== 'notch');
  if (!opening) return [];
  return [
    {
      deed: { kind: 'makeNotch', opening: opening.id },
      edit: { kind: 'change', id: opening.id, set: { kind: 'notch' } },
    },
  ];
}

function pairOf(wheels: readonly Wheel[], { parts }: Finding): readonly (Wheel | undefined)[] {
  return parts.slice(0, 2).map((part) => wheels.find(({ id }) => id === part));
}
