/** The train as bodies for the rehearsal: what turns together, what meshes with what, and the exact ratios. */
import { formOfWheel, toothPhases } from '../../gearing/index.ts';
import type { ArborId, Movement, Wheel } from '../../movement/index.ts';
import type { PlacedMovement } from '../../planting/index.ts';
import { MOST_MESHES, type TurningBody, type TurningShape } from '../planckAdapter.ts';
import { type Shake, shakeOf, sideMovementOver } from '../shake.ts';
import { toothShapes } from './toothShapes.ts';

export interface RehearsalBody {
  /** The arbor, and pipes that are fixed on it. */
  readonly arbors: readonly ArborId[];
  readonly plan: TurningBody;
  /** Turns for one turn of the driven body; its sign is the sense. */
  readonly ratio: number;
  /** Nothing is driven by it: it carries a load. */
  readonly isOutput: boolean;
  /** Teeth of its largest wheel in mesh. */
  readonly mostTeeth: number;
  /** Smallest module of its wheels in mesh, mm. */
  readonly module: number;
}

/** Two bodies by index, and the pitches that pass for a turn of each; the sum of what has passed stays near nothing. */
export interface RehearsalMesh {
  readonly bodies: readonly [number, number];
  readonly pitches: readonly [number, number];
}

export type RehearsalTrain =
  | {
      readonly kind: 'train';
      readonly bodies: readonly RehearsalBody[];
      readonly meshes: readonly RehearsalMesh[];
      readonly leftOut: readonly string[];
    }
  | { readonly kind: 'none'; readonly says: string };

interface Mesh {
  readonly wheels: readonly [Wheel, Wheel];
  readonly bodies: readonly [ArborId, ArborId];
}

/** The bodies that the input turns through depths, the input first. */
export function rehearsalTrain(placed: PlacedMovement, input: ArborId): RehearsalTrain {
  const { movement } = placed;
  const bodyOf = fixedTogether(movement);
  const all = meshesOf(movement, bodyOf);
  const start = bodyOf(input);
  const ratios = ratiosFrom(start, all);
  const meshes = all.filter(({ bodies }) => ratios.has(bodies[0])).slice(0, MOST_MESHES);
  if (meshes.length === 0)
    return { kind: 'none', says: 'No depth leads on from the arbor that drives: nothing to rehearse.' };
  const shapes = shapesOf(placed, meshes);
  if (typeof shapes === 'string') return { kind: 'none', says: shapes };
  const shake = shakeOf(movement);
  const drivers = new Set(meshes.map(({ bodies }) => bodies[0]));
  const ids = [start, ...[...shapes.keys()].filter((id) => id !== start)];
  const bodies = ids.flatMap((id): RehearsalBody[] => {
    const at = placed.places.get(id);
    const wheels = meshes.flatMap((mesh) => mesh.wheels.filter((_, side) => mesh.bodies[side] === id));
    if (!at || wheels.length === 0) return [];
    return [
      {
        arbors: movement.arbors.filter((arbor) => bodyOf(arbor.id) === id).map((arbor) => arbor.id),
        plan: { at: [at.x, at.y], play: playOf(wheels, shake), shapes: shapes.get(id) ?? [] },
        ratio: ratios.get(id) ?? 0,
        isOutput: !drivers.has(id),
        mostTeeth: Math.max(...wheels.map((wheel) => wheel.teeth)),
        module: Math.min(...wheels.map((wheel) => formModule(wheel, movement))),
      },
    ];
  });
  const indexOf = (id: ArborId): number => bodies.findIndex(({ arbors }) => arbors.includes(id));
  const joined = meshes.map(({ wheels: [a, b], bodies: [from, to] }): RehearsalMesh => {
    const sense = a.internal || b.internal ? -1 : 1;
    return { bodies: [indexOf(from), indexOf(to)], pitches: [a.teeth, sense * b.teeth] };
  });
  return { kind: 'train', bodies, meshes: joined, leftOut: leftOutOf(movement, all.length - meshes.length) };
}

/** Pipes that are fixed to what they ride on turn as one body with it. */
function fixedTogether({ arbors }: Movement): (id: ArborId) => ArborId {
  const known = new Map(arbors.map((arbor) => [arbor.id, arbor]));
  return (id) => {
    let at = id;
    for (let step = 0; step < arbors.length; step++) {
      const arbor = known.get(at);
      if (arbor?.turns !== 'withArbor' || arbor.ridesOn === undefined) break;
      at = arbor.ridesOn;
    }
    return at;
  };
}

function meshesOf(movement: Movement, bodyOf: (id: ArborId) => ArborId): Mesh[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  return movement.rules.flatMap((rule): Mesh[] => {
    if (rule.kind !== 'depth' || rule.leaveOut) return [];
    const [a, b] = [wheels.get(rule.wheels[0]), wheels.get(rule.wheels[1])];
    if (!a || !b || bodyOf(a.arbor) === bodyOf(b.arbor)) return [];
    return [{ wheels: [a, b], bodies: [bodyOf(a.arbor), bodyOf(b.arbor)] }];
  });
}

/** Exact ratio of every body that depths join to the start, by the counts alone. */
function ratiosFrom(start: ArborId, meshes: readonly Mesh[]): Map<ArborId, number> {
  const ratios = new Map([[start, 1]]);
  for (const [id, ratio] of ratios) {
    for (const { wheels, bodies } of meshes) {
      const side = bodies.indexOf(id);
      if (side < 0) continue;
      const [here, there] = side === 0 ? wheels : [wheels[1], wheels[0]];
      const far = bodies[1 - side];
      if (far === undefined || ratios.has(far)) continue;
      const sense = here.internal || there.internal ? 1 : -1;
      ratios.set(far, (sense * ratio * here.teeth) / there.teeth);
    }
  }
  return ratios;
}

function shapesOf(placed: PlacedMovement, meshes: readonly Mesh[]): Map<ArborId, TurningShape[]> | string {
  const { angleDeg } = toothPhases(placed.movement, placed.places);
  const shapes = new Map<ArborId, TurningShape[]>();
  for (const [index, { wheels, bodies }] of meshes.entries()) {
    for (const [side, wheel] of wheels.entries()) {
      const form = formOfWheel(wheel, placed.movement);
      if (form.kind === 'none') return form.says;
      const id = bodies[side];
      if (id === undefined) continue;
      const phase = ((angleDeg.get(wheel.id) ?? 0) * Math.PI) / 180;
      shapes.set(id, [...(shapes.get(id) ?? []), ...toothShapes(form, phase, index)]);
    }
  }
  return shapes;
}

/** The play of the axis at the height of the wheels that mesh: the least, which is what holds them. */
function playOf(wheels: readonly Wheel[], shake: Shake): number {
  const at = wheels.map((wheel) => {
    const from = wheel.level;
    return sideMovementOver(shake, wheel.arbor, { from, to: from + wheel.thickness });
  });
  return Math.min(...at);
}

function formModule(wheel: Wheel, movement: Movement): number {
  const form = formOfWheel(wheel, movement);
  return form.kind === 'none' ? 1 : form.module;
}

function leftOutOf(movement: Movement, meshesLeft: number): string[] {
  const couplings = movement.couplings.length;
  return [
    'weight, and the true force of the drive: the torque is just enough to turn the train',
    'the lean of arbors: each stands upright, with the play of its bearings at the height of its teeth',
    'flanks between points, and root corners: each tooth is a polygon of twelve corners on its true form',
    ...(couplings > 0 ? ['worms, contrate wheels, carriers and fingers'] : []),
    ...(meshesLeft > 0
      ? [`${meshesLeft} depths that the drive does not reach, or beyond the first ${MOST_MESHES}`]
      : []),
  ];
}
