/**
 * No point is called planted that could move: small random networks against a singular value decomposition.
 *
 * Wrong is: a planted point that a motion resisted by less than 1e-9 of the largest singular value moves, unless it is
 * told that its arcs only touch; a place between 1e-9 and 1e-6 that is not told as barely settled; a planted point of a
 * rule that counts as held where it loses its meaning; a free motion that the decomposition does not have; a number that is
 * not finite; a network that takes more than a second of processor time.
 */
import { plantNetwork } from '../../solver/planting/kernel/plant.ts';
import { type Network, type NetworkResult, PointState, RuleKind } from '../../solver/planting/network.ts';
import { seeded } from '../planting/scenes/random.ts';
import { type Proof, type Table, tableLines } from './proof.ts';
import { FAMILIES } from './rank/families.ts';
import { BARELY, decompose, LACKING, movable, shares } from './rank/oracle.ts';

/** Residual to which a rule holds, mm. */
const HOLDS = 1e-9;
/** Share of a motion from which a point takes part in it: far above what rounding leaves. */
const MOVES = 1e-5;
/** The two decompositions differ by how ties are written; a value this near to a bound may fall on either side. */
const NEAR = 4;
/** Least distance to a point that a direction or a line is named from, mm. */
const LEAST_ARM = 0.001;

const KINDS = ['falsely planted', 'barely, untold', 'degenerate', 'false motion', 'not finite', 'slow'] as const;
type Wrong = (typeof KINDS)[number];

/** What is wrong about one result, and of what kind the network turned out to be. */
export function faultsOf(network: Network, result: NetworkResult): Wrong[] {
  if (![...result.coords, ...result.missBy].every(Number.isFinite)) return ['not finite'];
  const wrong = new Set<Wrong>();
  const rules = Array.from({ length: network.ruleCount }, (_, r) => r);
  const holding = rules.filter((r) => (result.missBy[r] as number) <= HOLDS); // one a rule
  const told = (kind: 'touching' | 'barely'): Set<number> =>
    new Set(result.doubts.filter((doubt) => doubt.kind === kind).flatMap(({ points }) => points));
  const [touching, barely] = [told('touching'), told('barely')];
  // A point that is told as only touching stands where it stands: what hangs on it must be settled from there.
  const standing = network.held.map((is, i) => (is || touching.has(i) ? 1 : 0));
  const decomposed = decompose({ ...network, held: standing }, result.coords, holding);
  const isPlanted = (i: number): boolean => result.states[i] === PointState.planted && !network.held[i];
  decomposed.values.forEach((value, k) => {
    const share = shares(decomposed.vectors[k] as Float64Array); // one a value
    for (let i = 0; i < network.pointCount; i++) {
      if (!isPlanted(i) || touching.has(i)) continue;
      if (value < LACKING / NEAR && (share[i] as number) > MOVES) wrong.add('falsely planted'); // one a point
      // The point that such a motion moves most is told; others may be moved a little by it.
      const isMost = value >= LACKING * NEAR && value < BARELY / NEAR && (share[i] as number) === 1; // as above
      if (isMost && !barely.has(i)) wrong.add('barely, untold');
    }
  });
  const far = movable(decomposed, network.pointCount);
  for (const motion of result.motions) {
    shares(motion).forEach((share, i) => {
      if (share > 1e-3 && (far[i] as number) < 1e-6 && result.states[i] === PointState.loose) wrong.add('false motion'); // one a point
    });
  }
  for (const r of holding) if (losesMeaning(network, r, result.coords, isPlanted)) wrong.add('degenerate');
  return [...wrong];
}

/** Is a rule that counts as held, and speaks of a planted point, within reach of a point that it is named from? */
function losesMeaning(network: Network, r: number, coords: Float64Array, isPlanted: (i: number) => boolean): boolean {
  const [p, a, c] = [0, 1, 2].map((k) => network.points[4 * r + k] as number) as [number, number, number]; // four a rule
  const near = (i: number, j: number): boolean =>
    Math.hypot(
      (coords[2 * i] as number) - (coords[2 * j] as number),
      (coords[2 * i + 1] as number) - (coords[2 * j + 1] as number),
    ) < LEAST_ARM; // points of the network
  if (![p, a, c].some((i) => i >= 0 && isPlanted(i))) return false;
  switch (network.kinds[r]) {
    case RuleKind.distance:
      return (network.values[3 * r] as number) <= 0; // three a rule
    case RuleKind.ray:
      return near(p, a) || (c >= 0 && near(c, a));
    case RuleKind.inLine:
      return near(a, c) || near(p, a) || near(p, c);
    case RuleKind.sameRadius:
      return near(p, c) || near(a, c);
    case RuleKind.opposite:
    case RuleKind.turned:
      return near(a, c);
    default:
      return false;
  }
}

function run(count: number, seed: number): Table {
  const names = Object.keys(FAMILIES);
  const rows = names.map((name) => ({ name, cases: 0, states: [0, 0, 0], told: 0, wrong: new Map<Wrong, number>() }));
  const examples: string[] = [];
  let slowest = 0;
  for (let n = 0; n < count; n++) {
    const row = rows[n % names.length] as (typeof rows)[number]; // within the list
    const random = seeded(seed * 1_000_003 + n);
    const network = (FAMILIES[row.name] as (random: () => number) => Network)(random); // named by its key
    const started = process.cpuUsage();
    const result = plantNetwork(network);
    void result.motions;
    const spent = process.cpuUsage(started);
    const took = (spent.user + spent.system) / 1000;
    slowest = Math.max(slowest, took);
    row.cases++;
    for (const state of result.states) (row.states[state] as number)++; // three states
    if (result.doubts.length > 0) row.told++;
    for (const wrong of took > 1000 ? ['slow' as const] : faultsOf(network, result)) {
      row.wrong.set(wrong, (row.wrong.get(wrong) ?? 0) + 1);
      if (examples.length < 12) examples.push(`  ${wrong}: ${row.name}, case ${n}`);
    }
  }
  const heading = ['networks', 'cases', 'planted', 'loose', 'contested', 'told', ...KINDS];
  const lines = tableLines(
    heading,
    rows.map(({ name, cases, states, told, wrong }) => [
      name,
      cases,
      ...states,
      told,
      ...KINDS.map((kind) => wrong.get(kind) ?? 0),
    ]),
  );
  const wrong = rows.reduce((sum, row) => sum + [...row.wrong.values()].reduce((a, b) => a + b, 0), 0);
  return { lines: [...lines, `slowest ${slowest.toFixed(1)} ms of processor time`, ...examples], wrong };
}

export const proof: Proof = { title: 'Rank against a singular value decomposition', fullCount: 1_000_000, run };
