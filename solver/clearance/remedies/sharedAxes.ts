/** Cures of two depths between the same axes whose sums of teeth differ: one of them cut in the module that fits the other. */

import type { WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { moduleOf } from '../../teeth/index.ts';
import { turnMovement } from '../../train/index.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** A module has its distance exactly only to this many figures, mm: a tooth of it is right to a nanometre. */
const FIGURES = 9;

/**
 * The second module, for the depth that does not fit, or for the first one where there are only two.
 * Wheels that mesh with others as well are found out when the change is tried: those depths then have two modules.
 */
export function sharedAxisCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  const { cause } = finding;
  if (cause.kind !== 'turning' || cause.problem.kind !== 'sharedAxis') return [];
  const shared = turnMovement(movement).sharedAxes.find(
    ({ fits, depths }) => !fits && depths.every(({ wheels }) => wheels.every((id) => finding.parts.includes(id))),
  );
  const [first, ...others] = shared?.depths ?? [];
  const wrong = others.filter(({ module, moduleThatFits }) => module !== moduleThatFits);
  const [second] = wrong;
  // Two misfits want two changes: each alone would leave the finding as it is.
  if (!first || !second || wrong.length > 1) return [];
  const other =
    others.length === 1 ? recut(movement, first.wheels, (first.module * second.distance) / first.distance) : [];
  return [...recut(movement, second.wheels, second.moduleThatFits), ...other];
}

function recut({ wheels }: Movement, pair: readonly [WheelId, WheelId], wanted: number): Candidate[] {
  const module = Number(wanted.toPrecision(FIGURES));
  const both: readonly Wheel[] = wheels.filter(({ id }) => pair.includes(id));
  const [a, b] = both;
  if (!a || !b || !Number.isFinite(module) || module <= 0) return [];
  const deed = { kind: 'recut', wheels: [a.id, b.id], module, instead: moduleOf(a.size) } as const;
  const edits = both.map(({ id }) => ({ kind: 'change', id, set: { size: { module } } }) as const);
  return [{ deed, edit: { kind: 'several', edits } }];
}
