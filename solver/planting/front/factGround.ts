/**
 * The ground of a movement of which something was made: its drawing, with the drilled places put into it.
 *
 * The drawing is planted first, as if nothing were drilled: it says what a fact releases and where ghosts stand.
 */
import type { Movement } from '../../movement/schema.ts';
import { type Fact, factNetwork } from '../kernel/duties/factNetwork.ts';
import { drawingOf } from '../kernel/plant.ts';
import type { HeldSource, PlantingGround } from './ground.ts';

/** Drilled places of a movement by network point, with what holds each; a second one of a point is not among them. */
function factsOf(movement: Movement, drawn: PlantingGround): ReadonlyMap<number, Fact & { readonly held: HeldSource }> {
  const facts = new Map<number, Fact & { held: HeldSource }>();
  for (const { point, state, at, plusMinus } of movement.made) {
    const index = drawn.indexOf.get(point);
    if (index === undefined || state !== 'drilled' || !at || facts.has(index)) continue;
    facts.set(index, { point: index, x: at[0], y: at[1], held: { by: 'drilled', plusMinus: plusMinus ?? 0 } });
  }
  return facts;
}

/**
 * Puts the drilled places into the drawing; the drawing itself where nothing is drilled.
 *
 * Ghosts stand behind the points of the movement and have no id; copied rules stand behind its rules and come from the
 * same rule of the movement, which is asked of the hole alone.
 */
export function withFacts(drawn: PlantingGround): PlantingGround {
  const facts = factsOf(drawn.movement, drawn);
  if (facts.size === 0) return drawn;
  const { ground, plan, checks } = drawingOf(drawn.network);
  const made = factNetwork(ground, plan, checks, [...facts.values()]);
  const { root } = ground.reduction;
  const isFact = new Set([...facts.keys()].map((point) => root[point]));
  // A hole of one member is a hole of all that stand at its place.
  const axes = new Set(Array.from(root.keys()).filter((point) => isFact.has(root[point])));
  const heldBy = new Map([...drawn.heldBy].filter(([point]) => !isFact.has(root[point])));
  for (const [point, { held }] of facts) if (made.network.held[point]) heldBy.set(point, held);
  return {
    ...drawn,
    network: { ...made.network, checks: made.checks },
    pointIds: [...drawn.pointIds, ...Array.from(made.ghostOf, () => undefined)],
    sources: Array.from(made.sourceOf, (rule) => drawn.sources[rule]).flatMap((source) => source ?? []),
    plusMinus: Float64Array.from(made.sourceOf, (rule) => drawn.plusMinus[rule] ?? 0),
    heldBy,
    made: { facts: axes, ghostOf: made.ghostOf, released: made.released },
  };
}
