/** What turns what: couplings other than depths in the plane, the drive, and the wanted indications. */
import { z } from 'zod';
import { arborId, couplingId, indicationId, wheelId } from './ids.ts';
import { bounded, name, note } from './quantities.ts';

const common = { id: couplingId, name: name.exactOptional(), note: note.exactOptional() };

/** A worm of `starts` threads on `arbor` turns `wheel`. */
const worm = z.looseObject({
  kind: z.literal('worm'),
  ...common,
  arbor: arborId,
  starts: z.int().min(1).max(50),
  hand: z.enum(['right', 'left']).default('right'),
  wheel: wheelId,
});

/** Wheels with axes at a right angle; the first drives. `sense`: whether the second turns the same way, each seen from its own front. */
const contrate = z.looseObject({
  kind: z.literal('contrate'),
  ...common,
  wheels: z.tuple([wheelId, wheelId]),
  sense: z.enum(['same', 'reversed']).default('reversed'),
});

/** An arm on `arm`'s arbor that carries other arbors round with it. */
const carrier = z.looseObject({
  kind: z.literal('carrier'),
  ...common,
  arm: arborId,
  carries: z.array(arborId).min(1).max(100),
});

/** A pin or finger on `arbor` moves `wheel` by `teeth` teeth at each turn. */
const stepped = z.looseObject({
  kind: z.literal('stepped'),
  ...common,
  arbor: arborId,
  wheel: wheelId,
  teeth: z.int().min(1).max(100).default(1),
});

export const coupling = z.discriminatedUnion('kind', [worm, contrate, carrier, stepped]);

export const period = z.looseObject({
  value: z.number().min(1e-9).max(1e15),
  unit: z.enum(['s', 'min', 'h', 'd']),
});

const sense = z.enum(['clockwise', 'anticlockwise']);

/** What turns the movement; the sense is seen from the marked face, looking down on it. */
export const drive = z.looseObject({ arbor: arborId, period, sense: sense.default('clockwise') });

export const indication = z.looseObject({
  id: indicationId,
  name: name.exactOptional(),
  note: note.exactOptional(),
  arbor: arborId,
  /** Exactly one of the two: a wanted period, or wanted turns for one turn of the drive ("27/2" or 13.5). */
  period: period.exactOptional(),
  ratio: z.union([bounded(-1e12, 1e12), z.string().regex(/^-?\d+(\/\d+)?$/)]).exactOptional(),
  sense: sense.exactOptional(),
  /** Largest error accepted, parts per million. */
  tolerancePpm: z.number().min(0).max(1e6).exactOptional(),
  source: z.string().max(500).exactOptional(),
});
