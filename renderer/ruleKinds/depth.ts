/** Depths on the bench: wheels at one height whose sizes fit. */
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Movement, Wheel } from '../../solver/movement/schema.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import { calculatedDepth } from '../../solver/teeth/index.ts';
import type { SnapCandidate } from '../gestures/snap.ts';
import { isNear, type SnapQuestion } from '../gestures/snapQuestion.ts';
import { type SnapScene, wheelsOn } from '../gestures/snapScene.ts';
import { type ChosenPair, type RuleKindOnBench, WEIGHT } from './kind.ts';

/** Taken before all else. */
export const depthOnBench: RuleKindOnBench = {
  between: depthsOfPair,
  snaps: (scene) => {
    const possible = possibleDepths(scene);
    return (question) => depthsNear(question, possible);
  },
};

const levelsMeet = (a: Wheel, b: Wheel): boolean => a.level < b.level + b.thickness && b.level < a.level + a.thickness;

function depthsOfPair({ placed: { movement }, parts, points }: ChosenPair): readonly DraftRule[] {
  const onArbor = (part: PartId, point: PointId) =>
    movement.wheels.filter(({ id, arbor }) => (id === part || part === point) && arbor === point);
  return onArbor(parts[0], points[0]).flatMap((one) =>
    onArbor(parts[1], points[1]).flatMap((other): DraftRule[] => {
      if (!levelsMeet(one, other) || calculatedDepth(one, other, movement).kind !== 'depth') return [];
      return [{ kind: 'depth', wheels: [one.id, other.id], use: 'calculated', allowance: 0 }];
    }),
  );
}

/** Two wheels that could mesh, one of them dragged. */
interface PossibleDepth {
  readonly drives: Wheel;
  readonly driven: Wheel;
  readonly other: Wheel;
  readonly distance: number;
}

function possibleDepths({ placed: { movement }, axis, moving }: SnapScene): readonly PossibleDepth[] {
  const found: PossibleDepth[] = [];
  const joined = new Set(movement.rules.flatMap((rule) => (rule.kind === 'depth' ? [rule.wheels.join(' ')] : [])));
  for (const own of wheelsOn(movement, axis)) {
    for (const other of movement.wheels) {
      if (moving.has(other.arbor) || !levelsMeet(own, other)) continue;
      if (joined.has(`${own.id} ${other.id}`) || joined.has(`${other.id} ${own.id}`)) continue;
      const [drives, driven] = inOrderOfDrive(movement, own, other);
      const depth = calculatedDepth(drives, driven, movement);
      if (depth.kind === 'depth') found.push({ drives, driven, other, distance: depth.distance });
    }
  }
  return found;
}

function depthsNear(question: SnapQuestion, possible: readonly PossibleDepth[]): SnapCandidate[] {
  const { placed, target, reach } = question;
  const found: SnapCandidate[] = [];
  for (const { drives, driven, other, distance } of possible) {
    const centre = placed.places.get(other.arbor);
    if (!centre || !isNear(centre, distance, target, 2 * reach)) continue;
    found.push({
      key: `depth ${drives.id} ${driven.id}`,
      locus: { kind: 'circle', centre, radius: distance },
      keeps: { kind: 'depth', wheels: [drives.id, driven.id], use: 'calculated', allowance: 0 },
      says: `depth ${question.lengthSays(distance)} with ${question.nameOf(other.id)}`,
      weight: WEIGHT.depth,
    });
  }
  return found;
}

/** The wheel on the driving arbor drives; otherwise the one with more teeth, as in a going train. */
function inOrderOfDrive(movement: Movement, a: Wheel, b: Wheel): readonly [Wheel, Wheel] {
  if (movement.drive?.arbor === a.arbor) return [a, b];
  if (movement.drive?.arbor === b.arbor) return [b, a];
  return a.teeth >= b.teeth ? [a, b] : [b, a];
}
