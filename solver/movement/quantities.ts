/** Numbers as the movement file may hold them: finite, bounded, in millimetres and degrees. */
import { z } from 'zod';

/** Largest coordinate or length a file may hold, mm (10 m of work, 10 m from the origin, and room to spare). */
export const MAX_LENGTH = 100_000;
/** Shortest length that a rule may ask for, mm. */
export const MIN_LENGTH = 1e-6;
export const MIN_TEETH = 4;
export const MAX_TEETH = 1000;
export const MAX_ARBORS = 20_000;

export const coordinate = z.number().min(-MAX_LENGTH).max(MAX_LENGTH);
export const length = z.number().min(MIN_LENGTH).max(MAX_LENGTH);
/** A length that may be nothing at all. */
export const extent = z.number().min(0).max(MAX_LENGTH);
export const angleDeg = z.number().min(-36_000).max(36_000);
export const factor = z.number().min(-100).max(100);
/** A ±, read as two standard deviations. */
export const plusMinus = z.number().min(0).max(1000);
export const place = z.tuple([coordinate, coordinate]);
/** Heights above the marked face of the base plate, lower first, mm. */
export const levels = z.looseObject({ from: coordinate, to: coordinate });
export const name = z.string().max(200);
export const note = z.string().max(20_000);
export const date = z.iso.date();
