/**
 * The limits of the house. `wanted` is the law; `allowed` is what stands today where the law is not yet met, and is
 * only ever lowered.
 */
import { largestFace, namesExportedTwice, withoutWords } from './measures/exported.ts';
import { foreignWrites } from './measures/foreignWrites.ts';
import { ninthDecile, overLong } from './measures/functions.ts';
import { importCircles } from './measures/importCircles.ts';
import type { Measure } from './measures/measure.ts';
import { styleLines } from './measures/styleLines.ts';
import { anyTypes } from './measures/typesLost.ts';

/** One line of the table. */
export interface Limit {
  /** How the table calls it. */
  readonly says: string;
  readonly measure: Measure;
  readonly wanted: number;
  /** Equal to `wanted`, or above it where the house is not there yet. */
  readonly allowed: number;
}

/** Every limit by the name under which its places can be listed. */
export const LIMITS: Readonly<Record<string, Limit>> = {
  circles: { says: 'files in circles of imports, types counted', measure: importCircles, wanted: 0, allowed: 0 },
  faces: { says: 'names of the largest face', measure: largestFace, wanted: 40, allowed: 40 },
  words: { says: 'functions and types without a word', measure: withoutWords, wanted: 0, allowed: 0 },
  length: { says: 'lines of a function, nine in ten', measure: ninthDecile, wanted: 25, allowed: 25 },
  long: { says: 'functions over 60 lines, %', measure: overLong, wanted: 0.2, allowed: 0.2 },
  twice: { says: 'names exported from two files', measure: namesExportedTwice, wanted: 0, allowed: 0 },
  any: { says: 'any, written or inferred', measure: anyTypes, wanted: 0, allowed: 0 },
  styles: { says: 'lines of style in components', measure: styleLines, wanted: 2500, allowed: 3200 },
  writes: { says: 'state written from outside its part', measure: foreignWrites, wanted: 0, allowed: 0 },
};
