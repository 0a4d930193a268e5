/**
 * The ground of a movement of which something was made: its drawing, with the drilled places put into it.
 *
 * The drawing is planted first, as if nothing were drilled: it says what a fact releases and where ghosts stand.
 */
import { asPoint } from '../../geometry/index.ts';
import type { PointId } from '../../movement/ids.ts';
import { type DrilledAxis, drilledAxis } from '../../movement/index.ts';
import type { Made, Movement } from '../../movement/schema.ts';
import { type Fact, factNetwork } from '../kernel/duties/factNetwork.ts';
import { drawingOf } from '../kernel/plant.ts';
import { RuleKind } from '../network.ts';
import type { HeldSource, PlantingGround } from './ground.ts';
import { readAtTheirHeights } from './leaningAxes.ts';

/** A drilled place with what holds it, and the slope of its axis where it was drilled in two plates. */
interface HeldFact extends Fact {
  readonly held: HeldSource;
  readonly axis?: DrilledAxis;
}

/** A second place of one axis in one plate: both cannot be. */
interface SecondPlace extends Fact {
  readonly id: PointId;
  readonly plusMinus: number;
}

/** What was drilled: one fact an axis, and what contradicts it. */
interface Drilled {
  readonly facts: ReadonlyMap<number, HeldFact>;
  readonly seconds: readonly SecondPlace[];
}

/** Drilled places by axis, pipes being drilled with what they ride on. The first one of a plate counts. */
function drilledIn(movement: Movement, drawn: PlantingGround, root: Int32Array): Drilled {
  const byAxis = new Map<number, { index: number; made: Made }[]>();
  const seconds: SecondPlace[] = [];
  for (const made of movement.made) {
    const index = drawn.indexOf.get(made.point);
    if (index === undefined || made.state !== 'drilled' || !made.at) continue;
    const axis = root[index] ?? index;
    const known = byAxis.get(axis) ?? [];
    byAxis.set(axis, known);
    // Where no plate is told it may be any.
    const isSecond = known.some(
      ({ made: { plate } }) => plate === undefined || made.plate === undefined || plate === made.plate,
    );
    if (!isSecond) known.push({ index, made });
    else {
      const [x, y] = made.at;
      seconds.push({ point: index, x, y, id: made.point, plusMinus: made.plusMinus ?? 0 });
    }
  }
  const facts = new Map<number, HeldFact>();
  for (const holes of byAxis.values()) {
    const [first] = holes;
    if (!first?.made.at) continue;
    const arbor = movement.arbors.find(({ id }) => holes.some(({ made }) => made.point === id));
    const axis = drilledAxis(
      movement,
      holes.map(({ made }) => made),
      arbor,
    );
    const { x, y } = axis?.place ?? asPoint(first.made.at);
    const held = { by: 'drilled', plusMinus: first.made.plusMinus ?? 0 } as const;
    facts.set(first.index, { point: first.index, x, y, held, ...(axis && { axis }) });
  }
  return { facts, seconds };
}

/**
 * Puts the drilled places into the drawing; the drawing itself where nothing is drilled.
 *
 * Ghosts stand behind the points of the movement and have no id; copied rules stand behind its rules and come from the
 * same rule of the movement, which is asked of the hole alone. An axis that leans stands at the marked face; depths are
 * read from helpers at the height of their teeth.
 */
export function withFacts(drawn: PlantingGround): PlantingGround {
  if (!drawn.movement.made.some(({ state, at }) => state === 'drilled' && at)) return drawn;
  const { ground, plan, checks } = drawingOf(drawn.network);
  const { root } = ground.reduction;
  const { facts, seconds } = drilledIn(drawn.movement, drawn, root);
  if (facts.size === 0) return drawn;
  const made = factNetwork(ground, plan, checks, [...facts.values()]);
  const isFact = new Set([...facts.keys()].map((point) => root[point]));
  // A hole of one member is a hole of all that stand at its place.
  const axes = new Set(Array.from(root.keys()).filter((point) => isFact.has(root[point])));
  const heldBy = new Map([...drawn.heldBy].filter(([point]) => !isFact.has(root[point])));
  for (const [point, { held }] of facts) if (made.network.held[point]) heldBy.set(point, held);
  const madeGround: PlantingGround = {
    ...drawn,
    network: { ...made.network, checks: made.checks },
    pointIds: [...drawn.pointIds, ...Array.from(made.ghostOf, () => undefined)],
    sources: Array.from(made.sourceOf, (rule) => drawn.sources[rule]).flatMap((source) => source ?? []),
    plusMinus: Float64Array.from(made.sourceOf, (rule) => drawn.plusMinus[rule] ?? 0),
    heldBy,
    made: { facts: axes, ghostOf: made.ghostOf, released: made.released },
  };
  const leaning = new Map(
    [...facts].flatMap(([point, { axis }]) =>
      axis && root[point] !== undefined ? [[root[point], axis] as const] : [],
    ),
  );
  const read = leaning.size > 0 ? readAtTheirHeights(madeGround, root, leaning) : madeGround;
  return seconds.length > 0 ? withSeconds(read, seconds) : read;
}

/** Second places of one plate are asked of the point as they stand: they place nothing, and cannot hold. */
function withSeconds(ground: PlantingGround, seconds: readonly SecondPlace[]): PlantingGround {
  const rules = seconds.flatMap(({ point, x, y, id, plusMinus }) =>
    [
      [1, 0, x],
      [0, 1, y],
    ].map((values) => ({ points: [point, -1, -1, -1], values, id, plusMinus })),
  );
  const { network } = ground;
  const more = <T extends Uint8Array | Int32Array | Float64Array>(from: T, added: readonly number[]): T => {
    const grown = new (from.constructor as new (length: number) => T)(from.length + added.length); // the same kind of array
    grown.set(from);
    grown.set(added, from.length);
    return grown;
  };
  return {
    ...ground,
    network: {
      ...network,
      ruleCount: network.ruleCount + rules.length,
      kinds: more(
        network.kinds,
        rules.map(() => RuleKind.onLine),
      ),
      points: more(
        network.points,
        rules.flatMap(({ points }) => points),
      ),
      values: more(
        network.values,
        rules.flatMap(({ values }) => values),
      ),
      checks: more(
        network.checks ?? new Uint8Array(network.ruleCount),
        rules.map(() => 0),
      ),
      ...(network.told && {
        told: more(
          network.told,
          rules.map(() => 0),
        ),
      }),
    },
    sources: [...ground.sources, ...rules.map(({ id }) => ({ kind: 'drilled' as const, point: id }))],
    plusMinus: more(
      ground.plusMinus,
      rules.map(({ plusMinus }) => plusMinus),
    ),
  };
}
