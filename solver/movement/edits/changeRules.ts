/** Edits of rules: their values, whether they count, and which crossing is meant. */
import { axesOf } from '../checks/axesOf.ts';
import { ruleKindInDocument } from '../ruleKinds/ruleKinds.ts';
import type { Movement } from '../schema.ts';
import { changed, replaceItem } from './changeItems.ts';
import type { EditOf } from './edit.ts';
import { draftItems, type Item, locate, nothingCalled, refused, soundItem } from './items.ts';
import { type EditPlan, recipe } from './recipe.ts';

function ruleCalled(movement: Movement, id: string): Movement['rules'][number] | undefined {
  return movement.rules.find((rule) => rule.id === id);
}

/** Gives a rule its value: mm, degrees or coordinates by its kind. A depth is held at it. */
export function planSetValue(movement: Movement, edit: EditOf<'setValue'>): EditPlan {
  const rule = ruleCalled(movement, edit.rule);
  if (rule === undefined) return nothingCalled(edit.rule);
  const { number } = ruleKindInDocument(rule.kind);
  if (number === undefined) return refused({ kind: 'noValue', rule: edit.rule });
  const value = typeof edit.value === 'number' ? edit.value : [...edit.value];
  return replaceItem(movement, edit.rule, changed(rule, { [number.field]: value, ...number.sets }));
}

/** Gives a depth its measured distance, mm, and lets that one count. */
export function planSetMeasured(movement: Movement, edit: EditOf<'setMeasured'>): EditPlan {
  const rule = ruleCalled(movement, edit.rule);
  if (rule === undefined) return nothingCalled(edit.rule);
  if (rule.kind !== 'depth') return refused({ kind: 'notADepth', rule: edit.rule });
  const { value, plusMinus, reading } = edit;
  const measured = changed(rule.measured ?? {}, { value, plusMinus, reading });
  return replaceItem(movement, edit.rule, changed(rule, { use: 'measured', measured }));
}

/** Chooses which of a depth's three distances counts. */
export function planUseDepth(movement: Movement, edit: EditOf<'useDepth'>): EditPlan {
  const rule = ruleCalled(movement, edit.rule);
  if (rule === undefined) return nothingCalled(edit.rule);
  if (rule.kind !== 'depth') return refused({ kind: 'notADepth', rule: edit.rule });
  return replaceItem(movement, edit.rule, changed(rule, { use: edit.use }));
}

/** Leaves rules out of the planting, or takes them in again; all or none. */
export function planLeaveOut(movement: Movement, edit: EditOf<'leaveOut'>): EditPlan {
  return planForRules(movement, edit.rules, { leaveOut: edit.leaveOut });
}

/** Tells rules to check, or leaves their duty to the order; a rule keeps its turn. */
export function planSetDuty(movement: Movement, edit: EditOf<'setDuty'>): EditPlan {
  return planForRules(movement, edit.rules, { duty: edit.duty === 'checks' ? 'checks' : undefined });
}

/** The same fields for several rules; all or none. */
function planForRules(movement: Movement, rules: readonly string[], set: Readonly<Record<string, unknown>>): EditPlan {
  const items: { index: number; item: Item }[] = [];
  for (const id of rules) {
    const index = movement.rules.findIndex((rule) => rule.id === id);
    const rule = movement.rules[index];
    if (rule === undefined) return nothingCalled(id);
    const sound = soundItem('rules', changed(rule, set));
    if (sound.kind === 'refused') return sound;
    items.push({ index, item: sound.item });
  }
  return recipe((draft) => {
    for (const { index, item } of items) draftItems(draft, 'rules')[index] = item;
  });
}

/** Records which crossing is meant; one place has one, so what stands at the same place loses its own. */
export function planSetCrossing(movement: Movement, edit: EditOf<'setCrossing'>): EditPlan {
  const found = locate(movement, edit.point);
  if (found === undefined) return nothingCalled(edit.point);
  if (!['arbors', 'posts', 'marks'].includes(found.collection)) {
    return refused({ kind: 'notAPoint', part: edit.point });
  }
  const own = soundItem(found.collection, changed(found.item, { crossing: edit.crossing }));
  if (own.kind === 'refused') return own;
  const axisOf = axesOf(movement);
  const axis = axisOf(edit.point);
  return recipe((draft) => {
    for (const list of [draft.arbors, draft.posts, draft.marks]) {
      for (const point of list) if (point.crossing && axisOf(point.id) === axis) delete point.crossing;
    }
    draftItems(draft, found.collection)[found.index] = own.item;
  });
}
