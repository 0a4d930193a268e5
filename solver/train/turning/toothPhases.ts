/**
 * Angles at which the teeth of all placed wheels stand in mesh, and the marks to set them up by.
 *
 * One angle for each body is carried from wheel to wheel along a tree of depths; where a ring of compound wheels
 * needs it, whole teeth are moved along the tree until the ring closes.
 */
import type { ArborId, RuleId, WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { bodyOf, fromWhole, lineAngles, type Mesh, meshesOf, meshTarget, type Places, phaseTurns } from './meshes.ts';
import { FITS_TEETH, farBody, type MeshRing, meshRings, ringFactors, ringSum } from './ringClosure.ts';

/** Which tooth enters between which two when the movement is set up. */
export interface ToothMark {
  readonly rule: RuleId;
  readonly wheels: readonly [WheelId, WheelId];
  /** Tooth of the first wheel that stands nearest the line of centres, counted anticlockwise from 1. */
  readonly tooth: number;
  /** Teeth of the second wheel on either side of it. */
  readonly between: readonly [number, number];
  /** How far the depth is from meshing, teeth: 0 unless a ring misses. */
  readonly missTeeth: number;
  /** The depth meshes, to what any maker can see. */
  readonly meshes: boolean;
}

/** How all placed wheels stand when their teeth are in mesh. */
export interface ToothPhases {
  /** Angle of the centre line of tooth 1 of each wheel, degrees anticlockwise from +x, 0 to 360. */
  readonly angleDeg: ReadonlyMap<WheelId, number>;
  readonly marks: readonly ToothMark[];
}

/** Whole numbers k with Σ factors·k = wanted, for factors without a common divisor. Source: Euclid's algorithm. */
function wholeCombination(factors: readonly bigint[], wanted: bigint): readonly bigint[] {
  let [divisor, coefficients]: [bigint, bigint[]] = [0n, []];
  for (const factor of factors) {
    let [r0, r1, s0, s1, t0, t1] = [divisor, factor, 1n, 0n, 0n, 1n];
    while (r1 !== 0n) {
      const q = r0 / r1;
      [r0, r1, s0, s1, t0, t1] = [r1, r0 - q * r1, s1, s0 - q * s1, t1, t0 - q * t1];
    }
    divisor = r0;
    coefficients = [...coefficients.map((value) => value * s0), t0];
  }
  return coefficients.map((value) => (value * wanted) / divisor);
}

/** Whole teeth to add at each depth so that compound rings close. */
function wholeTeeth(rings: readonly MeshRing[], places: Places): ReadonlyMap<Mesh, number> {
  const added = new Map<Mesh, number>();
  for (const ring of rings) {
    const factors = ringFactors(ring);
    const sum = factors && ringSum(ring, factors, places);
    const last = factors?.[factors.length - 1];
    // With a last factor of 1 the closing depth takes up whole teeth by itself.
    if (!factors || sum === undefined || last === 1n || last === -1n) continue;
    const already = ring.meshes.reduce(
      (total, mesh, index) => total + Number(factors[index]) * (added.get(mesh) ?? 0),
      0,
    );
    const moved = wholeCombination(factors, -BigInt(Math.round(sum + already)));
    ring.meshes.forEach((mesh, index) => {
      added.set(mesh, (added.get(mesh) ?? 0) + Number(moved[index]));
    });
  }
  return added;
}

/**
 * Tooth angles of all placed wheels. Wheels without a place are left out; the first wheel of each train has a tooth
 * at its own `phase`, or at 0.
 */
export function toothPhases(movement: Movement, places: Places): ToothPhases {
  const meshes = meshesOf(movement).filter((mesh) => meshTarget(mesh, places) !== undefined);
  const added = wholeTeeth(meshRings(meshes), places);
  const angles = bodyAngles(movement, meshes, places, added);
  const body = bodyOf(movement);
  const turnsOf = (wheel: Wheel): number => (angles.get(body(wheel.arbor)) ?? 0) + phaseTurns(wheel);

  // Tooth 1 of a wheel is the one nearest its first mate.
  const first = new Map<WheelId, number>();
  const toothNearest = (wheel: Wheel, line: number): number => {
    const angle = turnsOf(wheel);
    return angle + Math.round((line - angle) * wheel.teeth) / wheel.teeth;
  };
  for (const mesh of meshes) {
    const lines = lineAngles(mesh, places);
    mesh.wheels.forEach((wheel, index) => {
      if (lines && !first.has(wheel.id)) first.set(wheel.id, toothNearest(wheel, lines[index] ?? 0));
    });
  }
  const angleDeg = new Map<WheelId, number>();
  for (const wheel of movement.wheels) {
    if (places.get(wheel.arbor)) angleDeg.set(wheel.id, 360 * withinTurn(first.get(wheel.id) ?? turnsOf(wheel)));
  }
  const marks = meshes.map((mesh) => markOf(mesh, places, { toothNearest, turnsOf, first }));
  return { angleDeg, marks };
}

/** Between 0 and 1 turn. */
const withinTurn = (turns: number): number => turns - Math.floor(turns);

function bodyAngles(
  movement: Movement,
  meshes: readonly Mesh[],
  places: Places,
  added: ReadonlyMap<Mesh, number>,
): ReadonlyMap<ArborId, number> {
  const around = new Map<ArborId, Mesh[]>();
  for (const mesh of meshes) for (const body of mesh.bodies) around.set(body, [...(around.get(body) ?? []), mesh]);
  const body = bodyOf(movement);
  const angles = new Map<ArborId, number>();
  for (const { id } of movement.arbors) {
    if (angles.has(body(id))) continue;
    angles.set(body(id), 0);
    const queue = [body(id)];
    for (let index = 0; index < queue.length; index++) {
      const at = queue[index] as ArborId; // below its length
      for (const mesh of around.get(at) ?? []) {
        const far = farBody(mesh, at);
        if (angles.has(far)) continue;
        // Reduced as in the rings' sums, to which the added whole teeth belong.
        const target = fromWhole(meshTarget(mesh, places) ?? 0) + (added.get(mesh) ?? 0);
        const here = mesh.bodies[0] === at ? 0 : 1;
        const known = mesh.coefficients[here] * (angles.get(at) ?? 0);
        angles.set(far, (target - known) / mesh.coefficients[1 - here === 0 ? 0 : 1]);
        queue.push(far);
      }
    }
  }
  return angles;
}

/** Where the teeth of each wheel come to stand, in turns from +x. */
interface Standing {
  readonly toothNearest: (wheel: Wheel, line: number) => number;
  readonly turnsOf: (wheel: Wheel) => number;
  readonly first: ReadonlyMap<WheelId, number>;
}

function markOf(mesh: Mesh, places: Places, standing: Standing): ToothMark {
  const [a, b] = mesh.wheels;
  const lines = lineAngles(mesh, places) ?? [0, 0];
  const number = (wheel: Wheel, turns: number): number => {
    const count = Math.round((turns - (standing.first.get(wheel.id) ?? 0)) * wheel.teeth);
    return (((count % wheel.teeth) + wheel.teeth) % wheel.teeth) + 1;
  };
  const target = meshTarget(mesh, places) ?? 0;
  // Angles without the wheels' phases, which the target already holds.
  const sum =
    mesh.coefficients[0] * (standing.turnsOf(a) - phaseTurns(a)) +
    mesh.coefficients[1] * (standing.turnsOf(b) - phaseTurns(b));
  const missTeeth = fromWhole(sum - target);
  const tooth = standing.toothNearest(a, lines[0]);
  // The tooth of a stands off the line by so many teeth along the pitch line; the space of b stands as far.
  const off = (tooth - lines[0]) * a.teeth;
  const along = a.internal || b.internal ? 1 : -1;
  const space = lines[1] + (along * off) / b.teeth;
  const lower = standing.toothNearest(b, space - 0.5 / b.teeth);
  const between = [number(b, lower), number(b, lower + 1 / b.teeth)] as const;
  return {
    rule: mesh.rule,
    wheels: [a.id, b.id],
    tooth: number(a, tooth),
    between,
    missTeeth,
    meshes: Math.abs(missTeeth) <= FITS_TEETH,
  };
}
