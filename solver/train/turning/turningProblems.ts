/** What stands in the way of turning once all rates are known. */
import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { LockedRing, TurningState } from './linkage.ts';
import type { Rates } from './rates.ts';
import type { Train } from './trains.ts';
import type { ArborTurning, Turning, TurningProblem } from './turning.ts';

type Drive = NonNullable<Turning['drive']>;

/** Locked rings, and a drive that cannot turn for another reason. */
export function lockProblems(
  rings: readonly LockedRing[],
  drive: Drive | undefined,
  rates: Rates,
  trains: readonly Train[],
  still: ReadonlySet<ArborId>,
): readonly TurningProblem[] {
  const problems: TurningProblem[] = rings.map((ring) => ({
    kind: 'locked',
    severity: 'stops',
    parts: ring.arbors,
    why: { kind: 'ringLocked', ring },
  }));
  if (!drive || rates.driveTurns || trains.some((train) => train.rings.length > 0 && train.ratios.has(drive.arbor))) {
    return problems;
  }
  const train = trains.find((candidate) => candidate.ratios.has(drive.arbor));
  const fixed = train ? [...train.ratios.keys()].filter((id) => still.has(id)) : [];
  problems.push({
    kind: 'locked',
    severity: 'stops',
    parts: [drive.arbor, ...fixed],
    why: { kind: 'driveHeld', drive: drive.arbor, fixed },
  });
  return problems;
}

/** Arbors that nothing turns, or that a carrier leaves open. */
export function restProblems(
  movement: Movement,
  arbors: ReadonlyMap<ArborId, ArborTurning>,
  drive: Drive | undefined,
): readonly TurningProblem[] {
  if (!drive) return [];
  const withState = (state: TurningState): ArborId[] =>
    movement.arbors.filter((arbor) => arbors.get(arbor.id)?.state === state).map((arbor) => arbor.id);
  const problems: TurningProblem[] = [];
  const idle = withState('notDriven');
  const open = withState('open');
  if (idle.length > 0) {
    problems.push({
      kind: 'notDriven',
      severity: 'notes',
      parts: idle,
      why: { kind: 'notDriven', arbors: idle },
    });
  }
  if (open.length > 0) {
    problems.push({
      kind: 'open',
      severity: 'warns',
      parts: open,
      why: { kind: 'open', arbors: open },
    });
  }
  return problems;
}
