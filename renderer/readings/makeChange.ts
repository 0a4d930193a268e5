/** A change that keeps the state before it, so that what it changed can be told. */
import type { Edit } from '../../solver/movement/index.ts';

/** Makes the edits as one step; false where they were refused, which is told. */
export type MakeChange = (label: string, edits: readonly Edit[]) => boolean;
