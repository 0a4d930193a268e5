/**
 * Keys that mean something only where the keys are given to: a face, a hand, a field. The list of keys shows them; a test
 * compares this table with what the files listen for, so that neither can be changed alone.
 */

/** Keys of one place with what they do there. */
export interface LocalKeys {
  /** Heading in the list of keys. */
  readonly where: string;
  /** The file that listens, from `renderer/`. */
  readonly file: string;
  readonly keys: readonly { readonly keys: readonly string[]; readonly says: string }[];
}

export const localKeys: readonly LocalKeys[] = [
  {
    where: 'On the steps',
    file: 'steps/StepsFace.svelte',
    keys: [
      { keys: ['ArrowRight', 'ArrowDown', 'PageDown'], says: 'The next step; pedals send these too' },
      { keys: ['ArrowLeft', 'ArrowUp', 'PageUp'], says: 'The step before' },
      { keys: ['Enter'], says: 'Tick the step off, or take the tick back' },
    ],
  },
  {
    where: 'On a wheel of the section',
    file: 'levels/Elevation.svelte',
    keys: [
      { keys: ['ArrowUp', 'ArrowDown'], says: 'Raise or lower it by 0.1 mm; with Shift by 1 mm' },
      { keys: ['Escape'], says: 'Give up the drag' },
    ],
  },
  {
    where: 'On a hand of the rehearsal',
    file: 'rehearsal/Hands.svelte',
    keys: [
      { keys: ['ArrowUp', 'ArrowRight'], says: 'Turn it on' },
      { keys: ['ArrowDown', 'ArrowLeft'], says: 'Turn it back' },
    ],
  },
  {
    where: 'In a value',
    file: 'fields/NumberField.svelte',
    keys: [
      { keys: ['Enter'], says: 'Keep what was typed and leave; Tab does so too' },
      { keys: ['Escape'], says: 'Bring the old value back and leave' },
    ],
  },
  {
    where: 'In a name',
    file: 'fields/NameField.svelte',
    keys: [
      { keys: ['Enter'], says: 'Keep the name' },
      { keys: ['Escape'], says: 'Bring the old name back' },
    ],
  },
  {
    where: 'In what an arbor should show',
    file: 'fields/WordField.svelte',
    keys: [
      { keys: ['Enter'], says: 'Keep what was typed' },
      { keys: ['Escape'], says: 'Bring the old words back' },
    ],
  },
  {
    where: 'In Find by name',
    file: 'frame/FindBox.svelte',
    keys: [
      { keys: ['Enter'], says: 'Choose the first that was found' },
      { keys: ['Escape'], says: 'Leave it' },
    ],
  },
];
