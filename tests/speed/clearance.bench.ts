/**
 * Speed of the clearance checks: everything at once on 1,000 wheels and 50 posts, and one arbor dragged among them.
 *
 * The scene is a square field of arbors with a wheel and a pinion each, some of them planted too near each other on
 * purpose; the answer is counted against comparing every pair of wheels with every other, and a dragged check against
 * a fresh one.
 */
import { findPlanting } from '../../solver/clearance/findPlanting/findPlanting.ts';
import { planGapOf } from '../../solver/clearance/gaps/planGap.ts';
import { checkMovement, createChecker, solidsOf } from '../../solver/clearance/index.ts';
import type { ArborId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { movementOfFile, movementOfParts } from '../support/movements.ts';
import { HEADING, line, time } from './measure.ts';

const ARBORS = 500;
const POSTS = 50;
const ROW = 25;
/** Pitch of the field, mm, and how far every tenth arbor stands off it, towards its neighbour. */
const PITCH = 24;
const OFF = 3.2;
/** Goals of the issue, ms. */
const WHOLE_GOAL = 50;
const DRAG_GOAL = 2;
const FIND_GOAL = 20_000;

function demand(holds: boolean, what: string): void {
  if (!holds) throw new Error(`the answer that was timed is wrong: ${what}`);
}

function fieldOf(): Movement {
  const at = (i: number): [number, number] => {
    const off = i % 10 === 3 ? OFF : 0;
    return [(i % ROW) * PITCH + off, Math.floor(i / ROW) * PITCH];
  };
  const index = [...Array(ARBORS).keys()];
  const wheel = (id: string, arbor: number, teeth: number, level: number) => ({
    id,
    arbor: `A${arbor}`,
    teeth,
    size: { module: 0.5 },
    form: 'involute',
    level,
    thickness: 2,
  });
  return movementOfParts({
    arbors: index.map((i) => ({
      id: `A${i}`,
      at: at(i),
      diameter: 2,
      bearings: [
        { at: -3, bore: 1.02, pivot: 1, length: 2 },
        { at: 12, bore: 1.02, pivot: 1, length: 2 },
      ],
    })),
    wheels: index.flatMap((i) => [wheel(`w${i}`, i, 42, 0), wheel(`p${i}`, i, 14, 4)]),
    posts: [...Array(POSTS).keys()].map((i) => ({
      id: `P${i}`,
      at: [(i % ROW) * PITCH + PITCH / 2, Math.floor(i / ROW) * 2 * PITCH + PITCH / 2],
      diameter: 4,
      levels: { from: -3, to: 14 },
    })),
    rules: [
      ...index.map((i) => ({ id: `h${i}`, kind: 'held', point: `A${i}`, at: at(i), plusMinus: 0.02 })),
      ...[...Array(POSTS).keys()].map((i) => ({
        id: `k${i}`,
        kind: 'held',
        point: `P${i}`,
        at: [(i % ROW) * PITCH + PITCH / 2, Math.floor(i / ROW) * 2 * PITCH + PITCH / 2],
      })),
    ],
  });
}

/** A placing with other places or another document. */
function changed(placed: PlacedMovement, other: Partial<PlacedMovement>): PlacedMovement {
  const { movement, places, rules, order, freeMotions, motions, disagreements, plusMinusBetween } = placed;
  const same = { movement, places, rules, order, freeMotions, motions, disagreements, plusMinusBetween };
  return { ...same, ...other };
}

/** The placing with one arbor elsewhere, as a drag hands it over: all other places are the same objects. */
function withArborAt(placed: PlacedMovement, id: ArborId, dx: number): PlacedMovement {
  const places = new Map(placed.places);
  const place = placed.places.get(id);
  if (!place) throw new Error(`no place of ${id}`);
  const { state, placedBy, hangsOn, free, movedBy, spread, x, y } = place;
  places.set(id, { id, state, placedBy, hangsOn, free, movedBy, spread, x: x + dx, y });
  return changed(placed, { places });
}

export function run(): void {
  const movement = fieldOf();
  const placed = plantMovement(movement);
  const wheels = solidsOf(placed).filter((solid) => solid.role === 'wheel');
  let pairs = 0;
  wheels.forEach((first, i) => {
    for (const second of wheels.slice(i + 1)) {
      if (first.heights.to <= second.heights.from || second.heights.to <= first.heights.from) continue;
      if ((planGapOf(first, second)?.gap ?? 1) < 0.4) pairs++;
    }
  });
  const fouls = checkMovement(placed).filter((finding) => finding.parts.every((part) => part.startsWith('w')));
  demand(pairs > 20 && fouls.length === pairs, `${fouls.length} findings between wheels, ${pairs} by comparing all`);

  console.log(HEADING);
  // A movement of its own each time, so that nothing is known from the time before.
  const cold = time(
    () => {
      const fresh = { ...movement, wheels: [...movement.wheels] };
      return checkMovement(changed(placed, { movement: fresh }));
    },
    40,
    10,
  );
  const said = (goal: number, ms: number): string => `goal ${goal} ${ms <= goal ? 'met' : 'MISSED'}`;
  console.log(line('whole check, 1000 wheels and 50 posts', cold, said(WHOLE_GOAL, cold.medianMs)));

  const moved = 'A212' as ArborId; // in the middle of the field
  const steps = [...Array(40).keys()].map((n) => withArborAt(placed, moved, n * 0.1));
  for (const step of steps.slice(0, 5)) {
    const followed = createChecker(placed).moved(step).findings;
    demand(
      JSON.stringify(followed) === JSON.stringify(checkMovement(step)),
      'a followed check differs from a fresh one',
    );
  }
  let checker = createChecker(placed);
  const drag = time(
    (n) => {
      checker = checker.moved(steps[n % steps.length] ?? placed);
      return checker.findings;
    },
    400,
    100,
  );
  console.log(line('one arbor dragged among them', drag, said(DRAG_GOAL, drag.medianMs)));

  const moons = looseMoons();
  const start = performance.now();
  const found = findPlanting(moons);
  const ms = performance.now() - start;
  demand(found.kind === 'found' && found.answers.every(({ gapsLeft }) => gapsLeft === 0), 'a planting keeps every gap');
  console.log(`find a planting for the moons: ${(ms / 1000).toFixed(1)} s, ${said(FIND_GOAL, ms)}`);
}

/** The moons demo with its bearing and radius rules left out. */
function looseMoons(): PlacedMovement {
  const movement = movementOfFile('demo-data/moons-of-jupiter.json');
  const rules = movement.rules.filter(({ kind }) => kind === 'bearing' || kind === 'radius').map(({ id }) => id);
  const edited = applyEdit(movement, { kind: 'leaveOut', rules, leaveOut: true });
  if (edited.kind === 'refused') throw new Error(JSON.stringify(edited.why));
  return plantMovement(edited.movement);
}
