/** Closed rings of depths whose teeth cannot all stand in mesh, with the smallest movement that closes them. */

import type { Point } from '../../geometry/index.ts';
import type { Movement } from '../../movement/schema.ts';
import { startDrag } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { checkRing, closeRing, type MeshRing, meshesOf, meshRings, type RingClosure } from '../../train/index.ts';
import type { FindingCause, MovedArbor } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';

/** Rings that miss stop the movement; one that closes once a wheel is set on its arbor is a note with the angle. */
export function checkRingsClose(placed: PlacedMovement): readonly Finding[] {
  const { movement, places } = placed;
  return ringsOf(movement).flatMap((ring): Finding[] => {
    const closure = checkRing(ring, places);
    const cause = causeOf(closure, ring, placed);
    if (!cause) return [];
    const [first, second] = closure.bodies.map((body) => places.get(body));
    const at = first && second ? ([pointOf(first), pointOf(second)] as const) : undefined;
    return [
      {
        key: `ring ${[...closure.bodies].sort().join(' ')}`,
        kind: 'ring',
        severity: closure.kind === 'misses' ? 'stops' : 'notes',
        parts: closure.bodies,
        ...(at ? { at } : {}),
        cause,
      },
    ];
  });
}

const pointOf = ({ x, y }: Point): Point => ({ x, y });

const known = new WeakMap<Movement, readonly MeshRing[]>();

/** The rings of a movement, which its places do not change; movements are immutable, so each is gone through once. */
function ringsOf(movement: Movement): readonly MeshRing[] {
  const rings = known.get(movement) ?? meshRings(meshesOf(movement));
  known.set(movement, rings);
  return rings;
}

function causeOf(closure: RingClosure, ring: MeshRing, placed: PlacedMovement): FindingCause | undefined {
  if (closure.kind === 'misses') {
    const closing = closingOf(placed, ring);
    const cause = { kind: 'ringMisses', ring: closure.bodies, missTeeth: Math.abs(closure.missTeeth) } as const;
    return closing ? { ...cause, closing } : cause;
  }
  if (closure.kind !== 'setOnArbor') return undefined;
  const wheel = placed.movement.wheels.find(({ id }) => id === closure.wheel);
  if (!wheel) return undefined;
  const turn = (closure.turnDeg * Math.PI) / 180;
  return { kind: 'ringSet', ring: closure.bodies, wheel: wheel.id, arbor: wheel.arbor, turn };
}

/** The nearest places of loose arbors of the ring that close it. */
function closingOf(placed: PlacedMovement, ring: MeshRing): readonly MovedArbor[] | undefined {
  for (const body of ring.bodies) {
    const place = placed.places.get(body);
    const [way] = place?.free ?? [];
    if (!place || !way) continue;
    const drag = startDrag(placed, body);
    const mover = (amount: number) => drag.to(place.x + amount * way.x, place.y + amount * way.y).places;
    const cure = closeRing(ring, placed.places, mover, REACH);
    if (cure.kind !== 'none') return cure.moved;
  }
  return undefined;
}

/** How far a loose arbor is moved to close a ring, mm: beyond it another planting is meant. */
const REACH = 5;
