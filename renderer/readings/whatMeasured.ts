/** What a reading may be of, in the maker's words, and which sizes each word offers. */
import type { PartSize } from '../../solver/made/index.ts';

export const MEASURED = {
  depth: 'a depth',
  distance: 'a distance between two holes',
  place: 'the place of a drilled hole',
  tips: 'a diameter over the tips',
  pivot: 'the diameter of a pivot or body',
  hole: 'a hole or bore',
  thickness: 'a thickness',
  runOut: 'a run-out',
  endShake: 'an end shake',
} as const;
export type WhatMeasured = keyof typeof MEASURED;

/** The sizes of a movement that one of these words means. */
export function sizesFor(sizes: readonly PartSize[], what: WhatMeasured): readonly PartSize[] {
  switch (what) {
    case 'tips':
      return sizes.filter(({ field }) => field === 'tipDiameter');
    case 'pivot':
      return sizes.filter(({ field }) => field === 'pivot' || field === 'diameter');
    case 'hole':
      return sizes.filter(({ field, drawn }) => field === 'bore' || (field === 'hole' && drawn > 0));
    case 'thickness':
    case 'runOut':
    case 'endShake':
      return sizes.filter(({ kind }) => kind === what);
    default:
      return [];
  }
}
