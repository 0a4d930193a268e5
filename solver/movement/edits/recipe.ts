/** How an edit acts: it looks at the movement, and gives either the change to make to a draft of it, or a refusal. */
import type { Draft } from 'immer';
import type { Movement } from '../schema.ts';
import type { Refused } from './edit.ts';

/** A change that is ready to be made to a draft of the movement. */
export type Recipe = { readonly kind: 'recipe'; readonly run: (draft: Draft<Movement>) => void };
export type EditPlan = Recipe | Refused;

/** Wraps the change that an edit makes. */
export function recipe(run: (draft: Draft<Movement>) => void): Recipe {
  return { kind: 'recipe', run };
}
