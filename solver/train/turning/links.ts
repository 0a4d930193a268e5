/**
 * Everything in a movement by which one arbor turns another, as a flat list of links.
 *
 * Senses. Depths: outside teeth turn against each other, an internal wheel turns with its mate. Couplings say their own
 * (`couplings/`).
 */

import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { ONE_PLACE } from '../../tolerances.ts';
import type { Join } from '../couplings/join.ts';
import { joinOf } from '../couplings/joins.ts';
import type { Axes } from './axes.ts';
import type { Link } from './linkage.ts';
import type { TurningProblem } from './turning.ts';
import type { Joining, TurningFault } from './turningFaults.ts';

/** All links of a movement, with what was wrong with some. */
export interface Links {
  readonly links: readonly Link[];
  readonly problems: readonly TurningProblem[];
}

type Draft = Omit<Link, 'arm'>;

const depthDraft = (id: Link['id'], a: Wheel, b: Wheel): Draft => ({
  ...(id === undefined ? {} : { id }),
  kind: 'depth',
  from: a.arbor,
  to: b.arbor,
  fromWheel: a.id,
  toWheel: b.id,
  fromTeeth: a.teeth,
  toTeeth: b.teeth,
  sense: a.internal !== b.internal ? 1 : -1,
});

/** Why two wheels cannot stand in depth, if so. */
function depthFault(a: Wheel, b: Wheel, axes: Axes): TurningFault | undefined {
  const wheels = [a.id, b.id] as const;
  if (a.id === b.id) return { kind: 'withItself', wheel: a.id };
  if (a.arbor === b.arbor) return { kind: 'onOneArbor', wheels, arbor: a.arbor };
  if (axes.sameAxis(a.arbor, b.arbor)) return { kind: 'onOneAxis', wheels };
  if (a.internal && b.internal) return { kind: 'bothInternal', wheels };
  const [ring, mate] = a.internal ? [a, b] : [b, a];
  if (!ring.internal || ring.teeth > mate.teeth) return undefined;
  return { kind: 'ringTooFew', wheels: [mate.id, ring.id], teeth: [mate.teeth, ring.teeth] };
}

/** What a coupling of an axis comes to: the arm that carries it, or why it counts for nothing. */
interface Standing {
  readonly arm?: ArborId;
  readonly problem?: TurningProblem;
}

/** The frame in which both centres stand still. */
function standingOf(draft: Draft, axes: Axes, at: ReadonlyMap<ArborId, readonly [number, number]>): Standing {
  const armFrom = axes.armOf(draft.from);
  const armTo = axes.armOf(draft.to);
  if (armFrom === armTo) return armFrom === undefined ? {} : { arm: armFrom };
  // One of the two is carried round the other, which must then stand on the axis of the arm.
  for (const [arm, other, carried] of [
    [armFrom, draft.to, draft.from],
    [armTo, draft.from, draft.to],
  ] as const) {
    if (arm === undefined) continue;
    if (axes.sameAxis(arm, other)) return { arm };
    if (axes.armOf(arm) !== axes.armOf(other)) continue;
    const here = at.get(other);
    const there = at.get(arm);
    if (here && there && Math.hypot(here[0] - there[0], here[1] - there[1]) < ONE_PLACE) return { arm };
    return {
      arm,
      problem: {
        kind: 'carrier',
        severity: 'warns',
        parts: [carried, other, arm],
        why: { kind: 'leavesEachOther', carried, other, arm },
      },
    };
  }
  return {
    problem: {
      kind: 'carrier',
      severity: 'stops',
      parts: [draft.from, draft.to],
      why: { kind: 'armsApart', arbors: [draft.from, draft.to] },
    },
  };
}

const missing = (id: WheelId | ArborId, joining: Joining): TurningProblem => ({
  kind: 'depth',
  severity: 'stops',
  parts: [id],
  why: { kind: 'partMissing', joining },
});

const turnsItself = (arbor: ArborId, wheel: WheelId): TurningProblem => ({
  kind: 'depth',
  severity: 'stops',
  parts: [arbor, wheel],
  why: { kind: 'turnsItself', arbor, wheel },
});

const singleDraft = (id: Link['id'], join: Extract<Join, { readonly by: 'arbor' }>, wheel: Wheel): Draft => ({
  ...(id === undefined ? {} : { id }),
  kind: join.kind,
  from: join.arbor,
  to: wheel.arbor,
  toWheel: wheel.id,
  fromTeeth: join.teeth,
  toTeeth: wheel.teeth,
  sense: join.senseOn(wheel),
});

/** All links of a movement, each with the arm on which it stands; those that make no sense are told and left out. */
export function linksOf(movement: Movement, axes: Axes): Links {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const at = new Map(movement.arbors.map((arbor) => [arbor.id, arbor.at]));
  const problems: TurningProblem[] = [];
  const links: Link[] = [];

  const put = (draft: Draft, joining: Joining): void => {
    const lost = [draft.from, draft.to].find((id) => !at.has(id));
    if (lost !== undefined) {
      problems.push(missing(lost, joining));
      return;
    }
    const { arm, problem } = standingOf(draft, axes, at);
    if (problem) problems.push(problem);
    if (problem?.severity !== 'stops') links.push(arm === undefined ? draft : { ...draft, arm });
  };
  const both = (ids: readonly [WheelId, WheelId], joining: Joining): readonly [Wheel, Wheel] | undefined => {
    const [a, b] = [wheels.get(ids[0]), wheels.get(ids[1])];
    if (a && b) return [a, b];
    problems.push(missing(a ? ids[1] : ids[0], joining));
    return undefined;
  };
  const mesh = (id: Link['id'], pair: readonly [Wheel, Wheel], joining: Joining, change: Partial<Draft> = {}): void => {
    const [a, b] = pair;
    // Axes at an angle may share what depths in the plane may not, but no arbor turns itself.
    const fault = joining !== 'depth' && a.arbor !== b.arbor ? undefined : depthFault(a, b, axes);
    if (fault === undefined) put({ ...depthDraft(id, a, b), ...change }, joining);
    else problems.push({ kind: 'depth', severity: 'stops', parts: [a.id, b.id], why: fault });
  };

  const turnWheel = (id: Link['id'], join: Extract<Join, { readonly by: 'arbor' }>): void => {
    const wheel = wheels.get(join.wheel);
    if (!wheel) problems.push(missing(join.wheel, join.kind));
    else if (wheel.arbor === join.arbor) problems.push(turnsItself(join.arbor, wheel.id));
    else put(singleDraft(id, join, wheel), join.kind);
  };

  for (const rule of movement.rules) {
    if (rule.kind !== 'depth' || rule.leaveOut) continue;
    const pair = both(rule.wheels, 'depth');
    if (pair) mesh(rule.id, pair, 'depth');
  }
  for (const coupling of movement.couplings) {
    const join = joinOf(coupling);
    if (join?.by === 'wheels') {
      const pair = both(join.wheels, join.kind);
      if (pair) mesh(coupling.id, pair, join.kind, { kind: join.kind, sense: join.sense });
    } else if (join) turnWheel(coupling.id, join);
  }
  for (const arbor of movement.arbors) {
    if (arbor.turns !== 'withArbor') continue;
    if (arbor.ridesOn) {
      put({ kind: 'fixed', from: arbor.ridesOn, to: arbor.id, fromTeeth: 1, toTeeth: 1, sense: 1 }, 'pipe');
    } else {
      problems.push({
        kind: 'depth',
        severity: 'warns',
        parts: [arbor.id],
        why: { kind: 'ridesOnNone', arbor: arbor.id },
      });
    }
  }
  return { links, problems };
}
