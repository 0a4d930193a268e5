/** Cures of a depth that binds, bottoms or loses contact under shake: another distance, or bearings with less play. */

import type { Arbor, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { calculatedDepth, type DepthWindow, faultsOfPair } from '../../teeth/index.ts';
import { CURE_STEP, GAUGE } from '../../tolerances.ts';
import { depthsUnderShake } from '../depths/depthsUnderShake.ts';
import { depthVerdicts } from '../depths/depthVerdicts.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** Play of a close running fit, mm on the diameter: common practice for a clock's pivots. */
const CLOSE_FIT = 0.02;

/** Candidates for a finding of a depth under shake. */
export function depthCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.cause.kind !== 'underShake') return [];
  const depth = depthsUnderShake(placed).find(({ wheels }) => wheels.every(({ id }) => finding.parts.includes(id)));
  if (depth?.window.kind !== 'window') return [];
  const { rule, wheels, window } = depth;
  const [a, b] = wheels;
  const pair = [a.id, b.id] as const;
  const calculated = calculatedDepth(a, b, placed.movement);
  // The verdict's own distance first: command line, table and cure then say one number.
  const good = depthVerdicts(placed).get(rule.id)?.goodDistance;
  const isAnother = (distance: number): boolean => good === undefined || Math.abs(distance - good) >= CURE_STEP;
  const distances = [
    ...new Set(
      [
        ...(good === undefined ? [] : [good]),
        ...withMargins(depth.distance, window).filter(isAnother),
        calculated.distance,
      ].map((value) => Math.round(value * 1000) / 1000),
    ),
  ];
  return [
    ...(rule.use === 'calculated'
      ? []
      : [
          {
            deed: { kind: 'useCalculated', wheels: pair, distance: calculated.distance } as const,
            edit: { kind: 'useDepth', rule: rule.id, use: 'calculated' } as const,
          },
        ]),
    ...distances.map((distance) => ({
      deed: { kind: 'holdDepth', wheels: pair, distance } as const,
      edit: { kind: 'setValue', rule: rule.id, value: distance } as const,
    })),
    ...freeingForms(placed, a, b),
    ...closerBearings(placed, finding),
  ];
}

/** Two full wheel forms: one cut as a pinion, or both with a lower addendum. */
function freeingForms({ movement }: PlacedMovement, a: Wheel, b: Wheel): Candidate[] {
  const { fullForms } = faultsOfPair(a, b, movement);
  if (!fullForms) return [];
  const { pinion, addendum } = fullForms;
  const lower = (wheel: Wheel, factor: number) =>
    ({ kind: 'change', id: wheel.id, set: { addendum: factor }, unset: ['tipDiameter'] }) as const;
  return [
    ...(pinion === undefined
      ? []
      : [
          {
            deed: { kind: 'cutAsPinion', wheel: pinion } as const,
            edit: { kind: 'change', id: pinion, set: { cutAs: 'pinion' } } as const,
          },
        ]),
    ...(addendum === undefined
      ? []
      : [
          {
            deed: { kind: 'lowerAddendum', wheels: [a.id, b.id], addendum } as const,
            edit: { kind: 'several', edits: [lower(a, addendum), lower(b, addendum)] } as const,
          },
        ]),
  ];
}

/**
 * Distances that keep more of the window, nearest first: as far inside it as shake and run-out ask for, and its middle.
 */
function withMargins(distance: number, { deepest, shallowest, turn }: DepthWindow): readonly number[] {
  const [least, most] = [Math.min(deepest, shallowest), Math.max(deepest, shallowest)];
  const middle = (least + most) / 2;
  const margin = Math.min(turn.spread + 2 * GAUGE, (most - least) / 2);
  const inside = Math.min(Math.max(distance, least + margin), most - margin);
  return [inside, middle].sort((a, b) => Math.abs(a - distance) - Math.abs(b - distance));
}

/** The bearings of both arbors bushed to a close fit. */
function closerBearings({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  const ids = movement.wheels.filter(({ id }) => finding.parts.includes(id)).map(({ arbor }) => arbor);
  const loose = (arbor: Arbor): boolean => arbor.bearings.some(({ bore, pivot }) => bore - pivot > CLOSE_FIT);
  const arbors = movement.arbors.filter((arbor) => ids.includes(arbor.id) && loose(arbor));
  if (arbors.length === 0) return [];
  const edits = arbors.map((arbor) => ({
    kind: 'change' as const,
    id: arbor.id,
    set: { bearings: arbor.bearings.map((each) => ({ ...each, bore: Math.min(each.bore, each.pivot + CLOSE_FIT) })) },
  }));
  const deed = { kind: 'bush', arbors: arbors.map(({ id }) => id), play: CLOSE_FIT } as const;
  return [{ deed, edit: { kind: 'several', edits } }];
}
