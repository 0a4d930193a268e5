/** Ticking a step off, and taking the tick off again, as edits of the movement. */

import type { MarkingStep } from '../../solver/marking/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';

/** What can be done with the tick of a point. */
export type Tick =
  /** May be ticked off, or the tick taken off. */
  | { readonly kind: 'ready'; readonly isTicked: boolean; readonly says: string; readonly edits: readonly Edit[] }
  /** Nothing to tick, and why. */
  | { readonly kind: 'fixed'; readonly isTicked: boolean; readonly why: string };

/**
 * What ticking does to a step. A drilled point is a fact with its place: its tick is not taken off here. The centre of a
 * round plate is no point of the movement: the plate itself keeps whether it is marked.
 */
export function tickOf(movement: Movement, step: MarkingStep, plate: string | undefined, date: string): Tick {
  if (step.kind === 'unsettled') return { kind: 'fixed', isTicked: false, why: 'It is not settled yet.' };
  const says = step.done ? `take the tick off ${step.label}` : `tick off ${step.label}`;
  const points = [...movement.arbors, ...movement.posts, ...movement.marks];
  const point: PointId | undefined = points.find(({ id }) => id === step.point)?.id;
  if (point === undefined) {
    if (plate === undefined) return { kind: 'fixed', isTicked: false, why: 'There is no plate to note it on.' };
    const edit: Edit = step.done
      ? { kind: 'change', id: plate, unset: ['centreMarked'] }
      : { kind: 'change', id: plate, set: { centreMarked: true } };
    return { kind: 'ready', isTicked: step.done, says, edits: [edit] };
  }
  const own = movement.made.filter((made) => made.point === point && isOn(made.plate, plate));
  if (own.some(({ state }) => state === 'drilled')) {
    return { kind: 'fixed', isTicked: true, why: 'It is drilled: where it stands is changed under As made.' };
  }
  if (step.done) {
    const edits = own.map(
      (made): Edit => ({ kind: 'clearMade', point, ...(made.plate === undefined ? {} : { plate: made.plate }) }),
    );
    return { kind: 'ready', isTicked: true, says, edits };
  }
  const known = movement.plates.find(({ id }) => id === plate)?.id;
  const made = { point, ...(known === undefined ? {} : { plate: known }), state: 'marked', date } as const;
  return { kind: 'ready', isTicked: false, says, edits: [{ kind: 'setMade', made }] };
}

/** What was made without naming a plate holds on every plate. */
const isOn = (made: string | undefined, plate: string | undefined): boolean =>
  made === undefined || plate === undefined || made === plate;
