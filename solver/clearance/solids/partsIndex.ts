/** The parts of a movement by what they stand on, gathered once for all solids. */

import type { ArborId } from '../../movement/ids.ts';
import { type Arbor, carriersOf, type Movement, type Plate, type Wheel } from '../../movement/schema.ts';

/** Answers what stands on what. */
export interface PartsIndex {
  readonly movement: Movement;
  readonly arbors: ReadonlyMap<ArborId, Arbor>;
  readonly wheelsOn: ReadonlyMap<ArborId, readonly Wheel[]>;
  /** The pipes that ride on each arbor. */
  readonly pipesOn: ReadonlyMap<ArborId, readonly Arbor[]>;
  readonly plates: ReadonlyMap<string, Plate>;
  /** For each carried arbor the arm that carries it. */
  readonly armOf: ReadonlyMap<ArborId, ArborId>;
}

const known = new WeakMap<Movement, PartsIndex>();

/** The index of a movement; movements are immutable, so each is gone through once. */
export function solidPartsOf(movement: Movement): PartsIndex {
  const old = known.get(movement);
  if (old) return old;
  const wheelsOn = new Map<ArborId, Wheel[]>();
  for (const wheel of movement.wheels) {
    const list = wheelsOn.get(wheel.arbor);
    if (list) list.push(wheel);
    else wheelsOn.set(wheel.arbor, [wheel]);
  }
  const pipesOn = new Map<ArborId, Arbor[]>();
  for (const arbor of movement.arbors) {
    if (arbor.ridesOn === undefined) continue;
    const list = pipesOn.get(arbor.ridesOn);
    if (list) list.push(arbor);
    else pipesOn.set(arbor.ridesOn, [arbor]);
  }
  const armOf = new Map<ArborId, ArborId>();
  for (const coupling of carriersOf(movement)) {
    for (const id of coupling.carries) armOf.set(id, coupling.arm);
  }
  const parts: PartsIndex = {
    movement,
    arbors: new Map(movement.arbors.map((arbor) => [arbor.id, arbor])),
    wheelsOn,
    pipesOn,
    plates: new Map<string, Plate>(movement.plates.map((plate) => [plate.id, plate])),
    armOf,
  };
  known.set(movement, parts);
  return parts;
}

/** Radius of the hole through an arbor and all that is fixed on it: a pipe's bore, or the arbor that it rides on. */
export function innerRadiusOf(arborId: ArborId, { arbors }: PartsIndex): number {
  const arbor = arbors.get(arborId);
  if (arbor?.pipeBore !== undefined) return arbor.pipeBore / 2;
  const inside = arbor?.ridesOn === undefined ? undefined : arbors.get(arbor.ridesOn);
  return inside ? inside.diameter / 2 : 0;
}

/** The arms that carry an arbor round: the nearest first, then what carries that one. A pipe goes with what it rides on. */
export function armsOf(arborId: ArborId, { armOf, arbors }: PartsIndex): readonly ArborId[] {
  const arms: ArborId[] = [];
  let at: ArborId | undefined = arborId;
  // Carriers that carry each other are a finding of the turning; the count keeps them from hanging this.
  for (let step = 0; at !== undefined && step <= 2 * arbors.size; step++) {
    const arm: ArborId | undefined = armOf.get(at);
    if (arm !== undefined && !arms.includes(arm)) arms.push(arm);
    at = arm ?? arbors.get(at)?.ridesOn;
  }
  return arms;
}

/** The arbor that an arbor is fixed to, through pipes that turn with what they ride on. */
export function solidBodyOf(id: ArborId, { arbors }: PartsIndex): ArborId {
  let at = id;
  for (let step = 0; step < arbors.size; step++) {
    const arbor = arbors.get(at);
    if (arbor?.turns !== 'withArbor' || arbor.ridesOn === undefined) break;
    at = arbor.ridesOn;
  }
  return at;
}
