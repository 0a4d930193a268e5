/** Changes to a wheel that cure a gap: another level, a thinner body, a smaller tip. */

import type { Edit } from '../../movement/index.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { TOUCH } from '../../tolerances.ts';
import { type Finding, shortInPlan } from '../findings/finding.ts';
import type { Solid } from '../solids/solid.ts';
import { solidsOf } from '../solids/solids.ts';
import type { Candidate } from './candidate.ts';
import type { CureDeed } from './deed.ts';
import { heightOwedFor } from './heightOwed.ts';

/** A wheel may lose this much of its thickness, or of its addendum, before the remedy does more harm than good: habit of the trade. */
const MOST_THINNED = 0.3;
const MOST_TOPPED = 0.25;

/** The wheel of a finding with the bodies that it must clear, and the gap in height that it owes them with all shake. */
interface Concern {
  readonly wheel: Wheel;
  readonly others: readonly Solid[];
  readonly heightGap: number;
}

function concernsOf(placed: PlacedMovement, finding: Finding): Concern[] {
  const solids = solidsOf(placed);
  const owed = heightOwedFor(placed, solids);
  return placed.movement.wheels
    .filter((wheel) => finding.parts.includes(wheel.id))
    .map((wheel) => {
      const own = solids.filter((solid) => solid.part === wheel.id);
      const others = solids.filter((solid) => solid.part !== wheel.id && finding.parts.includes(solid.part));
      return {
        wheel,
        others,
        heightGap: Math.max(0, ...own.flatMap((solid) => others.map((each) => owed(solid, each)))),
      };
    });
}

function changed(wheel: Wheel, set: Partial<Wheel>, deed: CureDeed): Candidate {
  return { deed, edit: { kind: 'change', id: wheel.id, set } };
}

/** A wheel at another level takes its hub along. */
function movedBy(wheel: Wheel, by: number): Edit {
  const { level, hub } = wheel;
  const set = { level: level + by, ...(hub ? { hub: { ...hub, from: hub.from + by, to: hub.to + by } } : {}) };
  return { kind: 'change', id: wheel.id, set };
}

/** A wheel and all that it meshes with, and they with others: they share their height. */
function meshingWith(wheel: Wheel, { wheels, rules }: Movement): Wheel[] {
  const found = new Set([wheel.id]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const rule of rules) {
      if (rule.kind !== 'depth' || rule.leaveOut || !rule.wheels.some((id) => found.has(id))) continue;
      for (const id of rule.wheels) found.add(id);
    }
  }
  return wheels.filter(({ id }) => found.has(id));
}

/** The wheel so far up (or down, where negative); what it meshes with goes along. */
export function levelShift(movement: Movement, wheel: Wheel, by: number): Candidate {
  const together = meshingWith(wheel, movement);
  const wheels = [wheel.id, ...together.map(({ id }) => id).filter((id) => id !== wheel.id)];
  return {
    deed: { kind: 'moveWheels', wheels, by },
    edit: { kind: 'several', edits: together.map((each) => movedBy(each, by)) },
  };
}

/** Just above and just below what the wheel fouls, the nearer first. */
export function levelCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return concernsOf(placed, finding).flatMap(({ wheel, others, heightGap }) => {
    if (others.length === 0) return [];
    const gap = heightGap + TOUCH;
    const above = Math.max(...others.map((solid) => solid.heights.to)) + gap;
    const below = Math.min(...others.map((solid) => solid.heights.from)) - gap - wheel.thickness;
    return [above, below]
      .map((level) => Math.round(level * 1000) / 1000 + (level > wheel.level ? 0.001 : -0.001) - wheel.level)
      .sort((a, b) => Math.abs(a) - Math.abs(b))
      .map((by) => levelShift(placed.movement, wheel, by));
  });
}

/** Take off the face that is too near. */
export function thicknessCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return concernsOf(placed, finding).flatMap(({ wheel, others, heightGap }) =>
    others.flatMap((other): Candidate[] => {
      const gap = heightGap + TOUCH;
      const top = wheel.level + wheel.thickness;
      const otherIsAbove = other.heights.from + other.heights.to > wheel.level + top;
      const off = otherIsAbove ? top - (other.heights.from - gap) : other.heights.to + gap - wheel.level;
      if (off <= 0 || off > wheel.thickness * MOST_THINNED) return [];
      const level = otherIsAbove ? wheel.level : wheel.level + off;
      const deed = { kind: 'thin', wheel: wheel.id, by: off, from: otherIsAbove ? 'above' : 'below' } as const;
      return [changed(wheel, { level, thickness: wheel.thickness - off }, deed)];
    }),
  );
}

/** Top the teeth down, as far as a quarter of the addendum. */
export function tipCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  const short = shortInPlan(finding);
  return concernsOf(placed, finding).flatMap(({ wheel }): Candidate[] => {
    if (wheel.internal) return [];
    const size = sizeOfWheel(wheel, placed.movement);
    if (short <= 0 || short > size.addendum * MOST_TOPPED) return [];
    const tipDiameter = 2 * (size.tipRadius - short - TOUCH);
    return [changed(wheel, { tipDiameter }, { kind: 'top', wheel: wheel.id, tipDiameter })];
  });
}
