/** What stands in the way of turning, in the maker's words. */
import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Rates } from './rates.ts';
import type { Train } from './trains.ts';
import type { ArborTurning, LockedRing, Turning, TurningProblem, TurningState } from './turning.ts';

type Drive = NonNullable<Turning['drive']>;

/** Arbors as the maker calls them. */
function namesOf(movement: Movement): (id: ArborId) => string {
  const names = new Map(movement.arbors.map(({ id, name }) => [id, name ?? id]));
  return (id) => names.get(id) ?? id;
}

/** Locked rings, and a drive that cannot turn for another reason. */
export function lockProblems(
  movement: Movement,
  rings: readonly LockedRing[],
  drive: Drive | undefined,
  rates: Rates,
  trains: readonly Train[],
  still: ReadonlySet<ArborId>,
): readonly TurningProblem[] {
  const nameOf = namesOf(movement);
  const problems: TurningProblem[] = rings.map((ring) => ({
    kind: 'locked',
    severity: 'stops',
    parts: ring.arbors,
    says: ring.says,
    remedy:
      ring.kind === 'senses'
        ? 'Put one idler more or one less in the ring, or leave out one of its depths.'
        : 'Change counts in the ring until once round comes to 1, or leave out one of its depths.',
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
    says:
      fixed.length > 0
        ? `The drive ${nameOf(drive.arbor)} cannot turn: it is joined by teeth to ${fixed.map(nameOf).join(', ')}, which never ${fixed.length > 1 ? 'turn' : 'turns'}.`
        : `The drive ${nameOf(drive.arbor)} cannot turn: the carriers and depths joined to it hold each other fast.`,
    remedy:
      fixed.length > 0
        ? `Let ${fixed.slice(0, 1).map(nameOf).join('')} turn, or leave out a depth between.`
        : 'Free one of the wheels on the axis of the carrier.',
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
  const nameOf = namesOf(movement);
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
      says: `Nothing drives ${idle.length > 12 ? `${idle.slice(0, 12).map(nameOf).join(', ')} and ${idle.length - 12} more` : idle.map(nameOf).join(', ')}.`,
      remedy: 'Put a depth or a coupling between them and the train, or fix a pipe to the arbor it rides on.',
    });
  }
  if (open.length > 0) {
    problems.push({
      kind: 'open',
      severity: 'warns',
      parts: open,
      says: `The rate of ${open.map(nameOf).join(', ')} is not settled: a carrier joins ${open.length > 1 ? 'them' : 'it'} to the drive, and its other side is free.`,
      remedy: 'Drive the other side as well, or fix one wheel on the axis of the arm (turns: never).',
    });
  }
  return problems;
}
