/**
 * Facts and readings: random movements built from a known placement, each with a reading or a drilled place up to 0.3 mm off.
 *
 * Wrong is: a point that is contested although no arcs miss and no block fails to close; a difference that is told of a
 * check and is not the one computed here from the rule and the places; a check that is over and is not told, or told and not
 * over; a planting that counts as settled (exit code 0) with a check over; a free motion that was not there; a point that moves without hanging on
 * what was changed; a sound movement that is not planted where it was built.
 */
import { isSettled } from '../../electron/cli/plantAnswer.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { randomFrom } from '../planting/randomMovement.ts';
import { spareMovement } from '../planting/scenes/spareMovement.ts';
import { type Proof, type Table, tableLines } from './proof.ts';

const KINDS = [
  'not planted',
  'contested',
  'difference',
  'not told',
  'falsely told',
  'exit code',
  'loose',
  'moved',
] as const;
type Wrong = (typeof KINDS)[number];

/** Most that a reading or a hole is off, mm. */
const OFF = 0.3;
/** Agreement of a told difference with the one computed here, mm. */
const EXACT = 1e-9;
const RADIANS = Math.PI / 180;

type XY = readonly [number, number];

/** How far a rule is from holding at the places, by its own definition, mm; and the arm of a direction. */
function differenceOf(rule: Rule, placed: PlacedMovement): { readonly miss: number; readonly arm?: number } {
  const { movement } = placed;
  const at = (id: string): XY => {
    const place = placed.places.get(id as never); // ids of the movement
    return [place?.x ?? Number.NaN, place?.y ?? Number.NaN];
  };
  const apart = (a: string, b: string): number => Math.hypot(at(a)[0] - at(b)[0], at(a)[1] - at(b)[1]);
  const turned = (p: string, c: string, angle: number): XY => {
    const [dx, dy] = [at(p)[0] - at(c)[0], at(p)[1] - at(c)[1]];
    return [
      at(c)[0] + Math.cos(angle) * dx - Math.sin(angle) * dy,
      at(c)[1] + Math.sin(angle) * dx + Math.cos(angle) * dy,
    ];
  };
  const from = (p: string, [x, y]: XY): number => Math.hypot(at(p)[0] - x, at(p)[1] - y);
  switch (rule.kind) {
    case 'held':
      return { miss: from(rule.point, rule.at) };
    case 'distance':
      return { miss: Math.abs(apart(...rule.points) - rule.length) };
    case 'radius':
      return { miss: Math.abs(apart(rule.point, rule.centre) - rule.length) };
    case 'depth': {
      const [a, b] = rule.wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id)?.arbor ?? '');
      return { miss: Math.abs(apart(a ?? '', b ?? '') - (rule.held ?? Number.NaN)) };
    }
    case 'bearing': {
      const angle = (p: string, c: string): number => Math.atan2(at(p)[1] - at(c)[1], at(p)[0] - at(c)[0]);
      const zero = rule.reference === undefined ? 0 : angle(rule.reference, rule.centre);
      const off = angle(rule.point, rule.centre) - zero - rule.angle * RADIANS;
      const arm = apart(rule.point, rule.centre);
      return { miss: arm * Math.abs(Math.atan2(Math.sin(off), Math.cos(off))), arm };
    }
    case 'clearBy': {
      const radii = rule.parts.map((id) => (movement.marks.some((mark) => mark.id === (id as string)) ? 0 : 1));
      const [a, b] = rule.parts;
      // A wanted gap may be wider.
      return { miss: Math.max(0, rule.gap + (radii[0] ?? 0) + (radii[1] ?? 0) - apart(a, b)) };
    }
    case 'opposite':
      return { miss: from(rule.point, turned(rule.of, rule.centre, Math.PI)) };
    case 'samePlace':
      return { miss: apart(...rule.points) };
    case 'evenSpacing': {
      const [first = ''] = rule.points;
      const misses = rule.points.map((id, k) =>
        from(id, turned(first, rule.centre, (2 * Math.PI * k) / rule.points.length)),
      );
      return { miss: Math.max(...misses) };
    }
    default:
      return { miss: Number.NaN };
  }
}

/** What a check may miss by: nothing is stated in these movements. */
function allowedFor(rule: Rule, arm: number | undefined, facts: ReadonlySet<string>, movement: Movement): number {
  const wheels = rule.kind === 'depth' ? rule.wheels : [];
  const arbors = wheels.map((id) => movement.wheels.find((wheel) => wheel.id === id)?.arbor ?? '');
  const text = JSON.stringify(rule);
  const isMade = [...facts].some((id) => text.includes(`"${id}"`) || arbors.includes(id as never));
  const plain = isMade ? 0.05 : 0.02;
  return arm === undefined ? plain : Math.min(Math.max(plain, 0.01 * RADIANS * arm), 0.5 * RADIANS * arm);
}

/** Points that hang on one in the order of construction, directly or not, itself and what shares its place included. */
export function hanging(placed: PlacedMovement, seeds: readonly string[]): Set<string> {
  const found = new Set<string>(seeds);
  const waiting = [...seeds];
  const companions = (id: string): string[] => {
    const at = placed.places.get(id as never); // as above
    return [...placed.places.values()].flatMap((each) => (at && each.x === at.x && each.y === at.y ? [each.id] : []));
  };
  const blocks = placed.order.filter(({ kind }) => kind === 'block' || kind === 'loose');
  while (waiting.length > 0) {
    const id = waiting.pop() ?? '';
    const own = placed.places.get(id as never); // as above
    const together = blocks
      .filter(({ points }) => points.some((each) => each === id))
      .flatMap(({ points }) => [...points]);
    for (const next of [...(own?.hangsOn ?? []), ...together, ...companions(id)]) {
      if (found.has(next)) continue;
      found.add(next);
      waiting.push(next);
    }
  }
  return found;
}

/** One case: the sound movement, what is changed in it, and the points that may move by that. */
interface Changed {
  readonly what: string;
  readonly movement: Movement;
  readonly facts: ReadonlySet<string>;
  readonly seeds: readonly string[];
}

function change(base: PlacedMovement, spare: readonly string[], random: () => number): Changed {
  const { movement } = base;
  const off = (0.02 + (OFF - 0.02) * random()) * (random() < 0.5 ? -1 : 1);
  if (random() < 0.5) {
    const points = [...base.places.values()];
    const point = points[Math.floor(random() * points.length)];
    if (!point) throw new Error('a movement without points');
    const turn = 2 * Math.PI * random();
    const at = [point.x + off * Math.cos(turn), point.y + off * Math.sin(turn)] as const;
    const made = [{ point: point.id, state: 'drilled' as const, at }];
    const facts = new Set(
      [...base.places.values()].flatMap(({ id, x, y }) => (x === point.x && y === point.y ? [id as string] : [])),
    );
    return { what: 'hole', movement: { ...movement, made }, facts, seeds: [point.id] };
  }
  const numbered = movement.rules.filter(({ kind }) => ['distance', 'radius', 'depth', 'clearBy'].includes(kind));
  const rule = numbered[Math.floor(random() * numbered.length)];
  if (!rule) throw new Error('a movement without lengths');
  const changed = movement.rules.map((each) => (each.id === rule.id ? withLength(each, off) : each));
  const isCheck = base.rules.get(rule.id)?.duty === 'checks';
  const text = JSON.stringify(rule);
  const named = [...base.places.keys()].filter((id) => text.includes(`"${id}"`));
  const arbors =
    rule.kind === 'depth' ? rule.wheels.map((id) => movement.wheels.find((w) => w.id === id)?.arbor ?? '') : [];
  const last = lastPlaced(base, [...named, ...arbors]);
  const what = isCheck ? 'reading that checks' : spare.includes(rule.id) ? 'spare that plants' : 'reading that plants';
  return { what, movement: { ...movement, rules: changed }, facts: new Set(), seeds: isCheck ? [] : last };
}

function withLength(rule: Rule, off: number): Rule {
  switch (rule.kind) {
    case 'distance':
    case 'radius':
      return { ...rule, length: rule.length + off };
    case 'depth':
      return { ...rule, held: (rule.held ?? 0) + off };
    case 'clearBy':
      return { ...rule, gap: Math.max(0, rule.gap + off) };
    default:
      return rule;
  }
}

/** Of some points the one that is placed last, with its block. */
function lastPlaced({ order }: PlacedMovement, ids: readonly string[]): string[] {
  const position = (id: string): number => order.findIndex(({ points }) => points.some((each) => each === id));
  const sorted = [...ids].sort((a, b) => position(b) - position(a));
  return sorted.slice(0, 1);
}

function faultsOf(seed: number): { what: string; wrong: Set<Wrong>; overs: number; contested: boolean } {
  const random = randomFrom(seed * 7919 + 13);
  const count = 6 + Math.floor(random() * 20);
  const { movement, places, spare } = spareMovement(seed, count, 2 + Math.floor(random() * 6));
  const wrong = new Set<Wrong>();
  const base = plantMovement(movement);
  const isBuilt = [...base.places.values()].every(({ id, x, y, state }) => {
    const [kx, ky] = places.get(id) ?? [Number.NaN, Number.NaN];
    return state === 'planted' && Math.hypot(x - kx, y - ky) < 1e-6;
  });
  if (!isBuilt || base.disagreements.length > 0) {
    return { what: 'sound', wrong: new Set(['not planted']), overs: 0, contested: false };
  }
  const changed = change(base, spare, random);
  const now = plantMovement(changed.movement);
  const arcsMiss = now.disagreements.some(({ cause }) => cause.kind === 'miss' || cause.kind === 'set');
  const contested = [...now.places.values()].some(({ state }) => state === 'contested');
  if (contested && !arcsMiss) wrong.add('contested');
  if (now.freeMotions > 0) wrong.add('loose');
  const overs = judgeChecks(now, changed, wrong);
  if (isSettled(now) === (overs > 0 || now.disagreements.length > 0)) wrong.add('exit code');
  const mayMove = hanging(base, changed.seeds);
  for (const { id, x, y } of now.places.values()) {
    const was = base.places.get(id);
    if (!mayMove.has(id) && (was?.x !== x || was?.y !== y)) wrong.add('moved');
  }
  return { what: changed.what, wrong, overs, contested };
}

/** Every check against the difference computed here; how many are over. */
function judgeChecks(now: PlacedMovement, { facts }: Changed, wrong: Set<Wrong>): number {
  const told = new Set(
    now.disagreements.flatMap(({ cause, rules }) => (cause.kind === 'over' ? [cause.check, ...cause.also] : rules)),
  );
  let overs = 0;
  for (const rule of now.movement.rules) {
    const outcome = now.rules.get(rule.id);
    if (outcome?.duty !== 'checks' && outcome?.duty !== 'released') continue;
    const { miss, arm } = differenceOf(rule, now);
    if (!(Math.abs(miss - outcome.missBy) <= EXACT)) wrong.add('difference');
    const text = JSON.stringify(rule);
    const hangsOnContested = [...now.places.values()].some(
      ({ id, state }) => state === 'contested' && text.includes(`"${id}"`),
    );
    if (hangsOnContested || rule.kind === 'depth') continue;
    const isOver = miss > allowedFor(rule, arm, facts, now.movement) + EXACT;
    if (isOver) overs++;
    if (isOver && !told.has(rule.id)) wrong.add('not told');
    if (!isOver && told.has(rule.id) && miss < allowedFor(rule, arm, facts, now.movement) - EXACT) {
      wrong.add('falsely told');
    }
  }
  return overs;
}

function run(count: number, seed: number): Table {
  const rows = new Map<
    string,
    { cases: number; overs: number; contested: number; wrong: Map<Wrong, number>; first?: number }
  >();
  let total = 0;
  for (let k = 0; k < count; k++) {
    const own = seed * 1_000_003 + k;
    const { what, wrong, overs, contested } = faultsOf(own);
    const row = rows.get(what) ?? { cases: 0, overs: 0, contested: 0, wrong: new Map<Wrong, number>() };
    row.cases++;
    if (overs > 0) row.overs++;
    if (contested) row.contested++;
    for (const each of wrong) row.wrong.set(each, (row.wrong.get(each) ?? 0) + 1);
    if (wrong.size > 0) {
      total++;
      row.first ??= own;
    }
    rows.set(what, row);
  }
  const lines = tableLines(
    ['changed', 'cases', 'with checks over', 'arcs miss', ...KINDS, 'first'],
    [...rows].map(([what, row]) => [
      what,
      row.cases,
      row.overs,
      row.contested,
      ...KINDS.map((kind) => row.wrong.get(kind) ?? 0),
      row.first ?? '',
    ]),
  );
  return { lines, wrong: total };
}

export const proof: Proof = { title: 'Readings and holes off their places', fullCount: 10_000, run };
