/**
 * The laws of planting on random movements with more rules than they need: duties come from the drawing, upstream stands
 * still, what checks moves nothing. Each law is looked at in every case; "identical" is to the bit.
 */
import { isSettled } from '../../electron/cli/plantAnswer.ts';
import { applyEdit, type Edit } from '../../solver/movement/index.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import { networkOf, plantMovement, plantNetwork, RuleKind } from '../../solver/planting/index.ts';
import { reduceNetwork } from '../../solver/planting/kernel/reduce.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { randomFrom } from '../planting/randomMovement.ts';
import { spareMovement } from '../planting/scenes/spareMovement.ts';
import { hanging } from './facts.ts';
import { type Proof, type Table, tableLines } from './proof.ts';

/** One movement, planted, with chance of its own. */
interface Given {
  readonly movement: Movement;
  readonly placed: PlacedMovement;
  readonly random: () => number;
}

function pick<T>(list: readonly T[], random: () => number): T {
  const item = list[Math.floor(random() * list.length)];
  if (item === undefined) throw new Error('nothing to pick from');
  return item;
}

const duties = ({ rules }: PlacedMovement): string =>
  [...rules.values()]
    .map(({ id, duty }) => `${id} ${duty}`)
    .sort()
    .join();

const isSamePlaces = (a: PlacedMovement, b: PlacedMovement, but: ReadonlySet<string> = new Set()): boolean =>
  [...a.places.values()].every(({ id, x, y }) => {
    const other = b.places.get(id);
    return but.has(id) || (other?.x === x && other.y === y);
  });

function edited(movement: Movement, edit: Edit): Movement {
  const result = applyEdit(movement, edit);
  if (result.kind === 'refused') throw new Error(JSON.stringify(result));
  return result.movement;
}

const drilled = (movement: Movement, point: string, at: readonly [number, number]): Movement =>
  edited(movement, { kind: 'setMade', made: { point, state: 'drilled', at: [at[0], at[1]] } });

function numbered(rule: Rule, by: number): Rule {
  switch (rule.kind) {
    case 'distance':
    case 'radius':
      return { ...rule, length: rule.length + by };
    case 'depth':
      return rule.held === undefined ? rule : { ...rule, held: rule.held + by };
    case 'clearBy':
      return { ...rule, gap: Math.max(0, rule.gap + by) };
    case 'bearing':
      return { ...rule, angle: rule.angle + by };
    default:
      return rule;
  }
}

const hasNumber = ({ kind }: Rule): boolean => ['distance', 'radius', 'depth', 'clearBy', 'bearing'].includes(kind);

/** Points that a rule speaks of. */
function pointsOf({ movement, placed }: Given, rule: Rule): string[] {
  const text = JSON.stringify(rule);
  const arbors = rule.kind === 'depth' ? rule.wheels.map((id) => movement.wheels.find((w) => w.id === id)?.arbor) : [];
  return [...placed.places.keys()].filter((id) => text.includes(`"${id}"`) || arbors.includes(id as never));
}

function shuffledArbors({ movement, random }: Given): Movement {
  const mixed = <T>(list: readonly T[]): T[] =>
    list
      .map((item) => [random(), item] as const)
      .sort(([a], [b]) => a - b)
      .map(([, item]) => item);
  return { ...movement, arbors: mixed(movement.arbors), marks: mixed(movement.marks) };
}

const LAWS = {
  '1 duties: shuffled points': (given) => duties(plantMovement(shuffledArbors(given))) === duties(given.placed),
  '1 duties: other lengths': ({ movement, placed, random }) =>
    duties(plantMovement({ ...movement, rules: movement.rules.map((r) => numbered(r, 0.02 * (random() - 0.5))) })) ===
    duties(placed),
  '1 duties: other sketch': ({ movement, placed, random }) => {
    const moved = <T extends { at: readonly [number, number] }>(item: T): T => ({
      ...item,
      at: [item.at[0] + random() - 0.5, item.at[1] + random() - 0.5],
    });
    const other = { ...movement, arbors: movement.arbors.map(moved), marks: movement.marks.map(moved) };
    return duties(plantMovement(other)) === duties(placed);
  },
  '1 duties: warm and cold': ({ movement, placed }) => {
    const warm = plantMovement({ ...movement }, placed);
    return duties(warm) === duties(placed) && isSamePlaces(warm, placed);
  },
  '2 rows and motions': ({ movement, random }) => {
    const left = edited(movement, { kind: 'leaveOut', rules: [pick(movement.rules, random).id], leaveOut: true });
    const { network } = networkOf(left);
    const { checks, freeMotions } = plantNetwork(network);
    const { unknown } = reduceNetwork(network, Float64Array.from(network.coords));
    const rows = Array.from(checks).filter((c, r) => !c && (network.kinds[r] ?? 0) < RuleKind.samePlace).length;
    return rows + freeMotions === 2 * unknown.reduce((sum, one) => sum + one, 0);
  },
  '3 a hole at the drawn place': ({ movement, placed, random }) => {
    const { id, x, y } = pick([...placed.places.values()], random);
    const now = plantMovement(drilled(movement, id, [x, y]));
    const stays = [...now.places.values()].every((place) => {
      const was = placed.places.get(place.id);
      return was !== undefined && Math.hypot(place.x - was.x, place.y - was.y) < 1e-9;
    });
    const others = [...now.rules.values()].filter(({ duty }) => duty !== 'released');
    return stays && now.freeMotions === 0 && others.every((r) => r.duty === placed.rules.get(r.id)?.duty);
  },
  '4 two holes in either order': ({ movement, placed, random }) => {
    const places = [...placed.places.values()];
    const [a, b] = [pick(places, random), pick(places, random)];
    if (a.x === b.x && a.y === b.y) return true;
    const one = drilled(drilled(movement, a.id, [a.x + 0.05, a.y]), b.id, [b.x, b.y - 0.04]);
    const other = drilled(drilled(movement, b.id, [b.x, b.y - 0.04]), a.id, [a.x + 0.05, a.y]);
    const [p, q] = [plantMovement(one), plantMovement(other)];
    return duties(p) === duties(q) && isSamePlaces(p, q);
  },
  '5 a rule appended, or a check changed or left out': ({ movement, placed, random }) => {
    const [a, b] = [pick([...placed.places.values()], random), pick([...placed.places.values()], random)];
    const length = Math.hypot(a.x - b.x, a.y - b.y) + 0.3;
    // Between two axes that have a gap already a length outranks it: the stated pair rule.
    const stands = (id: string, at: { x: number; y: number }): boolean => {
      const place = placed.places.get(id as never); // an id of the movement
      return place?.x === at.x && place.y === at.y;
    };
    const isPair = movement.rules.some(
      (r) => r.kind === 'clearBy' && r.parts.some((id) => stands(id, a)) && r.parts.some((id) => stands(id, b)),
    );
    const appended =
      isPair || length < 1 || (a.x === b.x && a.y === b.y)
        ? movement
        : edited(movement, {
            kind: 'add',
            to: 'rules',
            item: { kind: 'distance', id: 'more', points: [a.id, b.id], length },
          });
    if (!isSamePlaces(placed, plantMovement(appended))) return false;
    // A gap that a length between the same axes outranks gives that one its turn: the stated pair rule again.
    const checks = movement.rules.filter(
      ({ id, kind }) => kind !== 'clearBy' && placed.rules.get(id)?.duty === 'checks',
    );
    if (checks.length === 0) return true;
    const check = pick(checks, random);
    const without = edited(movement, { kind: 'leaveOut', rules: [check.id], leaveOut: true });
    const changed = { ...movement, rules: movement.rules.map((r) => (r.id === check.id ? numbered(r, 0.2) : r)) };
    return isSamePlaces(placed, plantMovement(without)) && isSamePlaces(placed, plantMovement(changed));
  },
  '6 a placing rule left out': (given) => {
    const { movement, placed, random } = given;
    const placing = movement.rules.filter((r) => hasNumber(r) && placed.rules.get(r.id)?.duty === 'places');
    if (placing.length === 0) return true;
    const rule = pick(placing, random);
    const order = (id: string): number => placed.order.findIndex(({ points }) => points.some((each) => each === id));
    const [last = ''] = pointsOf(given, rule).sort((a, b) => order(b) - order(a));
    const without = edited(movement, { kind: 'leaveOut', rules: [rule.id], leaveOut: true });
    return isSamePlaces(placed, plantMovement(without), hanging(placed, [last]));
  },
  '7 a hole measured again': ({ movement, placed, random }) => {
    const { id, x, y } = pick([...placed.places.values()], random);
    const [one, other] = [0, 1].map(() =>
      plantMovement(drilled(movement, id, [x + 0.4 * (random() - 0.5), y + 0.4 * (random() - 0.5)])),
    );
    return one !== undefined && other !== undefined && duties(one) === duties(other);
  },
  '9 a rule doubled': ({ movement, placed, random }) => {
    const rule = pick(movement.rules.filter(hasNumber), random);
    const double = { ...numbered(rule, 0.05), id: 'double' as typeof rule.id };
    const now = plantMovement({ ...movement, rules: [...movement.rules, double] });
    return isSamePlaces(placed, now) && now.rules.get(double.id)?.duty === 'checks';
  },
  '10 no direction at its own centre': ({ movement, placed }) =>
    movement.rules.every((rule) => {
      if (rule.kind !== 'bearing' || placed.rules.get(rule.id)?.duty !== 'places') return true;
      const [p, c] = [placed.places.get(rule.point), placed.places.get(rule.centre)];
      return p !== undefined && c !== undefined && Math.hypot(p.x - c.x, p.y - c.y) > 0.001;
    }),
  '11 nothing is fine with a check over': ({ movement, random }) => {
    const rules = movement.rules.map((r) => (hasNumber(r) && random() < 0.2 ? numbered(r, 0.2) : r));
    const now = plantMovement({ ...movement, rules });
    const told = now.disagreements.flatMap(({ cause }) => (cause.kind === 'over' ? [cause.check, ...cause.also] : []));
    const isOver = [...now.rules.values()].some(({ role }) => role === 'disagrees');
    return new Set(told).size === told.length && !(isOver && isSettled(now));
  },
  '12 ± from what places': ({ movement, placed }) => {
    const stated = (all: boolean): PlacedMovement =>
      plantMovement({
        ...movement,
        rules: movement.rules.map((r) =>
          all || placed.rules.get(r.id)?.duty === 'places' ? { ...r, plusMinus: 0.01 } : r,
        ),
      });
    const [some, all] = [stated(false), stated(true)];
    return [...some.places.values()].every(({ id, spread }) => spread?.major === all.places.get(id)?.spread?.major);
  },
} satisfies Readonly<Record<string, (given: Given) => boolean>>;

function run(count: number, seed: number): Table {
  const broken = new Map<string, { count: number; first: number }>();
  let sound = 0;
  for (let k = 0; k < count; k++) {
    const own = seed * 1_000_003 + k;
    const size = randomFrom(own)();
    const { movement } = spareMovement(own, 6 + Math.floor(14 * size), 5);
    const placed = plantMovement(movement);
    if (placed.disagreements.length > 0 || placed.freeMotions > 0) continue;
    sound++;
    for (const [name, holds] of Object.entries(LAWS)) {
      if (holds({ movement, placed, random: randomFrom(own * 31 + name.length) })) continue;
      const row = broken.get(name) ?? { count: 0, first: own };
      row.count++;
      broken.set(name, row);
    }
  }
  const rows = Object.keys(LAWS).map((name) => [
    name,
    sound,
    broken.get(name)?.count ?? 0,
    broken.get(name)?.first ?? '',
  ]);
  const wrong = [...broken.values()].reduce((sum, each) => sum + each.count, 0) + (sound === 0 ? 1 : 0);
  return { lines: tableLines(['law', 'cases', 'broken', 'first'], rows), wrong };
}

export const proof: Proof = { title: 'Laws of planting', fullCount: 5000, run };
