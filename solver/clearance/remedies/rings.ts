/**
 * Cures of rings of depths: another place of one arbor, another count of one wheel, or a wheel set on its arbor.
 *
 * An arbor that a held place or a bearing settles is let go, followed along the motion that it then has until the ring
 * closes, and the rule given the value that it has there.
 */

import type { ArborId } from '../../movement/ids.ts';
import { applyEdit, type Edit } from '../../movement/index.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { plantMovement, startDrag } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { checkRing, closeRing, type MeshRing, meshesOf, meshRings } from '../../train/index.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** How far an arbor is moved to close a ring, mm: beyond it another planting is meant. */
const REACH = 5;
/** Counts tried on each side of the one that is there; a ring that needs more is another train. */
const MOST_TEETH = 3;
/** Rings of more wheels are not gone through count by count: each count is a planting. */
const MOST_WHEELS = 12;
/** A tooth more or less gives wheels of nearly the same size, so no more than this many answers say anything new. */
const MOST_ANSWERS = 3;

/** The ring of a finding. */
export function ringOf(movement: Movement, { kind, parts }: Finding): MeshRing | undefined {
  if (kind !== 'ring') return undefined;
  return meshRings(meshesOf(movement)).find(
    ({ bodies }) => bodies.length === parts.length && bodies.every((body) => parts.includes(body)),
  );
}

/** Changes that let the teeth of a ring meet. */
export function ringCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  const ring = ringOf(placed.movement, finding);
  const closure = ring && checkRing(ring, placed.places);
  if (!ring || !closure) return [];
  if (closure.kind === 'setOnArbor') return setOnArbor(placed.movement, closure.wheel, closure.turnDeg);
  if (closure.kind !== 'misses') return [];
  return [
    ...ring.bodies.flatMap((body) => looseCure(placed, ring, body)),
    ...ring.bodies.flatMap((body) => settledCure(placed, ring, body)),
    ...closingCounts(placed, ring),
  ];
}

function setOnArbor({ wheels }: Movement, id: string, turnDeg: number): Candidate[] {
  const wheel = wheels.find((each) => each.id === id);
  if (!wheel) return [];
  const phase = (wheel.phase ?? 0) + turnDeg;
  const deed = { kind: 'setPhase', wheel: wheel.id, phase: (phase * Math.PI) / 180 } as const;
  return [{ deed, edit: { kind: 'change', id: wheel.id, set: { phase } } }];
}

/** The places of the ring's bodies at which it closes, one body being dragged along its free motion. */
function closed(placed: PlacedMovement, ring: MeshRing, body: ArborId) {
  const place = placed.places.get(body);
  const [way] = place?.free ?? [];
  if (!place || !way) return undefined;
  const drag = startDrag(placed, body);
  const mover = (amount: number) => drag.to(place.x + amount * way.x, place.y + amount * way.y).places;
  const cure = closeRing(ring, placed.places, mover, REACH);
  return cure.kind === 'none' ? undefined : { moved: cure.moved, places: mover(cure.amount) };
}

function looseCure(placed: PlacedMovement, ring: MeshRing, body: ArborId): Candidate[] {
  const cure = closed(placed, ring, body);
  if (!cure) return [];
  const places = cure.moved.map(({ arbor, to }) => ({ id: arbor, at: [to.x, to.y] as const }));
  return [{ deed: { kind: 'moveArbors', moved: cure.moved }, edit: { kind: 'move', places } }];
}

/** The same for an arbor that is held, or stands at a bearing: the rule gets the value that it has where the ring closes. */
function settledCure(placed: PlacedMovement, ring: MeshRing, body: ArborId): Candidate[] {
  const { movement } = placed;
  return movement.rules.flatMap((rule): Candidate[] => {
    if (rule.leaveOut || (rule.kind !== 'held' && rule.kind !== 'bearing') || rule.point !== body) return [];
    const free = applyEdit(movement, { kind: 'leaveOut', rules: [rule.id], leaveOut: true });
    if (free.kind === 'refused') return [];
    const cure = closed(plantMovement(free.movement), ring, body);
    const to = cure?.places.get(body);
    const from = placed.places.get(body);
    if (!to || !from) return [];
    const distance = Math.hypot(to.x - from.x, to.y - from.y);
    if (rule.kind === 'held') {
      const deed = { kind: 'holdAt', arbor: body, to: { x: to.x, y: to.y }, distance } as const;
      return [{ deed, edit: { kind: 'setValue', rule: rule.id, value: [to.x, to.y] } }];
    }
    const about = cure?.places.get(rule.centre as ArborId); // a centre that is no arbor has no place among these, and is not found
    const now = placed.places.get(rule.centre);
    if (!about || !now) return [];
    const turned = Math.atan2(to.y - about.y, to.x - about.x) - Math.atan2(from.y - now.y, from.x - now.x);
    const value = rule.angle + (turned * 180) / Math.PI;
    const deed = { kind: 'setDirection', arbor: body, direction: (value * Math.PI) / 180, distance } as const;
    return [{ deed, edit: { kind: 'setValue', rule: rule.id, value } }];
  });
}

/** What one wheel's count makes of a ring: how far its last depth misses then, teeth. */
interface CountTried {
  readonly wheel: Wheel;
  readonly teeth: number;
  readonly miss: number;
  readonly edit: Edit;
}

/** Other counts of one wheel of the ring, the smallest miss first; wheels that only pass the turning on before the others. */
export function countsTried(placed: PlacedMovement, ring: MeshRing): readonly CountTried[] {
  const { movement } = placed;
  const wheels = [...new Map(ring.meshes.flatMap((mesh) => mesh.wheels).map((wheel) => [wheel.id, wheel])).values()];
  if (wheels.length > MOST_WHEELS) return [];
  const uses = (wheel: Wheel): number => ring.meshes.filter((mesh) => mesh.wheels.includes(wheel)).length;
  const tried = wheels.flatMap((wheel) => {
    const deltas = Array.from({ length: MOST_TEETH }, (_, i) => [i + 1, -i - 1]).flat();
    return deltas.flatMap((delta): CountTried[] => {
      const teeth = wheel.teeth + delta;
      const edit: Edit = { kind: 'change', id: wheel.id, set: { teeth } };
      const edited = applyEdit(movement, edit);
      if (edited.kind === 'refused') return [];
      const after = plantMovement(edited.movement);
      if (after.disagreements.length > placed.disagreements.length) return [];
      const same = meshRings(meshesOf(edited.movement)).find(({ bodies }) => bodies.join() === ring.bodies.join());
      const closure = same && checkRing(same, after.places);
      const miss = closure && 'missTeeth' in closure ? Math.abs(closure.missTeeth) : undefined;
      if (miss === undefined) return [];
      return [{ wheel, teeth, miss: closure?.kind === 'closes' ? 0 : miss, edit }];
    });
  });
  return tried.sort(
    (a, b) =>
      a.miss - b.miss ||
      uses(b.wheel) - uses(a.wheel) ||
      Math.abs(a.teeth - a.wheel.teeth) - Math.abs(b.teeth - b.wheel.teeth),
  );
}

function closingCounts(placed: PlacedMovement, ring: MeshRing): Candidate[] {
  return countsTried(placed, ring)
    .filter(({ miss }) => miss === 0)
    .slice(0, MOST_ANSWERS)
    .map(({ wheel, teeth, edit }) => ({
      deed: { kind: 'giveTeeth', wheel: wheel.id, teeth, instead: wheel.teeth },
      edit,
    }));
}
