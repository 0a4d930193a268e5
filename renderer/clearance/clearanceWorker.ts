/** Long work on clearance, off the window's thread: plantings, safe places, whether a train runs. */

import { findPlantingSteps } from '../../solver/clearance/findPlanting/index.ts';
import { checkMovement, remediesFor } from '../../solver/clearance/index.ts';
import { rehearseSteps } from '../../solver/clearance/rehearsal/index.ts';
import { safePlacesOf } from '../../solver/clearance/safe/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Steps } from '../../solver/steps.ts';
import { type ServingScope, serve, sparingSteps } from '../desk/serve.ts';
import { isLarge } from '../state/derive/followingCheck.ts';
import type { ClearanceWork, SlowCheck } from './clearanceWork.ts';

/** Findings whose cures are tried before they are asked for: as many as the strip shows at once. */
const MOST_CURED = 5;

/** First what is quick to find, then what takes longer, then how the worst of it is cured. */
function* slowCheckSteps(placed: PlacedMovement): Steps<SlowCheck, SlowCheck> {
  if (isLarge(placed.movement)) yield { findings: checkMovement(placed), cures: [] };
  const findings = checkMovement(placed, { depths: true });
  if (findings.length > 0) yield { findings, cures: [] };
  const cures = findings.slice(0, MOST_CURED).map((finding) => {
    const tried = remediesFor(placed, finding).map(({ movement: _changed, ...cure }) => cure);
    return [finding.key, tried] as const;
  });
  return { findings, cures };
}

// This file only runs as a worker.
serve<ClearanceWork>(self as unknown as ServingScope, {
  *findPlanting(options, placed) {
    const found = yield* sparingSteps(findPlantingSteps(placed(), options));
    if (found.kind === 'none') return found;
    // A planting holds functions and stays here; the edit says all of it.
    const answers = found.answers.map(({ edit, gapsLeft, surplus }) => ({ edit, gapsLeft, surplus }));
    return { kind: 'plantings', answers, tries: found.tries };
  },
  *rehearse(options, placed) {
    return yield* sparingSteps(rehearseSteps(placed(), options));
  },
  slowCheck: (_nothing, placed) => slowCheckSteps(placed()),
  // biome-ignore lint/correctness/useYield: it is over in one step
  *safePlaces(point, placed) {
    return safePlacesOf(placed(), point);
  },
});
