/** Rules that two, three or more chosen points could keep, with each of them in each of its parts. */
import type { PointId } from '../../solver/movement/ids.ts';
import type { DraftRule } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { ChosenPair, RuleKindOnBench } from '../ruleKinds/kind.ts';
import { RULE_KINDS_ON_BENCH } from '../ruleKinds/ruleKinds.ts';

/** More points than this are not offered to be evened out: the list would say nothing any more. */
const MOST_POINTS = 60;

const fromEach = (draft: (kind: RuleKindOnBench) => readonly (DraftRule | undefined)[]): DraftRule[] =>
  RULE_KINDS_ON_BENCH.flatMap((kind) => draft(kind).filter((each) => each !== undefined));

/** Drafts between two parts at two points: the second about the first, then the first about the second. */
export function pairDrafts(pair: ChosenPair): DraftRule[] {
  const [a, b] = pair.points;
  return [
    ...fromEach(({ between }) => between?.(pair) ?? []),
    ...fromEach(({ about }) => [about?.(b, a)]),
    ...fromEach(({ about }) => [about?.(a, b)]),
    ...fromEach(({ beside }) => beside?.(pair) ?? []),
  ];
}

/** Drafts among three points or more; the point chosen first is tried first as the centre. */
export function draftsAmong(placed: PlacedMovement, points: readonly PointId[]): DraftRule[] {
  if (points.length < 3 || points.length > MOST_POINTS) return [];
  const centres = points.map((centre) => ({ centre, others: points.filter((point) => point !== centre) }));
  const three = centres.flatMap(({ centre, others: [first, second, third] }) =>
    first && second && !third ? fromEach(({ ofThree }) => [ofThree?.(centre, first, second)]) : [],
  );
  const many = centres.flatMap(({ centre, others }) =>
    fromEach(({ aboutMany }) => [aboutMany?.(placed, centre, others)]),
  );
  return [...three, ...many];
}
