/** `depthwright turns`: turns, senses and periods of every arbor, and what the hands show. */
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import {
  type ArborTurning,
  type IndicationTurning,
  type Rate,
  type Turning,
  turnMovement,
} from '../../solver/train/index.ts';
import { digitsOf, fractionText } from '../../solver/train/turning/rational.ts';
import type { Speaker } from '../../solver/words/index.ts';
import {
  indicationSays,
  lockedRingSays,
  periodSays,
  sharedAxesSay,
  TURNING_STATES,
  turningFaultWords,
  turningProblemSays,
} from '../../solver/words/train/index.ts';
import type { Answer } from './answer.ts';
import { inBlocks, inColumns } from './columns.ts';
import { plainSpeaker } from './plainSpeaker.ts';
import { titleLine } from './plantAnswer.ts';

const periodOf = ({ period }: Rate): string => (period ? periodSays(period) : 'stands still');

const COLUMNS = ['arbor', 'turns', 'digits', 'from the face', 'from behind', 'one turn in', 'on its arm'].map(
  (head) => ({ head }),
);

function arborRow({ id, state, rate, senseFromBehind, carrier }: ArborTurning, { name, exact }: Speaker): string[] {
  const turns = state === 'turns' ? rate : undefined;
  return [
    name(id),
    turns ? fractionText(turns.turns) : TURNING_STATES[state],
    turns ? exact(turns.turns) : '',
    turns?.sense ?? '',
    (turns && senseFromBehind) ?? '',
    turns ? periodOf(turns) : '',
    carrier?.rate ? `${fractionText(carrier.rate.turns)} on ${name(carrier.arm)}, ${carrier.rate.sense}` : '',
  ];
}

/** A heading with its lines; nothing where there are none. */
function section(title: string, lines: readonly string[]): readonly string[] {
  return lines.length > 0 ? [`${title}:`, ...lines] : [];
}

function textOf(turning: Turning, movement: Movement, speaker: Speaker): string {
  const { drive } = turning;
  const driven = drive
    ? `Drive ${speaker.name(drive.arbor)}, ${drive.sense} as seen from the marked face.`
    : 'Nothing drives the movement.';
  const rows = [...turning.arbors.values()].map((arbor) => arborRow(arbor, speaker));
  return inBlocks([
    [titleLine(movement)],
    [driven, ...inColumns(COLUMNS, rows)],
    section(
      'Indications',
      turning.indications.map((shown) => indicationSays(shown, speaker)),
    ),
    section(
      'Shared axes',
      turning.sharedAxes.map((shared) => sharedAxesSay(shared, speaker)),
    ),
    section(
      'To see to',
      turning.problems.map((problem) => turningProblemSays(problem, speaker)),
    ),
  ]);
}

function rateJson(rate: Rate): object {
  const { turns, sense, periodSeconds } = rate;
  return { turns: fractionText(turns), digits: digitsOf(turns), sense, period: periodOf(rate), periodSeconds };
}

function arborJson({ id, state, rate, senseFromBehind, carrier }: ArborTurning): object {
  return {
    id,
    state,
    rate: rate && rateJson(rate),
    senseFromBehind,
    carrier: carrier && { arm: carrier.arm, rate: carrier.rate && rateJson(carrier.rate) },
  };
}

function indicationJson(shown: IndicationTurning, speaker: Speaker): object {
  const { id, arbor, senseIsWrong, wantedPeriod, achievedPeriod } = shown;
  const { errorPpm, gainSecondsPerDay, yearsPerDay, withinTolerance } = shown;
  return {
    id,
    arbor,
    name: speaker.indication(id),
    says: indicationSays(shown, speaker),
    senseIsWrong,
    wantedPeriod: wantedPeriod && periodSays(wantedPeriod),
    achievedPeriod: achievedPeriod && periodSays(achievedPeriod),
    errorPpm,
    gainSecondsPerDay,
    yearsPerDay,
    withinTolerance,
  };
}

/** Plain data: fractions as text; what does not apply is left out when it is printed. */
function jsonOf(turning: Turning, movement: Movement, speaker: Speaker): object {
  const { drive } = turning;
  return {
    title: movement.title,
    drive: drive && { arbor: drive.arbor, periodSeconds: fractionText(drive.periodSeconds), sense: drive.sense },
    arbors: [...turning.arbors.values()].map(arborJson),
    indications: turning.indications.map((shown) => indicationJson(shown, speaker)),
    lockedRings: turning.lockedRings.map((ring) => ({
      arbors: ring.arbors,
      kind: ring.kind,
      says: lockedRingSays(ring, speaker),
    })),
    problems: turning.problems.map(({ kind, severity, parts, why }) => ({
      kind,
      severity,
      parts,
      ...turningFaultWords(why, speaker),
    })),
  };
}

/** Turns, senses and periods of every arbor, and what the hands show. Notes alone are fine. */
export function turnsAnswer({ movement }: PlacedMovement): Answer {
  const turning = turnMovement(movement);
  const speaker = plainSpeaker(movement);
  const isFine = turning.problems.every(({ severity }) => severity === 'notes');
  return {
    text: textOf(turning, movement, speaker),
    json: jsonOf(turning, movement, speaker),
    code: isFine ? 0 : 1,
  };
}
