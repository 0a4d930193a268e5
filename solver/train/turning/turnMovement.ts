/**
 * How a movement turns: exact rates of every arbor, what the hands show, and what stands in the way.
 *
 * Links (links.ts) are gathered into trains on each arm and on the plates (trains.ts); the few unknowns that arms
 * leave are solved exactly (rates.ts). Time grows with the number of links.
 */
import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { type Axes, turningAxesOf } from './axes.ts';
import { indicationsOf } from './indications.ts';
import type { Link, Sense, TurningState } from './linkage.ts';
import { linksOf } from './links.ts';
import { secondsOf } from './periods.ts';
import { type Rates, ratesOf } from './rates.ts';
import { divide, isZero, magnitude, type Rational, subtract, toNumber } from './rational.ts';
import { reachedFrom } from './reach.ts';
import { sharedAxesOf } from './sharedAxes.ts';
import { type Train, trainsOn } from './trains.ts';
import type { ArborTurning, Rate, Turning, TurningProblem } from './turning.ts';
import type { TurningFault } from './turningFaults.ts';
import { lockProblems, restProblems } from './turningProblems.ts';

type Drive = NonNullable<Turning['drive']>;

const OTHER: Readonly<Record<Sense, Sense>> = {
  clockwise: 'anticlockwise',
  anticlockwise: 'clockwise',
  still: 'still',
};

/** A signed rate in turns of the drive as a `Rate`. */
function rateOf(turns: Rational, drive: Drive): Rate {
  if (isZero(turns)) return { turns, sense: 'still' };
  const seconds = divide(drive.periodSeconds, magnitude(turns));
  return {
    turns,
    sense: turns.n > 0n ? drive.sense : OTHER[drive.sense],
    periodSeconds: toNumber(seconds),
    period: seconds,
  };
}

function driveOf(movement: Movement, problems: TurningProblem[]): Drive | undefined {
  const { drive } = movement;
  const fail = (why: TurningFault): undefined => {
    problems.push({ kind: 'drive', severity: 'warns', parts: drive ? [drive.arbor] : [], why });
  };
  if (!drive) return fail({ kind: 'noDrive' });
  if (!movement.arbors.some((arbor) => arbor.id === drive.arbor)) return fail({ kind: 'driveMissing' });
  const periodSeconds = secondsOf(drive.period);
  if (!periodSeconds) return fail({ kind: 'drivePeriod', value: drive.period.value });
  return { arbor: drive.arbor, periodSeconds, sense: drive.sense };
}

/** Trains of every frame, those of the drive first, and every arbor in the frame of its own arm. */
function allTrains(movement: Movement, axes: Axes, links: readonly Link[], drive: Drive | undefined): readonly Train[] {
  const byArm = new Map<ArborId | undefined, { links: Link[]; start: ArborId[] }>();
  const frame = (arm: ArborId | undefined): { links: Link[]; start: ArborId[] } => {
    const found = byArm.get(arm) ?? { links: [], start: [] };
    byArm.set(arm, found);
    return found;
  };
  const arbors = movement.arbors.map((arbor) => arbor.id);
  for (const id of drive ? [drive.arbor, ...arbors] : arbors) frame(axes.armOf(id)).start.push(id);
  for (const link of links) frame(link.arm).links.push(link);
  return [...byArm].flatMap(([arm, found]) => trainsOn(arm, found.links, found.start));
}

/**
 * How the movement turns.
 *
 * @returns rates as exact fractions of the drive's turns, senses as seen from the marked face and from behind,
 * periods, rates against carriers, indications with their errors, locked rings, misfits of shared axes, and
 * everything that stands in the way as `problems`, worst first. Any movement gets an answer: parts that make no
 * sense are told and left out.
 */
export function turnMovement(movement: Movement): Turning {
  const problems: TurningProblem[] = [];
  const drive = driveOf(movement, problems);
  const axes = turningAxesOf(movement);
  const { links, problems: linkProblems } = linksOf(movement, axes);
  problems.push(...axes.problems, ...linkProblems);

  const trains = allTrains(movement, axes, links, drive);
  const still = new Set(movement.arbors.filter((arbor) => arbor.turns === 'never').map((arbor) => arbor.id));
  const rates = ratesOf(trains, axes, drive?.arbor, still);
  const lockedRings = trains.flatMap((train) => train.rings);
  problems.push(...lockProblems(lockedRings, drive, rates, trains, still));

  const reached = reachedFrom(drive, links, axes, movement);
  const locked = lockedArbors(trains, axes, drive, rates, reached);
  const arbors = new Map<ArborId, ArborTurning>();
  for (const { id } of movement.arbors) {
    arbors.set(id, arborTurning(id, { drive, axes, rates, reached, locked, still }));
  }
  problems.push(...restProblems(movement, arbors, drive));

  const sharedAxes = sharedAxesOf(movement, axes);
  for (const shared of sharedAxes) {
    if (!shared.fits) {
      problems.push({
        kind: 'sharedAxis',
        severity: 'warns',
        parts: shared.depths.flatMap((depth) => depth.wheels),
        why: { kind: 'axesDisagree', shared },
      });
    }
  }
  const shown = indicationsOf(movement, drive, arbors);
  problems.push(...shown.problems);
  const order = { stops: 0, warns: 1, notes: 2 };
  return {
    ...(drive ? { drive } : {}),
    arbors,
    wheels: new Map(
      movement.wheels.flatMap((wheel) => {
        const turning = arbors.get(wheel.arbor);
        return turning ? [[wheel.id, turning] as const] : [];
      }),
    ),
    links,
    lockedRings,
    sharedAxes,
    indications: shown.indications,
    problems: problems.sort((a, b) => order[a.severity] - order[b.severity]),
  };
}

/** What has been worked out before an arbor is told. */
interface Known {
  readonly drive: Drive | undefined;
  readonly axes: Axes;
  readonly rates: Rates;
  readonly reached: ReadonlyMap<ArborId, Link | undefined>;
  readonly locked: ReadonlySet<ArborId>;
  readonly still: ReadonlySet<ArborId>;
}

function arborTurning(id: ArborId, known: Known): ArborTurning {
  const { drive, axes, rates, reached, locked, still } = known;
  const arm = axes.armOf(id);
  const turns = rates.of(id);
  const settled = turns !== 'open' && drive !== undefined && rates.driveTurns;
  const state: TurningState = locked.has(id)
    ? 'locked'
    : still.has(id) && arm === undefined
      ? 'still'
      : !settled
        ? reached.has(id) && rates.driveTurns
          ? 'open'
          : 'notDriven'
        : isZero(turns)
          ? 'still'
          : 'turns';
  const link = reached.get(id);
  const rate = settled && (state === 'turns' || state === 'still') ? rateOf(turns, drive) : undefined;
  const armTurns = arm === undefined ? 'open' : rates.of(arm);
  return {
    id,
    state,
    ...(rate ? { rate, senseFromBehind: OTHER[rate.sense] } : {}),
    ...(link ? { drivenBy: link } : {}),
    ...(arm === undefined
      ? {}
      : {
          carrier: {
            arm,
            ...(rate && drive && armTurns !== 'open' ? { rate: rateOf(subtract(rate.turns, armTurns), drive) } : {}),
          },
        }),
  };
}

/** Arbors of trains with a locked ring; where the drive cannot turn, all that is joined to it. */
function lockedArbors(
  trains: readonly Train[],
  axes: Axes,
  drive: Drive | undefined,
  rates: Rates,
  reached: ReadonlyMap<ArborId, Link | undefined>,
): ReadonlySet<ArborId> {
  const locked = new Set<ArborId>();
  for (const train of trains) {
    if (train.rings.length > 0) {
      for (const arbor of train.ratios.keys()) {
        if (axes.armOf(arbor) === train.arm && train.arm === undefined) locked.add(arbor);
      }
    }
  }
  if (drive && !rates.driveTurns) for (const arbor of reached.keys()) locked.add(arbor);
  return locked;
}
