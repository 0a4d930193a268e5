/**
 * Axes that lean by their holes: a depth is read where its teeth meet, everything else at the marked face.
 *
 * A helper stands where the leaning axis passes the height of a depth's teeth, held like the axis itself, and the depth is
 * asked of it. So what hangs on the depth is placed from there, and a depth that checks is measured there.
 */
import type { DrilledAxis } from '../../movement/index.ts';
import type { RuleOf, Wheel } from '../../movement/schema.ts';
import type { PlantingGround } from './ground.ts';

/** Puts the helpers into a ground. `leaning` are the axes by the root that they stand at in the drawing. */
export function readAtTheirHeights(
  ground: PlantingGround,
  root: Int32Array,
  leaning: ReadonlyMap<number, DrilledAxis>,
): PlantingGround {
  const { network, movement } = ground;
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const points = Int32Array.from(network.points);
  const coords = Array.from(network.coords);
  const helpers = new Map<string, number>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth') continue;
    const height = heightOf(rule, wheels);
    for (const each of height === undefined ? [] : (ground.networkRulesOf.get(rule.id) ?? [])) {
      for (let k = 4 * each; k < 4 * each + 2; k++) {
        const axis = leaning.get(root[points[k] ?? -1] ?? -1);
        if (!axis || height === undefined) continue;
        const key = `${root[points[k] ?? -1]} ${height}`;
        const known = helpers.get(key) ?? coords.length / 2;
        if (!helpers.has(key)) {
          helpers.set(key, known);
          coords.push(axis.place.x + axis.slope.x * height, axis.place.y + axis.slope.y * height);
        }
        points[k] = known;
      }
    }
  }
  if (helpers.size === 0) return ground;
  const heldBy = new Map(ground.heldBy);
  for (const helper of helpers.values()) heldBy.set(helper, { by: 'drilled', plusMinus: 0 });
  const grow = <T extends Uint8Array | Int32Array>(from: T, by: number): T => {
    const grown = new (from.constructor as new (length: number) => T)(from.length + helpers.size).fill(by) as T; // the same kind of array
    grown.set(from);
    return grown;
  };
  return {
    ...ground,
    heldBy,
    pointIds: [...ground.pointIds, ...Array.from(helpers, () => undefined)],
    network: {
      ...network,
      pointCount: network.pointCount + helpers.size,
      coords: Float64Array.from(coords),
      points,
      held: grow(network.held, 1),
      sides: grow(network.sides, 0),
      sideFrom: grow(network.sideFrom, -1),
      sideTo: grow(network.sideTo, -1),
    },
  };
}

/** The middle of the teeth that meet, mm. */
function heightOf({ wheels: ids }: RuleOf<'depth'>, wheels: ReadonlyMap<string, Wheel>): number | undefined {
  const [a, b] = ids.map((id) => wheels.get(id));
  if (!a || !b) return undefined;
  const from = Math.max(a.level, b.level);
  return (from + Math.min(a.level + a.thickness, b.level + b.thickness)) / 2;
}
