/** Which wheels a wheel meshes with, from the depth rules: asked for often, so worked out once per document. */

import type { WheelId } from '../../movement/ids.ts';
import { isOfPins, type Movement, type Wheel } from '../../movement/schema.ts';

/** A wheel in mesh with the one that was asked about. */
export interface Partner {
  readonly wheel: Wheel;
  /** Does the wheel that asked drive this partner? */
  readonly driven: boolean;
}

const wheelMaps = new WeakMap<Movement['wheels'], ReadonlyMap<WheelId, Wheel>>();
const partnerMaps = new WeakMap<Movement['rules'], WeakMap<Movement['wheels'], ReadonlyMap<WheelId, Partner[]>>>();

/** The wheels of a movement by id. */
export function wheelsById(movement: Movement): ReadonlyMap<WheelId, Wheel> {
  let map = wheelMaps.get(movement.wheels);
  if (!map) {
    map = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
    wheelMaps.set(movement.wheels, map);
  }
  return map;
}

function buildPartners(movement: Movement): ReadonlyMap<WheelId, Partner[]> {
  const byId = wheelsById(movement);
  const partners = new Map<WheelId, Partner[]>();
  const add = (id: WheelId, partner: Partner) => {
    const list = partners.get(id);
    if (list) list.push(partner);
    else partners.set(id, [partner]);
  };
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth') continue;
    const [a, b] = [byId.get(rule.wheels[0]), byId.get(rule.wheels[1])];
    if (!a || !b) continue;
    add(a.id, { wheel: b, driven: true });
    add(b.id, { wheel: a, driven: false });
  }
  return partners;
}

/** The wheels that mesh with `wheel`, in the order of the depth rules (rules left out count: they still size the teeth). */
export function partnersOf(wheel: Wheel, movement: Movement): readonly Partner[] {
  let byWheels = partnerMaps.get(movement.rules);
  if (!byWheels) {
    byWheels = new WeakMap();
    partnerMaps.set(movement.rules, byWheels);
  }
  let map = byWheels.get(movement.wheels);
  if (!map) {
    map = buildPartners(movement);
    byWheels.set(movement.wheels, map);
  }
  return map.get(wheel.id) ?? [];
}

/** Does a wheel mesh with nothing but one mate, so that its size can change with that mate's alone? */
export const meshesOnlyWith = (wheel: Wheel, mate: Wheel, movement: Movement): boolean =>
  partnersOf(wheel, movement).every((partner) => partner.wheel.id === mate.id);

/** Most leaves that still make a pinion (trade habit). */
export const MOST_LEAVES = 16;

/**
 * Is the wheel a pinion: as it is said to be cut, else by 16 teeth or fewer where it is not the larger of its pair? Of two
 * equal counts the driver is the wheel. Rings are wheels, pins are pinions.
 */
export function isPinion(wheel: Wheel, movement: Movement): boolean {
  if (isOfPins(wheel)) return true;
  if (wheel.internal) return false;
  if (wheel.cutAs !== undefined) return wheel.cutAs === 'pinion';
  if (wheel.teeth > MOST_LEAVES) return false;
  return !partnersOf(wheel, movement).some(
    ({ wheel: mate, driven }) =>
      !isOfPins(mate) && (mate.teeth < wheel.teeth || (mate.teeth === wheel.teeth && driven)),
  );
}

/** Leaves assumed for a mate that neither the wheel nor a depth names: common practice for a clock's pinions. */
export const USUAL_LEAVES = 8;
/** Teeth assumed for the wheel that drives a pinion that stands alone: ratio 8, common practice. */
const USUAL_RATIO = 8;

/** Teeth of the mate that the form is drawn for: as stated, else of the first depth partner, else the usual count. */
export function mateTeethOf(wheel: Wheel, movement: Movement): number {
  if (wheel.mateTeeth !== undefined) return wheel.mateTeeth;
  const mate = partnersOf(wheel, movement)[0]?.wheel;
  if (mate) return mate.teeth;
  return isPinion(wheel, movement) ? wheel.teeth * USUAL_RATIO : USUAL_LEAVES;
}
