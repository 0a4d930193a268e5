/** Cures of a depth that binds, bottoms or loses contact under shake: another distance, or bearings with less play. */

import type { Arbor } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import { depthsUnderShake } from '../checks/checkDepthsUnderShake.ts';
import type { Finding } from '../findings/finding.ts';
import { lengthWords } from '../findings/lengthWords.ts';
import type { Candidate } from './candidate.ts';

/** Play of a close running fit, mm on the diameter: common practice for a clock's pivots. */
const CLOSE_FIT = 0.02;

/** Candidates for a finding of a depth under shake. */
export function depthCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  if (!finding.key.startsWith('depth shake ')) return [];
  const depth = depthsUnderShake(placed).find(({ wheels }) => wheels.every(({ id }) => finding.parts.includes(id)));
  if (depth?.window.kind !== 'window') return [];
  const { rule, wheels, window } = depth;
  const [a, b] = wheels;
  const pair = `depth of ${a.name ?? a.id} and ${b.name ?? b.id}`;
  const calculated = calculatedDepth(a, b, placed.movement);
  const middle = (window.deepest + window.shallowest) / 2;
  const distances = [...new Set([calculated.distance, middle].map((value) => Math.round(value * 1000) / 1000))];
  return [
    ...(rule.use === 'calculated'
      ? []
      : [
          {
            does: `Use the calculated ${pair}, ${lengthWords(calculated.distance)}`,
            edit: { kind: 'useDepth', rule: rule.id, use: 'calculated' } as const,
          },
        ]),
    ...distances.map((distance) => ({
      does: `Hold the ${pair} at ${distance.toFixed(3)} mm`,
      edit: { kind: 'setValue', rule: rule.id, value: distance } as const,
    })),
    ...closerBearings(placed, finding),
  ];
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
  const names = arbors.map(({ id, name }) => name ?? id).join(' and ');
  return [{ does: `Bush ${names} to ${lengthWords(CLOSE_FIT)} of play`, edit: { kind: 'several', edits } }];
}
