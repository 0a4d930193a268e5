/** Numbers as the movement file may hold them: finite, bounded, in millimetres and degrees. */
import { z } from 'zod';
import { ONE_PLACE } from '../tolerances.ts';

/** Largest coordinate or length a file may hold, mm (10 m of work, 10 m from the origin, and room to spare). */
export const MAX_LENGTH = 100_000;
/** Shortest length that a rule may ask for, mm: what is nearer is one place. */
export const MIN_LENGTH = ONE_PLACE;
export const MIN_TEETH = 4;
export const MAX_TEETH = 1000;
export const MAX_ARBORS = 20_000;

/**
 * A finite number within bounds. Zero loses its sign: JSON text cannot be trusted to keep it, and nothing here
 * means two different things by it.
 */
export const bounded = (min: number, max: number) =>
  z
    .number()
    .min(min)
    .max(max)
    .overwrite((value) => value + 0);

export const coordinate = bounded(-MAX_LENGTH, MAX_LENGTH);
export const length = bounded(MIN_LENGTH, MAX_LENGTH);
/** A length that may be nothing at all. */
export const extent = bounded(0, MAX_LENGTH);
export const angleDeg = bounded(-36_000, 36_000);
export const factor = bounded(-100, 100);
/** A ±, read as two standard deviations. */
export const plusMinus = bounded(0, 1000);
export const place = z.tuple([coordinate, coordinate]);
/** Heights above the marked face of the base plate, lower first, mm. */
export const levels = z.looseObject({ from: coordinate, to: coordinate });
/** The same where an end that is left out follows from what the part has to reach. */
export const ends = z.looseObject({ from: coordinate.exactOptional(), to: coordinate.exactOptional() });
export const name = z.string().max(200);
export const note = z.string().max(20_000);
export const date = z.iso.date();
