/** The drive and the wanted indications. */
import { z } from 'zod';
import { arborId, indicationId } from './ids.ts';
import { bounded, name, note } from './quantities.ts';

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
