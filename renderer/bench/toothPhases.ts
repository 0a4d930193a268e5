/**
 * Angles at which wheels are drawn, so that the teeth of each pair stand in each other's spaces.
 *
 * A drawing aid: it follows the depths outward from wheel to wheel. In a closed ring that cannot be assembled the
 * last pair will not fit on the drawing either; the finding about the ring says so in numbers.
 */
import type { Movement, RuleOf, Wheel } from '../../solver/movement/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';
import type { Point } from './view.ts';

const TURN = 2 * Math.PI;

/**
 * The phase of a wheel whose mate's phase is known: the point of contact on the line of centres has a tooth of the
 * one where the other has a space.
 *
 * @param towards direction from the mate's centre to the wheel's, radians
 */
export function phaseOfMate(
  mate: { readonly teeth: number; readonly phase: number; readonly internal: boolean },
  wheel: { readonly teeth: number; readonly internal: boolean },
  towards: number,
): number {
  // Direction of the contact as seen from each centre; with a ring both look the same way.
  const seenFromMate = wheel.internal ? towards + Math.PI : towards;
  const seenFromWheel = mate.internal || wheel.internal ? seenFromMate : towards + Math.PI;
  const pitches = ((mate.phase - seenFromMate) * mate.teeth) / TURN;
  // Outside teeth roll against each other, inside ones roll along.
  const sense = mate.internal || wheel.internal ? 1 : -1;
  return reduced(seenFromWheel + (sense * TURN * (pitches + 0.5)) / wheel.teeth, wheel.teeth);
}

/** A phase within one pitch, which looks the same. */
function reduced(phase: number, teeth: number): number {
  const pitch = TURN / teeth;
  return phase - Math.floor(phase / pitch) * pitch;
}

interface Mesh {
  readonly to: Wheel;
  readonly from: Wheel;
}

/** Depths of each wheel, both ways; found once for a movement. */
const meshesOf = rememberingLast((movement: Movement): ReadonlyMap<string, readonly Mesh[]> => {
  const wheels = new Map<string, Wheel>(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const meshes = new Map<string, Mesh[]>();
  const add = (from: Wheel, to: Wheel): void => {
    const list = meshes.get(from.id);
    if (list) list.push({ from, to });
    else meshes.set(from.id, [{ from, to }]);
  };
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const [a, b] = pairOf(rule, wheels);
    if (!a || !b) continue;
    add(a, b);
    add(b, a);
  }
  return meshes;
});

function pairOf(rule: RuleOf<'depth'>, wheels: ReadonlyMap<string, Wheel>): readonly (Wheel | undefined)[] {
  return rule.wheels.map((id) => wheels.get(id));
}

/** Drawing angle of every wheel, radians; a phase stated in the movement stands. */
export function toothPhases({ movement, places }: PlacedMovement): ReadonlyMap<string, number> {
  const meshes = meshesOf(movement);
  const phases = new Map<string, number>();
  const queue: Wheel[] = [];
  for (const wheel of movement.wheels) {
    if (wheel.phase === undefined) continue;
    phases.set(wheel.id, (wheel.phase * Math.PI) / 180);
    queue.push(wheel);
  }
  const follow = (): void => {
    for (let from = queue.shift(); from; from = queue.shift()) {
      for (const { to } of meshes.get(from.id) ?? []) {
        if (phases.has(to.id)) continue;
        const [a, b] = [places.get(from.arbor), places.get(to.arbor)];
        if (!a || !b) continue;
        phases.set(to.id, phaseOfMate({ ...from, phase: phases.get(from.id) ?? 0 }, to, direction(a, b)));
        queue.push(to);
      }
    }
  };
  follow();
  for (const wheel of movement.wheels) {
    if (phases.has(wheel.id)) continue;
    phases.set(wheel.id, 0);
    queue.push(wheel);
    follow();
  }
  return phases;
}

const direction = (a: Point, b: Point): number => Math.atan2(b.y - a.y, b.x - a.x);

/** Remembers the answer for the last argument: drags ask again and again about the same movement. */
function rememberingLast<Argument extends object, Result>(make: (argument: Argument) => Result) {
  let known: { argument: Argument; result: Result } | undefined;
  return (argument: Argument): Result => {
    if (known?.argument !== argument) known = { argument, result: make(argument) };
    return known.result;
  };
}
