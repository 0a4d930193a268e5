/**
 * Depths as tooth conditions: what the angles of two placed wheels must satisfy for their teeth to enter each other.
 *
 * Angles are in turns. A wheel's tooth centre stands at its arbor's angle plus the wheel's own `phase` (0 where none
 * is given). Where the line of centres leaves wheel a at angle t, a tooth of a must meet a space of b, counted along
 * the pitch line:
 *
 *   outside teeth:  Na (A - t) + Nb (B - t - 1/2)  =  1/2   modulo 1
 *   b a ring:       Na (A - t) - Nb (B - t)        =  1/2   modulo 1   (t from the centre of the ring to that of a)
 *
 * so each depth is one congruence  ca A + cb B = e (mod 1)  with whole coefficients.
 */
import type { Point } from '../../geometry/index.ts';
import type { ArborId, RuleId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';

/** Places by arbor, mm; the places of a placed movement serve as they are. */
export type Places = { readonly get: (id: ArborId) => Point | undefined };

/** A depth as a condition between the angles of the two bodies that turn. */
export interface Mesh {
  readonly rule: RuleId;
  readonly wheels: readonly [Wheel, Wheel];
  /** The bodies that turn: an arbor with all that is fixed to it, named by the innermost. */
  readonly bodies: readonly [ArborId, ArborId];
  /** Whole coefficients of the two angles. */
  readonly coefficients: readonly [number, number];
}

/** The arbor that a fixed pipe turns with, through any number of pipes. */
export function bodyOf(movement: Movement): (id: ArborId) => ArborId {
  const rides = new Map<ArborId, ArborId>();
  for (const arbor of movement.arbors) {
    if (arbor.turns === 'withArbor' && arbor.ridesOn) rides.set(arbor.id, arbor.ridesOn);
  }
  return (id) => {
    let at = id;
    for (let step = 0; step <= rides.size; step++) {
      const next = rides.get(at);
      if (next === undefined) return at;
      at = next;
    }
    return at;
  };
}

/** The depths of a movement that are not left out, between different bodies. */
export function meshesOf(movement: Movement): readonly Mesh[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const body = bodyOf(movement);
  return movement.rules.flatMap((rule): readonly Mesh[] => {
    if (rule.kind !== 'depth' || rule.leaveOut) return [];
    const [a, b] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    if (!a || !b || (a.internal && b.internal)) return [];
    const bodies = [body(a.arbor), body(b.arbor)] as const;
    if (bodies[0] === bodies[1]) return [];
    const sign = (wheel: Wheel): 1 | -1 => (wheel.internal ? -1 : 1);
    return [{ rule: rule.id, wheels: [a, b], bodies, coefficients: [sign(a) * a.teeth, sign(b) * b.teeth] }];
  });
}

/** The wheel's own phase, turns. */
export const phaseTurns = (wheel: Wheel): number => (wheel.phase ?? 0) / 360;

/** Angle of the line of centres as each wheel sees it, turns: towards the place where the teeth meet. */
export function lineAngles(mesh: Mesh, places: Places): readonly [number, number] | undefined {
  const [a, b] = mesh.wheels;
  const [pa, pb] = [places.get(a.arbor), places.get(b.arbor)];
  if (!pa || !pb || (pa.x === pb.x && pa.y === pb.y)) return undefined;
  const toB = Math.atan2(pb.y - pa.y, pb.x - pa.x) / (2 * Math.PI);
  if (a.internal) return [toB, toB];
  if (b.internal) return [toB + 0.5, toB + 0.5];
  return [toB, toB + 0.5];
}

/** The right-hand side e of the mesh's congruence, turns; undefined where a place is missing or both are one. */
export function meshTarget(mesh: Mesh, places: Places): number | undefined {
  const lines = lineAngles(mesh, places);
  if (!lines) return undefined;
  const [a, b] = mesh.wheels;
  const [ca, cb] = mesh.coefficients;
  return 0.5 + ca * (lines[0] - phaseTurns(a)) + cb * (lines[1] - phaseTurns(b));
}

/** Distance to the nearest whole number, -1/2 to 1/2. */
export const fromWhole = (value: number): number => value - Math.round(value);
