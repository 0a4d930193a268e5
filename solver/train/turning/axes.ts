/** Which arbors share an axis, and which arm carries each axis round. */
import type { ArborId } from '../../movement/ids.ts';
import { joinedByRule } from '../../movement/index.ts';
import { carriersOf, type Movement } from '../../movement/schema.ts';
import type { TurningProblem } from './turning.ts';
import type { TurningFault } from './turningFaults.ts';

/** Answers about axes: who shares one, and who is carried round. */
export interface Axes {
  /** The arbor that stands for the whole axis. */
  readonly axisOf: (arbor: ArborId) => ArborId;
  readonly sameAxis: (a: ArborId, b: ArborId) => boolean;
  /** The arm that carries the arbor's axis; undefined where it stands on the plates. */
  readonly armOf: (arbor: ArborId) => ArborId | undefined;
  readonly problems: readonly TurningProblem[];
}

/** Representatives of arbors joined by pipes and by rules. */
function axisGroups(movement: Movement): (arbor: ArborId) => ArborId {
  const parent = new Map<string, ArborId>(movement.arbors.map((arbor) => [arbor.id, arbor.id]));
  const top = (id: ArborId): ArborId => {
    let at = id;
    for (let next = parent.get(at); next !== undefined && next !== at; next = parent.get(at)) at = next;
    return at;
  };
  const join = (a: ArborId, b: ArborId): void => {
    if (parent.has(a) && parent.has(b)) parent.set(top(b), top(a));
  };
  for (const arbor of movement.arbors) if (arbor.ridesOn) join(arbor.ridesOn, arbor.id);
  for (const rule of movement.rules) {
    const [a, b] = joinedByRule(rule) ?? [];
    // Posts and marks are not in the map, and `join` passes over them.
    if (a !== undefined && b !== undefined) join(a as ArborId, b as ArborId);
  }
  const found = new Map(movement.arbors.map((arbor) => [arbor.id, top(arbor.id)]));
  return (id) => found.get(id) ?? id;
}

/** Arms whose own axis is carried, in the end, by themselves. */
function armsInCircles(armOfAxis: ReadonlyMap<ArborId, ArborId>, axisOf: Axes['axisOf']): readonly ArborId[] {
  const circling: ArborId[] = [];
  for (const arm of new Set(armOfAxis.values())) {
    const seen = new Set<ArborId>();
    let at: ArborId | undefined = arm;
    while (at !== undefined && !seen.has(axisOf(at))) {
      seen.add(axisOf(at));
      at = armOfAxis.get(axisOf(at));
    }
    if (at !== undefined && axisOf(at) === axisOf(arm)) circling.push(arm);
  }
  return circling;
}

/** Axes and arms of a movement. A carrier that makes no sense is told and left out. */
export function turningAxesOf(movement: Movement): Axes {
  const axisOf = axisGroups(movement);
  const armOfAxis = new Map<ArborId, ArborId>();
  const problems: TurningProblem[] = [];
  const refuse = (parts: readonly ArborId[], why: TurningFault): void => {
    problems.push({ kind: 'carrier', severity: 'stops', parts, why });
  };
  for (const coupling of carriersOf(movement)) {
    for (const carried of coupling.carries) {
      const axis = axisOf(carried);
      const other = armOfAxis.get(axis);
      if (axis === axisOf(coupling.arm)) {
        refuse([coupling.arm, carried], { kind: 'carriesItself', arm: coupling.arm, carried });
      } else if (other !== undefined && other !== coupling.arm) {
        refuse([carried, other, coupling.arm], { kind: 'twoArms', carried, arms: [other, coupling.arm] });
      } else armOfAxis.set(axis, coupling.arm);
    }
  }
  const circling = armsInCircles(armOfAxis, axisOf);
  if (circling.length > 0) {
    refuse(circling, { kind: 'armsInCircle', arms: circling });
    for (const [axis, arm] of armOfAxis) if (circling.includes(arm)) armOfAxis.delete(axis);
  }
  return {
    axisOf,
    sameAxis: (a, b) => axisOf(a) === axisOf(b),
    armOf: (arbor) => armOfAxis.get(axisOf(arbor)),
    problems,
  };
}
