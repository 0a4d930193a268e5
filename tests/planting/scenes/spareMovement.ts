/**
 * Movements built from a known placement with more rules than they need, all of them true: points struck one by one from all
 * kinds of rules with pipes and rings, or chains of coupled blocks; spare lengths, directions and gaps among them.
 */
import type { Movement } from '../../../solver/movement/schema.ts';
import { arbor, buildMovement, distance, held, type RuleInput } from '../buildMovement.ts';
import { randomFrom, randomMovement, type XY } from '../randomMovement.ts';
import { chainedNetwork } from './chained.ts';

/** A movement that every rule of holds at the known places, and the ids of the rules that were added. */
export interface SpareMovement {
  readonly movement: Movement;
  readonly places: ReadonlyMap<string, XY>;
  readonly spare: readonly string[];
}

const DEGREES = 180 / Math.PI;
/** Spare rules name points at least this far apart, mm. */
const APART = 6;

/** The same seed gives the same movement; every third one consists of blocks. */
export function spareMovement(seed: number, count: number, spares: number): SpareMovement {
  const random = randomFrom(seed ^ 0x5bd1e995);
  const known = seed % 3 === 2 ? blocks(seed, count) : randomMovement(seed, count);
  const rules: RuleInput[] = [];
  for (let tries = 0; rules.length < spares && tries < 50 * spares; tries++) {
    const rule = spareRule(known.places, known.movement, random, `s${rules.length}`);
    if (rule) rules.push(rule);
  }
  const movement = buildMovement({ ...known.movement, rules: [...known.movement.rules, ...rules] } as never);
  return { movement, places: known.places, spare: rules.map(({ id }) => id) };
}

function blocks(seed: number, count: number): { movement: Movement; places: ReadonlyMap<string, XY> } {
  const { network, known } = chainedNetwork(seed, count, 0.5);
  const id = (i: number): string => `p${i}`;
  const at = (from: Float64Array, i: number): [number, number] => [from[2 * i] ?? 0, from[2 * i + 1] ?? 0];
  const indices = Array.from({ length: network.pointCount }, (_, i) => i);
  const arbors = indices.map((i) => arbor(id(i), ...at(network.coords, i)));
  // Every fifth axis carries a pipe.
  const pipes = indices.flatMap((i) =>
    i % 5 === 4 ? [{ ...arbor(`pipe${i}`, ...at(network.coords, i)), ridesOn: id(i) }] : [],
  );
  const rules = [
    ...indices.flatMap((i) => (network.held[i] ? [held(`h${i}`, id(i), ...at(known, i))] : [])),
    ...Array.from({ length: network.ruleCount }, (_, r) =>
      distance(`r${r}`, id(network.points[4 * r] ?? 0), id(network.points[4 * r + 1] ?? 0), network.values[3 * r] ?? 0),
    ),
  ];
  const places = new Map<string, XY>(indices.map((i) => [id(i), at(known, i)]));
  for (const pipe of pipes) places.set(pipe.id, places.get(pipe.ridesOn) ?? [0, 0]);
  return { movement: buildMovement({ arbors: [...arbors, ...pipes], rules } as never), places };
}

/** A rule that holds at the known places, between points that stand apart. */
function spareRule(
  places: ReadonlyMap<string, XY>,
  { marks }: Movement,
  random: () => number,
  id: string,
): RuleInput | undefined {
  const ids = [...places.keys()];
  const pick = (): string => ids[Math.floor(random() * ids.length)] ?? '';
  const [a, b, c] = [pick(), pick(), pick()];
  const between = (p: string, q: string): readonly [number, number, number] => {
    const [[px, py], [qx, qy]] = [places.get(p) ?? [0, 0], places.get(q) ?? [0, 0]];
    return [qx - px, qy - py, Math.hypot(qx - px, qy - py)];
  };
  const [dx, dy, length] = between(a, b);
  const [ex, ey, arm] = between(a, c);
  if (length < APART) return undefined;
  const radius = (p: string): number => (marks.some((mark) => mark.id === p) ? 0 : 1);
  switch (Math.floor(random() * 6)) {
    case 0:
      return { kind: 'radius', id, point: b, centre: a, length };
    case 1:
      return { kind: 'bearing', id, point: b, centre: a, angle: Math.atan2(dy, dx) * DEGREES };
    case 2:
      return arm < APART || between(b, c)[2] < APART
        ? undefined
        : {
            kind: 'bearing',
            id,
            point: b,
            centre: a,
            reference: c,
            angle: (Math.atan2(dy, dx) - Math.atan2(ey, ex)) * DEGREES,
          };
    case 3:
      return { kind: 'clearBy', id, parts: [a, b] as never, gap: length - radius(a) - radius(b) };
    default:
      return { kind: 'distance', id, points: [a, b], length };
  }
}
