/**
 * Free motions of networks with too few rules, against a singular value decomposition of all rows.
 *
 * Wrong is: another number of motions than the decomposition has; a motion that lies outside its space; a rule told as
 * spare without which there is a motion more.
 */
import { Matrix, SVD } from 'ml-matrix';
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import type { Network } from '../../solver/planting/network.ts';
import { type DraftRule, networkFrom } from '../planting/scenes/builder.ts';
import { chainedNetwork } from '../planting/scenes/chained.ts';
import { constructedNetwork } from '../planting/scenes/constructed.ts';
import { everyKind } from '../planting/scenes/everyKind.ts';
import { seeded } from '../planting/scenes/random.ts';
import { withChecks } from '../planting/scenes/withChecks.ts';
import { type Proof, type Table, tableLines } from './proof.ts';
import { type Decomposed, decompose, LACKING } from './rank/oracle.ts';

const KINDS = ['number', 'space', 'not spare'] as const;
type Wrong = (typeof KINDS)[number];

/** Part of a motion that may lie outside the space, against its length: what iterations leave of a place. */
const OUTSIDE = 1e-4;

const SCENES: Readonly<Record<string, (seed: number) => Network>> = {
  'every kind': (seed) => everyKind(seed, 0.5).network,
  'struck one by one, with checks': (seed) => withChecks(constructedNetwork(seed, 12, 0.5), seed, 5).network,
  'blocks, with checks': (seed) => withChecks(chainedNetwork(seed, 10, 0.5), seed, 4).network,
};

/** A network without some of its rules. */
function without(network: Network, gone: ReadonlySet<number>): Network {
  const rules: DraftRule[] = [];
  for (let r = 0; r < network.ruleCount; r++) {
    if (gone.has(r)) continue;
    rules.push({
      kind: network.kinds[r] as DraftRule['kind'], // one a rule
      points: Array.from(network.points.subarray(4 * r, 4 * r + 4)).filter((i) => i >= 0),
      values: Array.from(network.values.subarray(3 * r, 3 * r + 3)),
    });
  }
  const at = Array.from(
    { length: network.pointCount },
    (_, i) => [network.coords[2 * i] ?? 0, network.coords[2 * i + 1] ?? 0] as const,
  );
  return networkFrom({ at, held: Array.from(network.held.keys()).filter((i) => network.held[i]), rules });
}

const zeroes = ({ values }: Decomposed): number => values.filter((value) => value < LACKING).length;

/** Length of the part of a displacement that lies outside the motions that the decomposition has, over its length. */
function outside(motion: Float64Array, { values, vectors }: Decomposed): number {
  const space = vectors.filter((_, k) => (values[k] ?? 1) < LACKING);
  if (space.length === 0) return 1;
  const matrix = new Matrix(space.map((vector) => Array.from(vector))).transpose();
  const wanted = Matrix.columnVector(Array.from(motion));
  const found = new SVD(matrix, { autoTranspose: true }).solve(wanted);
  return Matrix.sub(wanted, matrix.mmul(found)).norm() / wanted.norm();
}

function faultsOf(network: Network): { wrong: Set<Wrong>; motions: number } | undefined {
  const wrong = new Set<Wrong>();
  const result = plantNetwork(network);
  // Where rules do not hold there are no motions that keep them.
  if (result.disagreements.length > 0) return undefined;
  const all = Array.from({ length: network.ruleCount }, (_, r) => r);
  const decomposed = decompose(network, result.coords, all);
  const motions = zeroes(decomposed);
  if (result.freeMotions !== motions) wrong.add('number');
  if (result.motions.some((motion) => outside(motion, decomposed) > OUTSIDE)) wrong.add('space');
  for (const spare of result.spare) {
    const rest = all.filter((r) => r !== spare);
    if (zeroes(decompose(network, result.coords, rest)) > motions) wrong.add('not spare');
  }
  return { wrong, motions };
}

function run(count: number, seed: number): Table {
  const names = Object.keys(SCENES);
  const rows = new Map(
    names.map((name) => [name, { cases: 0, contested: 0, motions: 0, wrong: new Map<Wrong, number>(), first: 0 }]),
  );
  let total = 0;
  for (let k = 0; k < count; k++) {
    const own = seed * 10_007 + k;
    const name = names[k % names.length] ?? '';
    const random = seeded(own);
    const whole = SCENES[name]?.(own);
    const row = rows.get(name);
    if (!whole || !row) continue;
    const gone = new Set<number>();
    const fewer = 1 + Math.floor(4 * random());
    while (gone.size < fewer) gone.add(Math.floor(random() * whole.ruleCount));
    const found = faultsOf(without(whole, gone));
    if (!found) {
      row.contested++;
      continue;
    }
    const { wrong, motions } = found;
    row.cases++;
    row.motions += motions;
    for (const each of wrong) row.wrong.set(each, (row.wrong.get(each) ?? 0) + 1);
    if (wrong.size === 0) continue;
    total++;
    row.first ||= own;
  }
  const lines = tableLines(
    ['', 'cases', 'contested', 'motions', ...KINDS, 'first'],
    [...rows].map(([name, row]) => [
      name,
      row.cases,
      row.contested,
      row.motions,
      ...KINDS.map((kind) => row.wrong.get(kind) ?? 0),
      row.first || '',
    ]),
  );
  return { lines, wrong: total };
}

export const proof: Proof = { title: 'Free motions', fullCount: 500, run };
