/** Builds small movements for the tests of turning: arbors by name, wheels, depths and couplings in a few words. */
import { type Movement, movementSchema } from '../../solver/movement/schema.ts';

type Fields = Readonly<Record<string, unknown>>;

export interface Sketch {
  /** Wheel id -> [arbor, teeth] or [arbor, teeth, 'internal']. */
  readonly wheels: Readonly<Record<string, readonly [string, number, 'internal'?]>>;
  /** "a b": wheel a drives wheel b. */
  readonly depths?: readonly string[];
  /** Fields of arbors that need more than a name. */
  readonly arbors?: Readonly<Record<string, Fields>>;
  readonly couplings?: readonly Fields[];
  readonly rules?: readonly Fields[];
  readonly drive?: Fields;
  readonly indications?: readonly Fields[];
  /** Module, mm, of wheels not 1. */
  readonly modules?: Readonly<Record<string, number>>;
}

export function sketchMovement(sketch: Sketch): Movement {
  const names = new Set([
    ...Object.keys(sketch.arbors ?? {}),
    ...Object.values(sketch.wheels).map((wheel) => wheel[0]),
  ]);
  // The sketch is checked by the schema itself, so its output type is what the tests use.
  return movementSchema.parse({
    format: 'depthwright-movement',
    version: 2,
    arbors: [...names].map((id, index) => ({ id, at: [100 * index, 0], ...sketch.arbors?.[id] })),
    wheels: Object.entries(sketch.wheels).map(([id, [arbor, teeth, internal]]) => ({
      id,
      arbor,
      teeth,
      size: { module: sketch.modules?.[id] ?? 1 },
      form: 'involute',
      internal: internal === 'internal',
      level: 0,
      thickness: 2,
    })),
    rules: [
      ...(sketch.depths ?? []).map((pair) => ({ kind: 'depth', id: pair.replace(' ', '-'), wheels: pair.split(' ') })),
      ...(sketch.rules ?? []),
    ],
    couplings: sketch.couplings ?? [],
    ...(sketch.drive ? { drive: sketch.drive } : {}),
    indications: sketch.indications ?? [],
  }) as Movement;
}
