/** Worms, as they turn their wheels. */
import type { CouplingOf } from '../../movement/schema.ts';
import type { Join } from './join.ts';

/**
 * A worm lies flat: its front is the end from which, with the marked face upward, the wheel stands on the left; seen
 * from there a right-handed worm turning anticlockwise turns the wheel anticlockwise (the thread pushes the wheel's rim
 * against its own advance), a left-handed one reverses.
 */
export const wormJoins = ({ kind, arbor, wheel, starts, hand }: CouplingOf<'worm'>): Join => ({
  kind,
  by: 'arbor',
  arbor,
  wheel,
  teeth: starts,
  senseOn: () => (hand === 'right' ? 1 : -1),
});
