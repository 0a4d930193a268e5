/**
 * One wrong number: movements with one wrong length among true spare ones, and movements whose arcs fall short, whose ties
 * contradict or that would hold only by degeneration.
 *
 * Wrong is: nothing told; more than one set; a set without the wrong rule; a set that holds by itself, or of which a rule is
 * not needed (judged by the decomposition of its rows, not by the planting); a number offered that leaves a disagreement.
 */
import { Matrix, SVD } from 'ml-matrix';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement, Rule } from '../../solver/movement/schema.ts';
import { type Disagreement, networkOf, plantMovement } from '../../solver/planting/index.ts';
import type { Network } from '../../solver/planting/network.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { arbor, buildMovement, distance, held, type RuleInput } from '../planting/buildMovement.ts';
import { randomFrom } from '../planting/randomMovement.ts';
import { spareMovement } from '../planting/scenes/spareMovement.ts';
import { type Proof, type Table, tableLines } from './proof.ts';
import { residualsOf, rowsOf } from './rank/oracle.ts';

const KINDS = ['not told', 'several sets', 'innocent', 'not minimal', 'not cured'] as const;
type Wrong = (typeof KINDS)[number];

/** One movement with a wrong rule in it, or rules of which any may be the wrong one. */
interface Case {
  readonly what: string;
  readonly movement: Movement;
  readonly culprits: readonly string[];
  /** The same with true numbers, where one rule is wrong. */
  readonly sound?: PlacedMovement;
}

/** Singular value below which rows depend on each other where all hold: roots of what rounding leaves of products of rows. */
const DEPENDENT = 1e-6;

function withLength(rule: Rule, by: number): Rule | undefined {
  if (rule.kind === 'distance' || rule.kind === 'radius') return { ...rule, length: rule.length + by };
  if (rule.kind === 'depth' && rule.held !== undefined) return { ...rule, held: rule.held + by };
  return undefined;
}

/** A length 0.1 to 1 mm wrong, on which at least one true check hangs by more than a tenth. */
function wrongLength(seed: number): Case | undefined {
  const random = randomFrom(seed * 31 + 5);
  const { movement } = spareMovement(seed, 6 + Math.floor(random() * 14), 6);
  const base = plantMovement(movement);
  if (base.disagreements.length > 0) return undefined;
  const by = (0.1 + 0.9 * random()) * (random() < 0.5 ? -1 : 1);
  const order = [...movement.rules].sort(() => random() - 0.5);
  for (const rule of order) {
    const changed = withLength(rule, by);
    if (!changed || !isSeen(base, movement, rule)) continue;
    const rules = movement.rules.map((each) => (each.id === rule.id ? changed : each));
    return { what: 'a wrong length', movement: { ...movement, rules }, culprits: [rule.id], sound: base };
  }
  return undefined;
}

/** Does a hundredth more in a rule show in a check by more than a tenth of that: is it one itself, or does one hang on it? */
function isSeen(base: PlacedMovement, movement: Movement, rule: Rule): boolean {
  // Depths that check are judged by their teeth.
  if (base.rules.get(rule.id)?.duty === 'checks') return rule.kind !== 'depth';
  const more = withLength(rule, 0.01);
  const rules = movement.rules.map((each) => (each.id === rule.id && more ? more : each));
  const now = plantMovement({ ...movement, rules });
  const judged = new Set(movement.rules.flatMap(({ id, kind }) => (kind === 'depth' ? [] : [id])));
  return [...now.rules.values()].some(({ id, duty, missBy }) => duty === 'checks' && missBy > 0.004 && judged.has(id));
}

const place = (random: () => number): readonly [number, number] => [60 * random() - 30, 60 * random() - 30];

/** Two arcs that fall short by 0.002 to 3 mm, with a point that hangs on theirs. */
function shortArcs(seed: number): Case {
  const random = randomFrom(seed * 17 + 3);
  const apart = 40 + 20 * random();
  const short = 0.002 * 1500 ** random();
  const a = 15 + 10 * random();
  const turn = 2 * Math.PI * random();
  const bx = apart * Math.cos(turn);
  const by = apart * Math.sin(turn);
  const [px, py] = [a * Math.cos(turn), a * Math.sin(turn)];
  const movement = buildMovement({
    arbors: [
      arbor('A', 0, 0),
      arbor('B', bx, by),
      arbor('P', px + 3, py - 3),
      arbor('Q', px - 20 * Math.sin(turn), py + 20 * Math.cos(turn)),
    ],
    rules: [
      held('a', 'A', 0, 0),
      held('b', 'B', bx, by),
      distance('ap', 'A', 'P', a),
      distance('bp', 'B', 'P', apart - a - short),
      distance('pq', 'P', 'Q', 20),
      distance('aq', 'A', 'Q', Math.hypot(a, 20)),
    ],
  });
  return { what: 'arcs that fall short', movement, culprits: ['ap', 'bp'] };
}

/** Ties that contradict, and points that would hold only where a direction has no meaning. */
function contradiction(seed: number): Case {
  const random = randomFrom(seed * 13 + 1);
  const [p, q, c] = [place(random), place(random), place(random)];
  const far: readonly [number, number] = [p[0] + 20 + 10 * random(), p[1] + 5];
  const base = [held('p', 'P', ...p), held('q', 'Q', ...far), held('c', 'C', ...c)];
  const arbors = [arbor('P', ...p), arbor('Q', ...far), arbor('C', ...c), arbor('X', ...q)];
  const ties: readonly { rules: RuleInput[]; culprits: string[]; what: string }[] = [
    {
      what: 'a tie of held points',
      rules: [{ kind: 'opposite', id: 't', point: 'P', centre: 'C', of: 'Q' }],
      culprits: ['t'],
    },
    {
      what: 'same place by a chain',
      rules: [
        { kind: 'samePlace', id: 't', points: ['X', 'P'] },
        { kind: 'samePlace', id: 'u', points: ['X', 'Q'] },
      ],
      culprits: ['t', 'u'],
    },
    {
      what: 'a line through one place',
      rules: [
        { kind: 'samePlace', id: 't', points: ['X', 'P'] },
        { kind: 'opposite', id: 'u', point: 'X', centre: 'C', of: 'Q' },
      ],
      culprits: ['t', 'u'],
    },
  ];
  const tie = ties[seed % ties.length];
  if (!tie) throw new Error('a list without items');
  return {
    what: tie.what,
    movement: buildMovement({ arbors, rules: [...base, ...tie.rules] }),
    culprits: tie.culprits,
  };
}

/** Is the set dependent where all rules hold, and independent without any one of them? By singular values of its rows. */
function isMinimal(movement: Movement, placed: PlacedMovement, { rules, cause }: Disagreement): boolean {
  const ground = networkOf(movement);
  const { network } = ground;
  const coords = new Float64Array(2 * network.pointCount);
  for (const [id, i] of ground.indexOf) {
    coords[2 * i] = placed.places.get(id)?.x ?? 0;
    coords[2 * i + 1] = placed.places.get(id)?.y ?? 0;
  }
  const pipes = new Set('implied' in cause ? cause.implied.map(({ point }) => point as string) : []);
  const implied = ground.sources.flatMap((source, r) => (source.kind === 'pipe' && pipes.has(source.arbor) ? [r] : []));
  const members = [...rules.map((id) => [...(ground.networkRulesOf.get(id) ?? [])]), ...implied.map((r) => [r])];
  const rowsOfMember = members.map((parts) =>
    parts.flatMap((r) => rowsOf(network, r, coords).map((entries) => rowFrom(entries, network.held))),
  );
  // Of a ring only one row may be in the dependency: what is left over of a member is no reason to keep another.
  const least = (without: number): number => {
    const rows = rowsOfMember.flatMap((own, k) => (k === without ? [] : own));
    const matrix = new Matrix(rows);
    return rows.length === 0 ? 1 : Math.min(...new SVD(matrix.mmul(matrix.transpose())).diagonal.map(Math.sqrt));
  };
  if (members.some((_, k) => least(k) <= DEPENDENT)) return false;
  // A smaller set than the dependent one may fail as well: then no start may solve it.
  return least(-1) <= DEPENDENT || !isSolved(network, members.flat(), coords);
}

/** Starts tried before a set counts as one that cannot hold, how far they are scattered, mm, and steps from each. */
const STARTS = 60;
const SCATTER = 30;
const STEPS = 80;

/** Do the rules of the changed movement hold together anywhere near? By Gauss-Newton steps of least length, halved where they are worse. */
function isSolved(network: Network, rules: readonly number[], from: Float64Array): boolean {
  const random = randomFrom(rules.length);
  const off = (coords: Float64Array): number[] => rules.flatMap((r) => residualsOf(network, r, coords));
  const size = (values: readonly number[]): number => Math.hypot(...values);
  for (let n = 0; n < STARTS; n++) {
    let coords = Float64Array.from(from, (v, k) =>
      network.held[k >> 1] || n === 0 ? v : v + SCATTER * (random() - 0.5),
    );
    for (let step = 0; step < STEPS; step++) {
      const now = off(coords);
      if (size(now) < 1e-6) return true;
      const rows = rules.flatMap((r) => rowsOf(network, r, coords).map((entries) => rowFrom(entries, network.held)));
      const by = new SVD(new Matrix(rows), { autoTranspose: true }).solve(Matrix.columnVector(now)).to1DArray();
      let share = 1;
      let next = coords.map((v, k) => v - (by[k] ?? 0));
      while (share > 1e-3 && size(off(next)) >= size(now)) {
        share /= 2;
        next = coords.map((v, k) => v - share * (by[k] ?? 0));
      }
      if (share <= 1e-3) break;
      coords = next;
    }
  }
  return false;
}

function rowFrom(entries: readonly (readonly [number, number, number])[], isHeld: Uint8Array): number[] {
  const row = new Array<number>(2 * isHeld.length).fill(0);
  for (const [point, dx, dy] of entries) {
    if (isHeld[point]) continue;
    row[2 * point] = (row[2 * point] ?? 0) + dx;
    row[2 * point + 1] = (row[2 * point + 1] ?? 0) + dy;
  }
  return row;
}

function faultsOf({ movement, culprits, what, sound }: Case): Set<Wrong> {
  const placed = plantMovement(movement);
  const [told, ...more] = placed.disagreements;
  if (!told) return new Set(['not told']);
  const wrong = new Set<Wrong>();
  if (more.length > 0) wrong.add('several sets');
  if (!culprits.some((id) => told.rules.some((each) => each === id))) wrong.add('innocent');
  if (sound && !isMinimal(movement, sound, told)) wrong.add('not minimal');
  if (!sound && what !== 'arcs that fall short') return wrong;
  const edit = told.cure && applyEdit(movement, { kind: 'setValue', ...told.cure });
  const cured = edit?.kind === 'edited' ? plantMovement(edit.movement) : undefined;
  if (!cured || cured.disagreements.length > 0 || cured.freeMotions > 0) wrong.add('not cured');
  return wrong;
}

function run(count: number, seed: number): Table {
  const rows = new Map<string, { cases: number; wrong: Map<Wrong, number>; first?: number }>();
  let total = 0;
  for (let k = 0; k < count; k++) {
    const own = seed * 10_007 + k;
    const made = k % 2 === 0 ? wrongLength(own) : k % 4 === 1 ? shortArcs(own) : contradiction(own);
    if (!made) continue;
    const wrong = faultsOf(made);
    const row = rows.get(made.what) ?? { cases: 0, wrong: new Map<Wrong, number>() };
    row.cases++;
    for (const each of wrong) row.wrong.set(each, (row.wrong.get(each) ?? 0) + 1);
    if (wrong.size > 0) {
      total++;
      row.first ??= own;
    }
    rows.set(made.what, row);
  }
  const lines = tableLines(
    ['', 'cases', ...KINDS, 'first'],
    [...rows].map(([what, row]) => [
      what,
      row.cases,
      ...KINDS.map((kind) => row.wrong.get(kind) ?? 0),
      row.first ?? '',
    ]),
  );
  return { lines, wrong: total };
}

export const proof: Proof = { title: 'One wrong rule, one set', fullCount: 400, run };
