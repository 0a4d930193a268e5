/** The train as bodies for the rehearsal: what turns together, what meshes with what, and the exact ratios. */

import type { Point } from '../../geometry/index.ts';
import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { formOfWheel, type ToothForm } from '../../teeth/index.ts';
import { toothPhases } from '../../train/index.ts';
import { MOST_MESHES, type ToothedRim, type TurningBody } from '../planckAdapter.ts';
import type { PlayBound } from '../shake/lean.ts';
import { playBoundsOf, type Shake, shakeOf, sideMovementOver } from '../shake/shake.ts';
import { solidBodyOf as fixedTo, solidPartsOf } from '../solids/partsIndex.ts';
import { toothShapes } from './toothShapes.ts';

/** Arbors that turn as one, as the rehearsal needs them. */
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
  /** Plays of its bearings, lowest first; and the heights of the teeth that mesh on it. */
  readonly bearings: readonly PlayBound[];
  readonly heights: readonly number[];
  /** For a pipe the body inside it, whose lean it takes along. */
  readonly inside?: ArborId;
}

/** Two bodies by index, and the pitches that pass for a turn of each; the sum of what has passed stays near nothing. */
export interface RehearsalMesh {
  readonly bodies: readonly [number, number];
  readonly pitches: readonly [number, number];
  readonly wheels: readonly [Wheel, Wheel];
  /** Middle of the height that the two share, mm. */
  readonly z: number;
}

/** Why there is nothing to rehearse. */
export type NoRehearsal =
  | { readonly kind: 'noDepth' | 'leadsNowhere' }
  | {
      readonly kind: 'noTeeth';
      readonly wheel: WheelId;
      readonly form: Extract<ReturnType<typeof formOfWheel>, { kind: 'none' }>;
    };

/** What a rehearsal leaves out; `depths`: so many that the drive does not reach, or beyond the first `most`. */
export type LeftOut =
  | { readonly kind: 'weight' | 'leanOnDepths' | 'friction' | 'flanks' | 'couplings' }
  | { readonly kind: 'depths'; readonly count: number; readonly most: number };

/** The bodies and their meshes, or why there is nothing to rehearse. */
export type RehearsalTrain =
  | {
      readonly kind: 'train';
      readonly bodies: readonly RehearsalBody[];
      readonly meshes: readonly RehearsalMesh[];
      readonly leftOut: readonly LeftOut[];
    }
  | { readonly kind: 'none'; readonly why: NoRehearsal };

/** A depth between two bodies. */
interface Mesh {
  readonly wheels: readonly [Wheel, Wheel];
  readonly bodies: readonly [ArborId, ArborId];
}

/** The bodies that the input turns through depths, the input first. */
export function rehearsalTrain(placed: PlacedMovement, input: ArborId): RehearsalTrain {
  const { movement } = placed;
  const parts = solidPartsOf(movement);
  // Pipes that are fixed to what they ride on turn as one body with it.
  const bodyOf = (id: ArborId): ArborId => fixedTo(id, parts);
  const all = meshesOf(movement, bodyOf);
  const start = bodyOf(input);
  const ratios = ratiosFrom(start, all);
  const meshes = all.filter(({ bodies }) => ratios.has(bodies[0])).slice(0, MOST_MESHES);
  if (meshes.length === 0) return { kind: 'none', why: { kind: 'leadsNowhere' } };
  const rims = rimsOf(placed, meshes);
  if ('kind' in rims) return { kind: 'none', why: rims };
  const shake = shakeOf(movement);
  const drivers = new Set(meshes.map(({ bodies }) => bodies[0]));
  const ids = [start, ...[...rims.keys()].filter((id) => id !== start)];
  const bodies = ids.flatMap((id): RehearsalBody[] => {
    const at = placed.places.get(id);
    const on = meshes.filter((mesh) => mesh.bodies.includes(id));
    const wheels = on.flatMap((mesh) => mesh.wheels.filter((_, side) => mesh.bodies[side] === id));
    if (!at || wheels.length === 0) return [];
    const arbors = movement.arbors.filter((arbor) => bodyOf(arbor.id) === id);
    return [
      {
        arbors: arbors.map((arbor) => arbor.id),
        plan: { at: { x: at.x, y: at.y }, play: playOf(wheels, shake), rims: rims.get(id) ?? [] },
        ratio: ratios.get(id) ?? 0,
        isOutput: !drivers.has(id),
        mostTeeth: Math.max(...wheels.map((wheel) => wheel.teeth)),
        module: Math.min(...wheels.map((wheel) => formModule(wheel, movement))),
        heights: on.map(({ wheels: pair }) => meetingHeight(pair)),
        ...bearingsOf(id, movement, bodyOf),
      },
    ];
  });
  const indexOf = (id: ArborId): number => bodies.findIndex(({ arbors }) => arbors.includes(id));
  const joined = meshes.map(({ wheels: [a, b], bodies: [from, to] }): RehearsalMesh => {
    const sense = a.internal || b.internal ? -1 : 1;
    return {
      bodies: [indexOf(from), indexOf(to)],
      pitches: [a.teeth, sense * b.teeth],
      wheels: [a, b],
      z: meetingHeight([a, b]),
    };
  });
  return { kind: 'train', bodies, meshes: joined, leftOut: leftOutOf(movement, all.length - meshes.length) };
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

function rimsOf(placed: PlacedMovement, meshes: readonly Mesh[]): Map<ArborId, ToothedRim[]> | NoRehearsal {
  const { angleDeg } = toothPhases(placed.movement, placed.places);
  const rims = new Map<ArborId, ToothedRim[]>();
  for (const [mesh, { wheels, bodies }] of meshes.entries()) {
    const forms = wheels.map((wheel) => formOfWheel(wheel, placed.movement));
    for (const [side, wheel] of wheels.entries()) {
      const [form, mate] = [forms[side], forms[1 - side]];
      const [id, far] = [bodies[side], bodies[1 - side]];
      if (!form || !mate || id === undefined || far === undefined) continue;
      if (form.kind === 'none') return { kind: 'noTeeth', wheel: wheel.id, form };
      if (mate.kind === 'none') return { kind: 'noTeeth', wheel: wheels[side === 0 ? 1 : 0].id, form: mate };
      const [here, there] = [placed.places.get(id), placed.places.get(far)];
      if (!here || !there) continue;
      const phase = ((angleDeg.get(wheel.id) ?? 0) * Math.PI) / 180;
      const list = rims.get(id) ?? [];
      list.push({ mesh, phase, ...toothShapes(form, phase), ...meetingArc(form, mate, here, there) });
      rims.set(id, list);
    }
  }
  return rims;
}

/** Room beside which teeth are counted as near, modules: more than any play takes them. */
const NEAR = 0.5;

/** Direction in which a wheel meets its mate, and how far to each side its tips are within the mate's. */
function meetingArc(form: ToothForm, mate: ToothForm, here: Point, there: Point): { towards: number; reach: number } {
  const d = Math.hypot(there.x - here.x, there.y - here.y);
  const along = Math.atan2(there.y - here.y, there.x - here.x);
  const near = NEAR * form.module;
  // A pinion in a ring meets it on the side away from the ring's centre, and wherever its tips are outside the ring's.
  const towards = mate.internal ? along + Math.PI : along;
  const edge = mate.internal ? Math.max(0, mate.tip - near) : mate.tip + near;
  const cosine = mate.internal
    ? (edge ** 2 - d ** 2 - form.tip ** 2) / (2 * d * form.tip)
    : (d ** 2 + form.tip ** 2 - edge ** 2) / (2 * d * form.tip);
  return { towards, reach: Math.acos(Math.min(1, Math.max(-1, cosine))) };
}

function meetingHeight([a, b]: readonly [Wheel, Wheel]): number {
  return (Math.max(a.level, b.level) + Math.min(a.level + a.thickness, b.level + b.thickness)) / 2;
}

/** The bearings that carry a body: in the case where it runs there, else those of a pipe on what is inside it. */
function bearingsOf(
  id: ArborId,
  movement: Movement,
  bodyOf: (id: ArborId) => ArborId,
): Pick<RehearsalBody, 'bearings' | 'inside'> {
  const { arbors, plates } = solidPartsOf(movement);
  const arbor = arbors.get(id);
  if (!arbor) return { bearings: [] };
  const { inCase, onArbor } = playBoundsOf(arbor, plates);
  const lowestFirst = (bounds: readonly PlayBound[]) => [...bounds].sort((a, b) => a.z - b.z);
  if (arbor.ridesOn === undefined || inCase.length > onArbor.length) return { bearings: lowestFirst(inCase) };
  return { bearings: lowestFirst(onArbor), inside: bodyOf(arbor.ridesOn) };
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

function leftOutOf(movement: Movement, meshesLeft: number): LeftOut[] {
  return [
    { kind: 'weight' },
    { kind: 'leanOnDepths' },
    { kind: 'friction' },
    { kind: 'flanks' },
    ...(movement.couplings.length > 0 ? [{ kind: 'couplings' } as const] : []),
    ...(meshesLeft > 0 ? [{ kind: 'depths', count: meshesLeft, most: MOST_MESHES } as const] : []),
  ];
}
