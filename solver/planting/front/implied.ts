/** What holds without a rule of its own, behind network rules. */
import type { ImpliedRule } from '../disagreement.ts';
import type { PlacementIndex } from './placementIndex.ts';

/** Each once, in the order of the network rules. */
export function impliedBy(index: PlacementIndex, networkRules: readonly number[]): readonly ImpliedRule[] {
  const found = networkRules.flatMap((rule): ImpliedRule[] => {
    const source = index.ground.sources[rule];
    if (source?.kind === 'pipe') return [{ kind: 'pipe', point: source.arbor }];
    if (source?.kind === 'slide') return [{ kind: 'slide', point: source.post }];
    return source?.kind === 'drilled' ? [{ kind: 'drilled', point: source.point }] : [];
  });
  const isFirst = ({ kind, point }: ImpliedRule, k: number): boolean =>
    found.findIndex((each) => each.kind === kind && each.point === point) === k;
  return found.filter(isFirst);
}
