/**
 * Rules that could be kept by the point under the pointer, each with the places where it would hold.
 *
 * Only what does not move with the dragged point is offered, and nothing that a rule of the movement says already. What
 * is looked for stands with the kinds of rules.
 */

import type { PointId } from '../../solver/movement/ids.ts';
import { subjectOfRule } from '../../solver/movement/index.ts';
import type { Rule } from '../../solver/movement/schema.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { RULE_KINDS_ON_BENCH } from '../ruleKinds/ruleKinds.ts';
import { forSame } from '../state/derive/forSame.ts';
import type { SnapCandidate } from './snap.ts';
import type { SnapQuestion } from './snapQuestion.ts';
import { snapScene } from './snapScene.ts';

/** Everything that could be kept near the target; `chooseSnap` takes from it. */
export function snapCandidates(question: SnapQuestion): SnapCandidate[] {
  const { placed, point, moving } = question;
  const { finders, said } = snapGround(placed, point, moving);
  return finders
    .flatMap((find) => find(question))
    .filter(({ keeps }) => {
      const saying = sayingOf(keeps);
      return saying === undefined || !said.has(saying);
    });
}

const snapGround = forSame(
  ({ movement }: PlacedMovement, point: PointId, moving: ReadonlySet<PointId>) => [movement, point, moving],
  (placed, point, moving) => {
    const scene = snapScene(placed, point, moving);
    return {
      finders: RULE_KINDS_ON_BENCH.flatMap(({ snaps }) => snaps?.(scene) ?? []),
      /** What rules say already. */
      said: new Set(placed.movement.rules.map(sayingOf)),
    };
  },
);

/** What a rule says of a point, without its number: about one centre a kind says one thing. */
function sayingOf(rule: DraftRule | Rule): string | undefined {
  if (!('point' in rule)) return undefined;
  return 'centre' in rule ? `${rule.kind} ${rule.point} ${rule.centre}` : subjectOfRule(rule);
}

/** The point and all that hangs on it: whatever would move along. */
export function movesWith(placed: PlacedMovement, point: PointId): ReadonlySet<PointId> {
  const found = new Set<PointId>([point]);
  const queue: PointId[] = [point];
  const take = (id: PointId): void => {
    if (found.has(id)) return;
    found.add(id);
    queue.push(id);
  };
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    for (const next of placed.places.get(id)?.hangsOn ?? []) take(next);
    const here = placed.places.get(id);
    for (const arbor of placed.movement.arbors) {
      if (arbor.ridesOn === id) take(arbor.id);
      if (arbor.id === id && arbor.ridesOn && here) take(arbor.ridesOn);
    }
  }
  return found;
}
