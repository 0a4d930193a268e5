/** Cures of turning: another count, a pipe fixed to its arbor, a wheel held still, a depth left out, the sense that was meant. */

import { applyEdit, type Edit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { type TurningProblem, turnMovement } from '../../train/index.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** Counts tried on each side of the one that is there. */
const MOST_TEETH = 4;
const MOST_ANSWERS = 3;
/** Larger movements are not gone through count by count. */
const MOST_WHEELS = 60;

/** The fault of the train that a finding tells of. */
const aboutOf = ({ cause }: Finding): TurningProblem['kind'] | undefined =>
  cause.kind === 'turning' ? cause.problem.kind : undefined;

/** Candidates for a finding of the turning; each is tried out before it is offered. */
export function turningCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  switch (aboutOf(finding)) {
    case 'indication':
      return [...meantSense(movement, finding), ...otherCounts(movement, finding)];
    case 'locked':
      return [...otherCounts(movement, finding), ...depthsLeftOut(movement, finding), ...letTurn(movement, finding)];
    case 'notDriven':
      return fixedPipes(movement, finding);
    case 'open':
      return heldStill(movement, finding);
    default:
      return [];
  }
}

/** One wheel with another count, where that ends the problem: found by the turning alone, so it is quick. */
function otherCounts(movement: Movement, finding: Finding): Candidate[] {
  if (movement.wheels.length > MOST_WHEELS) return [];
  const deltas = Array.from({ length: MOST_TEETH }, (_, i) => [i + 1, -i - 1]).flat();
  const found: { readonly candidate: Candidate; readonly delta: number }[] = [];
  for (const wheel of movement.wheels) {
    for (const delta of deltas) {
      const edit: Edit = { kind: 'change', id: wheel.id, set: { teeth: wheel.teeth + delta } };
      if (!ends(movement, edit, finding)) continue;
      const deed = { kind: 'giveTeeth', wheel: wheel.id, teeth: wheel.teeth + delta, instead: wheel.teeth } as const;
      found.push({ candidate: { deed, edit }, delta: Math.abs(delta) });
    }
  }
  return found
    .sort((a, b) => a.delta - b.delta)
    .slice(0, MOST_ANSWERS)
    .map(({ candidate }) => candidate);
}

/** Does an edit leave the turning with fewer problems, and none of the finding's kind on its parts? */
function ends(movement: Movement, edit: Edit, finding: Finding): boolean {
  const edited = applyEdit(movement, edit);
  if (edited.kind === 'refused') return false;
  const before = turnMovement(movement).problems;
  const after = turnMovement(edited.movement).problems;
  return (
    after.length < before.length &&
    !after.some(
      ({ kind, parts }) => kind === aboutOf(finding) && [...parts].sort().join() === [...finding.parts].sort().join(),
    )
  );
}

/** A hand that turns the other way may be wanted so. */
function meantSense({ indications }: Movement, { parts }: Finding): Candidate[] {
  return indications.flatMap(({ id, arbor, sense }): Candidate[] => {
    if (!parts.includes(arbor) || sense === undefined) return [];
    const other = sense === 'clockwise' ? 'anticlockwise' : 'clockwise';
    return [
      {
        deed: { kind: 'wantSense', indication: id, sense: other },
        edit: { kind: 'change', id, set: { sense: other } },
      },
    ];
  });
}

function depthsLeftOut({ rules, wheels }: Movement, { parts }: Finding): Candidate[] {
  const arborOf = new Map(wheels.map((wheel) => [wheel.id, wheel.arbor]));
  return rules.flatMap((rule): Candidate[] => {
    if (rule.kind !== 'depth' || rule.leaveOut) return [];
    if (!rule.wheels.every((id) => parts.includes(arborOf.get(id) ?? id))) return [];
    return [
      {
        deed: { kind: 'leaveOutDepth', wheels: rule.wheels },
        edit: { kind: 'leaveOut', rules: [rule.id], leaveOut: true },
      },
    ];
  });
}

function letTurn({ arbors }: Movement, { parts }: Finding): Candidate[] {
  return arbors
    .filter(({ id, turns }) => parts.includes(id) && turns === 'never')
    .map(({ id }) => ({ deed: { kind: 'letTurn', arbor: id }, edit: { kind: 'change', id, unset: ['turns'] } }));
}

function fixedPipes({ arbors }: Movement, { parts }: Finding): Candidate[] {
  return arbors.flatMap(({ id, ridesOn, turns }): Candidate[] => {
    if (!parts.includes(id) || ridesOn === undefined || turns === 'withArbor') return [];
    return [
      { deed: { kind: 'fixPipe', arbor: id, on: ridesOn }, edit: { kind: 'change', id, set: { turns: 'withArbor' } } },
    ];
  });
}

function heldStill({ arbors }: Movement, { parts }: Finding): Candidate[] {
  return arbors
    .filter(({ id }) => parts.includes(id))
    .map(({ id }) => ({
      deed: { kind: 'holdStill', arbor: id },
      edit: { kind: 'change', id, set: { turns: 'never' } },
    }));
}
