/** The lists of the document whose items have ids, with the word for one item. All ids share one namespace. */

export const COLLECTIONS = {
  arbors: 'an arbor',
  wheels: 'a wheel',
  posts: 'a post',
  marks: 'a mark',
  plates: 'a plate',
  walls: 'a wall',
  openings: 'an opening',
  rules: 'a rule',
  couplings: 'a coupling',
  indications: 'an indication',
  readings: 'a reading',
} as const;

export type Collection = keyof typeof COLLECTIONS;

/** In the order of the file. */
export const collectionNames = Object.keys(COLLECTIONS) as readonly Collection[]; // the record's own keys

/** What a reference to "a point" may name: anything with one place in the plane. */
export const POINTS: readonly Collection[] = ['arbors', 'posts', 'marks'];
/** What a reference to "a part" may name. */
export const PARTS: readonly Collection[] = [...POINTS, 'wheels', 'walls', 'plates', 'openings'];
/** What a reference to a wheel may name. */
export const WHEELS: readonly Collection[] = ['wheels'];
