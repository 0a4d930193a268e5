/**
 * Tooth angles while some arbors are carried about: each carried body rolls on a mate whose angle is known, beginning
 * with those that stand still. Unlike `toothPhases` it looks only at what moved and closes no rings: where carried
 * bodies mesh with still ones on two sides, they roll on one of them, and the other may miss until it is asked anew.
 */
import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { bodyOf, fromWhole, lineAngles, type Mesh, meshesOf, type Places } from './meshes.ts';
import { farBody } from './ringClosure.ts';

/** Angles of the centre line of some tooth of each wheel, degrees anticlockwise from +x. */
export type AnglesDeg = ReadonlyMap<WheelId, number>;

/**
 * Prepares the rolling of a movement's wheels from where they stand.
 *
 * @param standing tooth angles before anything was carried, at the places `from`; a wheel without one stands at 0
 * @returns for places `now` and the arbors that are not where they were: new angles of the wheels that turn with them
 */
export function rollingPhases(
  movement: Movement,
  standing: AnglesDeg,
  from: Places,
): (now: Places, moved: ReadonlySet<ArborId>) => AnglesDeg {
  const body = bodyOf(movement);
  const around = new Map<ArborId, Mesh[]>();
  for (const mesh of meshesOf(movement)) {
    for (const each of mesh.bodies) {
      const known = around.get(each);
      if (known) known.push(mesh);
      else around.set(each, [mesh]);
    }
  }
  const wheelsOn = new Map<ArborId, Wheel[]>();
  for (const wheel of movement.wheels) {
    wheelsOn.set(body(wheel.arbor), [...(wheelsOn.get(body(wheel.arbor)) ?? []), wheel]);
  }

  return (now, moved) => {
    const carried = new Set([...moved].map(body));
    const turns = new Map<ArborId, number>();
    const roll = (each: ArborId, mesh: Mesh): void => {
      turns.set(each, rolled(mesh, each, turns.get(farBody(mesh, each)) ?? 0, standing, from, now));
    };
    // First those that mesh with something still, then whatever hangs on them; of the rest one keeps its angle.
    for (const each of carried) {
      const still = around.get(each)?.find((mesh) => !carried.has(farBody(mesh, each)));
      if (still) roll(each, still);
    }
    const queue = [...turns.keys()];
    for (const each of carried) {
      for (let index = 0; index < queue.length; index++) {
        const at = queue[index] as ArborId; // below its length
        for (const mesh of around.get(at) ?? []) {
          const far = farBody(mesh, at);
          if (!carried.has(far) || turns.has(far)) continue;
          roll(far, mesh);
          queue.push(far);
        }
      }
      queue.length = 0;
      if (turns.has(each)) continue;
      turns.set(each, 0);
      queue.push(each);
    }
    const angles = new Map<WheelId, number>();
    for (const [each, turn] of turns) {
      for (const { id } of wheelsOn.get(each) ?? []) {
        angles.set(id, (standing.get(id) ?? 0) + 360 * (turn - Math.floor(turn)));
      }
    }
    return angles;
  };
}

/**
 * The turn of a body that rolls on a mate which has itself turned by `known`: with the line of centres turning by d,
 * c_b (turn − d_b) = −c_a (known − d_a), and then the rest of a tooth by which the two did not mesh before.
 */
function rolled(mesh: Mesh, body: ArborId, known: number, standing: AnglesDeg, from: Places, now: Places): number {
  const own = mesh.bodies[0] === body ? 0 : 1;
  const lines = lineAngles(mesh, now);
  if (!lines) return 0;
  const before = lineAngles(mesh, from) ?? lines;
  const [mate, self] = [mesh.wheels[own === 0 ? 1 : 0], mesh.wheels[own]];
  const [ca, cb] = [mesh.coefficients[own === 0 ? 1 : 0], mesh.coefficients[own]];
  const [mateLine, ownLine] = [lines[own === 0 ? 1 : 0], lines[own]];
  const swung = fromWhole(ownLine - before[own]);
  const turn = swung - (ca * (known - swung)) / cb;
  const [mateStood, selfStood] = [standing.get(mate.id) ?? 0, standing.get(self.id) ?? 0];
  const sum = ca * (mateStood / 360 + known - mateLine) + cb * (selfStood / 360 + turn - ownLine);
  return turn - fromWhole(sum - 0.5) / cb;
}
