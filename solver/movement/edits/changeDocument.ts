/** Edits of the document as a whole: how it is described, what was made, and which findings are accepted. */
import { castDraft } from 'immer';
import { made as madeSchema } from '../points.ts';
import { collectionNames } from '../references/collections.ts';
import { accepted as acceptedSchema, type Movement, movementSchema } from '../schema.ts';
import { changed } from './changeItems.ts';
import type { EditOf } from './edit.ts';
import { refused, soundValue } from './items.ts';
import { type EditPlan, recipe } from './recipe.ts';

/** Fields of the document that other edits change, or none. */
const NOT_DESCRIBED: readonly string[] = ['format', 'version', 'made', 'accepted', ...collectionNames];

/** Sets and unsets what describes the document as a whole: title, note, display, settings. */
export function planDescribe(movement: Movement, edit: EditOf<'describe'>): EditPlan {
  const fields = [...Object.keys(edit.set ?? {}), ...(edit.unset ?? [])];
  const barred = fields.find((field) => NOT_DESCRIBED.includes(field));
  if (barred !== undefined) return refused({ kind: 'notDescribed', field: barred });
  // The lists are long and stay as they are; only what describes the document is checked again.
  const { head, lists } = split(movement);
  const sound = soundValue<Record<string, unknown>>(movementSchema, changed(head, edit.set, edit.unset));
  if (sound.kind === 'refused') return sound;
  const next = { ...sound.item, ...lists };
  return recipe((draft) => {
    for (const field of Object.keys(draft)) if (!Object.hasOwn(next, field)) Reflect.deleteProperty(draft, field);
    for (const field of fields) if (Object.hasOwn(next, field)) Reflect.set(draft, field, Reflect.get(next, field));
  });
}

function split(movement: Movement): { head: Record<string, unknown>; lists: Record<string, unknown> } {
  const isList = (field: string): boolean => NOT_DESCRIBED.includes(field) && field !== 'format' && field !== 'version';
  const entries = Object.entries(movement);
  return {
    head: Object.fromEntries(entries.filter(([field]) => !isList(field))),
    lists: Object.fromEntries(entries.filter(([field]) => isList(field))),
  };
}

/** Notes what was made of a point in a plate; an earlier note of the same hole is kept as its history. */
export function planSetMade(movement: Movement, edit: EditOf<'setMade'>): EditPlan {
  const sound = soundValue<Movement['made'][number]>(madeSchema, edit.made);
  if (sound.kind === 'refused') return sound;
  const index = movement.made.findIndex(({ point, plate }) => point === sound.item.point && plate === sound.item.plate);
  const before = movement.made[index];
  const item = withStands(withEarlier(sound.item, before), before);
  return recipe((draft) => {
    draft.made.splice(index < 0 ? draft.made.length : index, index < 0 ? 0 : 1, castDraft(item));
  });
}

/** A place that was drilled before is kept beside the new state: what happened to the metal is not forgotten. */
function withEarlier(made: Movement['made'][number], before: Movement['made'][number] | undefined): typeof made {
  if (made.earlier || !before) return made;
  const { earlier = [], point: _, plate: __, stands: ___, ...state } = before;
  const all = state.at && !isSamePlace(made, before) ? [...earlier, state] : earlier;
  return all.length > 0 ? { ...made, earlier: all.slice(-EARLIER_KEPT) } : made;
}

function isSamePlace({ at }: Movement['made'][number], before: Movement['made'][number] | undefined): boolean {
  return before?.at !== undefined && at !== undefined && at[0] === before.at[0] && at[1] === before.at[1];
}

/** What was let stand because of a place stays with that place, and goes with it. */
function withStands(made: Movement['made'][number], before: Movement['made'][number] | undefined): typeof made {
  if (made.stands || !before?.stands || made.state !== before.state || !isSamePlace(made, before)) return made;
  return { ...made, stands: before.stands };
}

/** Notes rules that are let stand because of a drilled place, or asks them again. */
export function planLetStand(movement: Movement, edit: EditOf<'letStand'>): EditPlan {
  const index = movement.made.findIndex(({ point, plate }) => point === edit.point && plate === edit.plate);
  const made = movement.made[index];
  if (made?.state !== 'drilled') return refused({ kind: 'notDrilled', point: edit.point });
  const unknown = edit.rules.find((id) => !movement.rules.some((rule) => rule.id === id));
  if (unknown !== undefined) return refused({ kind: 'unknownPart', id: unknown });
  const others = (made.stands ?? []).filter((id) => !edit.rules.includes(id));
  const stands = edit.stands ? [...others, ...new Set(edit.rules)] : others;
  const sound = soundValue<Movement['made'][number]>(
    madeSchema,
    changed(made, { stands: stands.length > 0 ? stands : undefined }),
  );
  if (sound.kind === 'refused') return sound;
  return recipe((draft) => {
    draft.made[index] = castDraft(sound.item);
  });
}

/** As many former places as the schema holds. */
const EARLIER_KEPT = 200;

/** Takes the note away that a point was made in a plate. */
export function planClearMade(movement: Movement, edit: EditOf<'clearMade'>): EditPlan {
  const index = movement.made.findIndex(({ point, plate }) => point === edit.point && plate === edit.plate);
  if (index < 0) return refused({ kind: 'notMade', point: edit.point });
  return recipe((draft) => {
    draft.made.splice(index, 1);
  });
}

function sameFinding(
  a: { finding: string; parts: readonly string[] },
  b: { finding: string; parts: readonly string[] },
): boolean {
  return a.finding === b.finding && [...a.parts].sort().join(' ') === [...b.parts].sort().join(' ');
}

/** Accepts a finding as it is; one note a finding. */
export function planAccept(movement: Movement, edit: EditOf<'accept'>): EditPlan {
  const sound = soundValue<Movement['accepted'][number]>(acceptedSchema, edit.accepted);
  if (sound.kind === 'refused') return sound;
  const { item } = sound;
  const index = movement.accepted.findIndex((one) => sameFinding(one, item));
  return recipe((draft) => {
    draft.accepted.splice(index < 0 ? draft.accepted.length : index, index < 0 ? 0 : 1, castDraft(item));
  });
}

/** Takes the acceptance of a finding back. */
export function planWithdraw(movement: Movement, edit: EditOf<'withdraw'>): EditPlan {
  const index = movement.accepted.findIndex((one) => sameFinding(one, edit));
  if (index < 0) return refused({ kind: 'notAccepted' });
  return recipe((draft) => {
    draft.accepted.splice(index, 1);
  });
}
