/** What the marking of a plate can start from: its straight edges, the centre of a round plate, any two settled points. */

import { type Datum, type Face, markingPlan, markingSteps } from '../../solver/marking/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';

/** What can be chosen to start from. */
export interface Datums {
  readonly kinds: readonly { readonly kind: Datum['kind']; readonly says: string }[];
  /** Settled points of the plate, for a pair. */
  readonly points: readonly { readonly id: string; readonly label: string }[];
}

const SAYS: Readonly<Record<Datum['kind'], string>> = {
  edges: 'two edges of the plate',
  centre: 'the centre of the plate',
  pair: 'two points',
};

/** Only what the plate can give is offered. */
export function datumsFor(placed: PlacedMovement, plate: string | undefined, face: Face): Datums {
  const points = markingSteps(placed, { plate, face })
    .filter(({ kind }) => kind !== 'unsettled')
    .map(({ point, label }) => ({ id: point, label }));
  const usable = (['edges', 'centre'] as const).filter(
    (kind) => markingPlan(placed, { plate, face, datum: { kind } }).datum.kind === kind,
  );
  const kinds: Datum['kind'][] = points.length > 1 ? [...usable, 'pair'] : [...usable];
  return { kinds: kinds.map((kind) => ({ kind, says: SAYS[kind] })), points };
}

/** The datum chosen; nothing leaves the choice to the plate. A pair takes the first two points until others are named. */
export function datumOf(
  { kinds, points }: Datums,
  chosen: { readonly kind: string; readonly first: string; readonly second: string },
): Datum | undefined {
  const kind = kinds.find((each) => each.kind === chosen.kind)?.kind;
  if (kind !== 'pair') return kind && { kind };
  const first = points.find(({ id }) => id === chosen.first) ?? points[0];
  const second =
    points.find(({ id }) => id === chosen.second && id !== first?.id) ?? points.find(({ id }) => id !== first?.id);
  return first && second ? { kind, first: first.id, second: second.id } : undefined;
}
