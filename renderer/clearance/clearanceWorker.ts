/** Long work on clearance, off the window's thread: plantings, safe places, whether a train runs. Ended from outside. */
import { checkMovement, findPlantingSteps, remediesFor } from '../../solver/clearance/index.ts';
import { rehearseSteps } from '../../solver/clearance/rehearsal/index.ts';
import { safePlacesOf } from '../../solver/clearance/safe/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { isLarge } from '../state/derive/followingCheck.ts';
import type { ClearanceMessage, ClearanceTask } from './clearanceTask.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope; // this file only runs as a worker
const post = (message: ClearanceMessage): void => scope.postMessage(message);

scope.onmessage = ({ data }: MessageEvent<ClearanceTask>) => {
  try {
    if (data.kind === 'findPlanting') find(data);
    else if (data.kind === 'rehearse') run(data);
    else if (data.kind === 'slowCheck') check(data.movement);
    else post({ kind: 'safe', places: safePlacesOf(plantMovement(data.movement), data.point) });
  } catch (error) {
    post({ kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
};

/** Findings whose cures are tried before they are asked for: as many as the strip shows at once. */
const MOST_CURED = 5;

/** First what is quick to find, then what takes longer, then how the worst of it is cured. */
function check(movement: Movement): void {
  const placed = plantMovement(movement);
  if (isLarge(movement)) post({ kind: 'checked', findings: checkMovement(placed), cures: [], more: true });
  const findings = checkMovement(placed, { depths: true });
  post({ kind: 'checked', findings, cures: [], more: findings.length > 0 });
  if (findings.length === 0) return;
  const cures = findings.slice(0, MOST_CURED).map((finding) => {
    const tried = remediesFor(placed, finding).map(({ movement: _changed, ...cure }) => cure);
    return [finding.key, tried] as const;
  });
  post({ kind: 'checked', findings, cures, more: false });
}

function find({ movement, options }: Extract<ClearanceTask, { kind: 'findPlanting' }>): void {
  const search = findPlantingSteps(plantMovement(movement), options);
  for (let next = search.next(); ; next = search.next()) {
    if (!next.done) {
      post({ kind: 'progress', ...next.value });
      continue;
    }
    const found = next.value;
    if (found.kind === 'none') post({ kind: 'noPlanting', why: found.why });
    else {
      // A planting holds functions and stays here; the edit says all of it.
      const answers = found.answers.map(({ edit, gapsLeft, surplus }) => ({ edit, gapsLeft, surplus }));
      post({ kind: 'plantings', answers, tries: found.tries });
    }
    return;
  }
}

function run({ movement, options }: Extract<ClearanceTask, { kind: 'rehearse' }>): void {
  const rehearsal = rehearseSteps(plantMovement(movement), options);
  for (let next = rehearsal.next(); ; next = rehearsal.next()) {
    if (!next.done) {
      post({ kind: 'progress', done: next.value.done });
      continue;
    }
    const { value } = next;
    post(value.kind === 'none' ? { kind: 'noRehearsal', why: value.why } : { kind: 'rehearsed', report: value });
    return;
  }
}
