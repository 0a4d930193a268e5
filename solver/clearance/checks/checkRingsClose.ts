/** Closed rings of depths whose teeth cannot all stand in mesh, with the smallest movement that closes them. */

import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { startDrag } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { checkRing, closeRing, type MeshRing, meshesOf, meshRings, type RingClosure } from '../../train/index.ts';
import type { Finding } from '../findings/finding.ts';

/** Rings that miss stop the movement; one that closes once a wheel is set on its arbor is a note with the angle. */
export function checkRingsClose(placed: PlacedMovement): readonly Finding[] {
  const { movement, places } = placed;
  return ringsOf(movement).flatMap((ring): Finding[] => {
    const closure = checkRing(ring, places);
    if (closure.kind !== 'misses' && closure.kind !== 'setOnArbor') return [];
    const cure = closure.kind === 'misses' ? cureOf(placed, ring) : '';
    const [first, second] = closure.bodies.map((body) => places.get(body));
    return [
      {
        key: `ring ${[...closure.bodies].sort().join(' ')}`,
        kind: 'ring',
        severity: closure.kind === 'misses' ? 'stops' : 'notes',
        parts: closure.bodies,
        ...(first && second
          ? {
              at: [
                { x: first.x, y: first.y },
                { x: second.x, y: second.y },
              ] as const,
            }
          : {}),
        says: `${saysOf(closure, placed)}${cure}`,
      },
    ];
  });
}

const known = new WeakMap<Movement, readonly MeshRing[]>();

/** The rings of a movement, which its places do not change; movements are immutable, so each is gone through once. */
function ringsOf(movement: Movement): readonly MeshRing[] {
  const rings = known.get(movement) ?? meshRings(meshesOf(movement));
  known.set(movement, rings);
  return rings;
}

/** The closure in the maker's names. */
function saysOf(closure: RingClosure, { movement }: PlacedMovement): string {
  const arborName = (id: string): string => movement.arbors.find((arbor) => arbor.id === id)?.name ?? id;
  const names = closure.bodies.map(arborName).join(', ');
  if (closure.kind === 'misses') {
    return `The ring of ${names} cannot be put together: with all other teeth in mesh the last depth misses by ${Math.abs(closure.missTeeth).toFixed(3)} of a tooth.`;
  }
  if (closure.kind !== 'setOnArbor') return closure.says;
  const wheel = movement.wheels.find(({ id }) => id === closure.wheel);
  const way = closure.turnDeg > 0 ? 'anticlockwise' : 'clockwise';
  const called = wheel?.name ?? closure.wheel;
  return `The ring of ${names} closes when ${called} is set on ${wheel ? arborName(wheel.arbor) : 'its arbor'} ${Math.abs(closure.turnDeg).toFixed(3)}° ${way} of its place (tooth over tooth, where no phase is given).`;
}

/** The nearest place of a loose arbor of the ring that closes it, in words. */
function cureOf(placed: PlacedMovement, ring: MeshRing): string {
  const name = (id: ArborId): string => placed.movement.arbors.find((arbor) => arbor.id === id)?.name ?? id;
  for (const body of ring.bodies) {
    const place = placed.places.get(body);
    const [way] = place?.free ?? [];
    if (!place || !way) continue;
    const drag = startDrag(placed, body);
    const mover = (amount: number) => drag.to(place.x + amount * way.x, place.y + amount * way.y).places;
    const cure = closeRing(ring, placed.places, mover, REACH);
    if (cure.kind === 'none') continue;
    const words = cure.moved.map(
      ({ arbor, to, distance }) =>
        `${name(arbor)} by ${distance.toFixed(3)} mm to (${to.x.toFixed(3)}, ${to.y.toFixed(3)})`,
    );
    return ` It closes when ${words.join(' and ')} moves.`;
  }
  return ' Leave out the rule that settles one of its arbors, or change the counts of one of its wheels by one tooth.';
}

/** How far a loose arbor is moved to close a ring, mm: beyond it another planting is meant. */
const REACH = 5;
