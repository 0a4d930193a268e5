/** One edit of a movement: it applies, or it is refused with a reason. The result always passes every check of a file. */
import { enablePatches, type Patch, produceWithPatches } from 'immer';
import { documentFaults } from '../checks/documentFaults.ts';
import { MAX_ARBORS } from '../quantities.ts';
import { problemAt } from '../read/problem.ts';
import type { Movement } from '../schema.ts';
import { planAccept, planClearMade, planDescribe, planLetStand, planSetMade, planWithdraw } from './changeDocument.ts';
import { planAdd, planChange, planMove, planRename, planReorder } from './changeItems.ts';
import {
  planLeaveOut,
  planSetCrossing,
  planSetDuty,
  planSetMeasured,
  planSetValue,
  planUseDepth,
} from './changeRules.ts';
import type { Edit, EditResult, Refused } from './edit.ts';
import { refused } from './items.ts';
import { planPaste } from './paste.ts';
import type { EditPlan } from './recipe.ts';
import { planRemoveBearing } from './removeBearing.ts';
import { planRemove } from './removeItems.ts';

enablePatches();

/** The movement after an edit, with the patches that lead there and back. */
export interface Edited {
  readonly kind: 'edited';
  readonly movement: Movement;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

/** The movement after the edit, or why it does not apply; the given movement stays as it is. Never throws on any edit. */
export function applyEdit(movement: Movement, edit: Edit): EditResult {
  const result = editWithPatches(movement, edit);
  return result.kind === 'refused' ? result : { kind: 'edited', movement: result.movement };
}

/** The same with the patches that lead there and back. */
export function editWithPatches(movement: Movement, edit: Edit): Edited | Refused {
  const result = unchecked(movement, edit);
  if (result.kind === 'refused' || result.movement === movement) return result;
  if (result.movement.arbors.length > MAX_ARBORS) return refused({ kind: 'tooManyArbors', most: MAX_ARBORS });
  const faults = documentFaults(result.movement);
  if (faults.length === 0) return result;
  return refused({ kind: 'unsound', problems: faults.map((fault) => problemAt(fault.path, fault)) });
}

/** Without the checks over the whole document, so that several edits may pass through a state that none would leave. */
function unchecked(movement: Movement, edit: Edit): Edited | Refused {
  if (edit.kind === 'several') return inTurn(movement, edit.edits);
  const plan = planOf(movement, edit);
  if (plan.kind === 'refused') return plan;
  const [next, patches, inverse] = produceWithPatches(movement, plan.run);
  return { kind: 'edited', movement: next, patches, inverse };
}

function inTurn(movement: Movement, edits: readonly Edit[]): Edited | Refused {
  let all: Edited = { kind: 'edited', movement, patches: [], inverse: [] };
  for (const edit of edits) {
    const next = unchecked(all.movement, edit);
    if (next.kind === 'refused') return next;
    const { patches, inverse } = next;
    all = {
      kind: 'edited',
      movement: next.movement,
      patches: [...all.patches, ...patches],
      inverse: [...inverse, ...all.inverse],
    };
  }
  return all;
}

function planOf(movement: Movement, edit: Exclude<Edit, { kind: 'several' }>): EditPlan {
  switch (edit.kind) {
    case 'add':
      return planAdd(movement, edit);
    case 'change':
      return planChange(movement, edit);
    case 'remove':
      return planRemove(movement, edit);
    case 'removeBearing':
      return planRemoveBearing(movement, edit);
    case 'move':
      return planMove(movement, edit);
    case 'setValue':
      return planSetValue(movement, edit);
    case 'setMeasured':
      return planSetMeasured(movement, edit);
    case 'useDepth':
      return planUseDepth(movement, edit);
    case 'leaveOut':
      return planLeaveOut(movement, edit);
    case 'setDuty':
      return planSetDuty(movement, edit);
    case 'setCrossing':
      return planSetCrossing(movement, edit);
    case 'rename':
      return planRename(movement, edit);
    case 'describe':
      return planDescribe(movement, edit);
    case 'paste':
      return planPaste(movement, edit);
    case 'reorder':
      return planReorder(movement, edit);
    case 'setMade':
      return planSetMade(movement, edit);
    case 'clearMade':
      return planClearMade(movement, edit);
    case 'letStand':
      return planLetStand(movement, edit);
    case 'accept':
      return planAccept(movement, edit);
    case 'withdraw':
      return planWithdraw(movement, edit);
  }
}
